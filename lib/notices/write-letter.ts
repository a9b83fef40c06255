import { clockInWords, dayInWords } from '../rules/in-words';
import { localDate } from '../rules/months';
import { doneInWords, meaningInWords, type FlightNoticeKind, type WriteUpNoticeKind } from './in-words';

/** What a letter tells, all of it. */
export interface Tidings {
  readonly what: WriteUpNoticeKind;
  /** What it was judged to be; null for all that is no judgement. */
  readonly severity: string | null;
  readonly registration: string;
  readonly number: string;
  readonly title: string;
  readonly byName: string;
  /** The person's own words. */
  readonly words: string;
  /** ISO instant, and the zone of the aircraft's base to tell it in. */
  readonly at: string;
  readonly zone: string;
  readonly operatorName: string;
  readonly link: string;
}

/** Subject and text of the letter about one event. The subject has no line breaks, whatever the title holds. */
export function writeLetter(tidings: Tidings): { subject: string; body: string } {
  const { what, registration, number, title, byName, at, zone, operatorName, link } = tidings;
  const about = onOneLine(`${number}, ${title}`);
  const subject = onOneLine(`${registration}, ${number}: ${doneInWords(what).toLowerCase()}. ${title}`);
  const when = `${dayInWords(localDate(at, zone))}, ${clockInWords(at, zone)} (${zone})`;
  const body = [
    `${onOneLine(registration)}: what you wrote up or added to has been seen to.`,
    `${about}\n${doneInWords(what)} by ${onOneLine(byName)}, ${when}.`,
    `In the words of ${onOneLine(byName)}:`,
    indented(tidings.words),
    `What it means: ${meaningInWords(what, tidings.severity)}`,
    `All of it: ${link}`,
    'Whether the aircraft may fly is answered for each flight, never by a letter.',
    `-- \nWheelchock wrote this by itself for ${onOneLine(operatorName)}. Nobody reads an answer to it.`,
  ].join('\n\n');
  return { subject, body: `${body}\n` };
}

/** What a letter about a released flight tells. */
export interface FlightTidings {
  readonly what: FlightNoticeKind;
  readonly registration: string;
  /** Idents of both ends, and when it is to depart: told in the zone of its place. */
  readonly fromIdent: string;
  readonly toIdent: string;
  readonly departAt: string;
  readonly departZone: string;
  /** The write-up behind it, where it was one. */
  readonly writeUp: { readonly number: string; readonly title: string } | null;
  readonly byName: string;
  readonly words: string;
  readonly at: string;
  readonly zone: string;
  readonly operatorName: string;
  readonly link: string;
}

/** Subject and text of the letter about a released flight. What it means stands first: it may be read in a hurry. */
export function writeFlightLetter(tidings: FlightTidings): { subject: string; body: string } {
  const { what, registration, fromIdent, toIdent, departAt, departZone, writeUp, byName, at, zone } = tidings;
  const moment = (of: string, where: string) =>
    `${dayInWords(localDate(of, where))}, ${clockInWords(of, where)} (${where})`;
  const flight = `${registration}, ${fromIdent} to ${toIdent}`;
  const subject = onOneLine(`${doneInWords(what)}: ${flight}, ${moment(departAt, departZone)}`);
  const body = [
    `${doneInWords(what)}. ${meaningInWords(what, null)}`,
    onOneLine(`${flight}, departure ${moment(departAt, departZone)}.`),
    onOneLine(`${ACT[what]} ${byName}, ${moment(at, zone)}.`),
    indented(tidings.words),
    ...(writeUp ? [onOneLine(`Write-up ${writeUp.number}, ${writeUp.title}`)] : []),
    `All of it: ${tidings.link}`,
    'Whether the aircraft may fly is answered for each flight, never by a letter.',
    `-- \nWheelchock wrote this by itself for ${onOneLine(tidings.operatorName)}. Nobody reads an answer to it.`,
  ]
    .filter((part) => part.trim() !== '')
    .join('\n\n');
  return { subject, body: `${body}\n` };
}

/** What the person did whose name follows. */
const ACT: Readonly<Record<FlightNoticeKind, string>> = {
  released: 'Released by',
  'release-void': 'The facts were changed by',
  'release-warned': 'The facts were changed by',
  'release-withdrawn': 'Withdrawn by',
};

/** Control characters and line separators become one blank each: RFC 5322, 2.2 (no CR or LF within a header field). */
const onOneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim();

/** Somebody's words, set in, so that they cannot be taken for ours. Line breaks stay, other control characters go. */
const indented = (words: string): string =>
  words
    .split(/\r\n|[\r\n\u2028\u2029]/)
    .map((line) => `    ${line.replace(/\p{Cc}+/gu, ' ')}`.trimEnd())
    .join('\n');
