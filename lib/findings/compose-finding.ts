/**
 * From what a form holds (all text, as typed) to a finding as `reportFinding` takes it, or to an observation of a write-up
 * that is there already; and back again, for a message that was refused. Pure, and light enough for a phone: what can be
 * found where comes with the pack (offer-findings.ts).
 */
import { digitsOf, type MeasureUnit } from '../rules/findings/measurements';
import { readMeasurement } from './measurement-input';
import type { ReportFindingInput } from './schema';

/** A line of the equipment list. */
export interface ItemOnList {
  readonly id: string;
  readonly name: string;
  readonly installed: number;
}

/** One likely finding of a station, with what has to be asked about it. */
export interface FindingOffered {
  readonly key: string;
  readonly title: string;
  readonly usualAction: string;
  /** Which gauge, which surface; empty when there is nothing to choose. */
  readonly choices: readonly {
    readonly label: string;
    readonly jasc: string;
    readonly items: readonly ItemOnList[];
  }[];
  /** Items it can be about when there is nothing to choose. */
  readonly items: readonly ItemOnList[];
  readonly measurements: readonly {
    readonly key: string;
    readonly label: string;
    readonly unit: MeasureUnit;
    readonly needed: boolean;
  }[];
}

/** Value of "something else" among the findings, and of "not sure" among the answers. */
export const SOMETHING_ELSE = 'something-else';
export const NOT_SURE = 'not-sure';

/** A finding being typed. Empty text: not answered yet. */
export interface FindingDraft {
  readonly finding: string;
  readonly kind: string;
  readonly choice: string;
  readonly item: string;
  readonly count: string;
  readonly measurements: Readonly<Record<string, string>>;
  readonly place: string;
  readonly words: string;
  /** When it was noticed, one of PHASES. */
  readonly phase: string;
  /** Whether it is one that is written up already, see `sameAnswer`; or NOT_THE_SAME. */
  readonly same: string;
}

export const PHASES = ['before-flight', 'in-flight', 'after-flight'] as const;
export type Phase = (typeof PHASES)[number];

/** Whether a text names a phase. */
export const isPhase = (text: string | null): text is Phase =>
  (PHASES as readonly (string | null)[]).includes(text);

/**
 * How a finding stands to a write-up that is there already.
 * - `same`: the same, as written. It becomes an observation of that write-up.
 * - `worse`: the same, but worse than written. A write-up of its own that names the other.
 * - `back`: it was closed and is there again. Likewise.
 */
export type HowTheSame = 'same' | 'worse' | 'back';

/** "No, another": asked and denied, which is not the same as not asked. */
export const NOT_THE_SAME = 'another';

/** The answer as the form keeps it. */
export const sameAnswer = (how: HowTheSame, writeUpId: string): string => `${how}:${writeUpId}`;

/** What an answer says; null for none and for "No, another". */
export function readSame(answer: string): { readonly how: HowTheSame; readonly writeUpId: string } | null {
  const match = /^(same|worse|back):(.+)$/.exec(answer);
  return match ? { how: match[1] as HowTheSame, writeUpId: match[2] ?? '' } : null;
}

export const EMPTY_DRAFT: FindingDraft = {
  finding: '',
  kind: '',
  choice: '',
  item: '',
  count: '',
  measurements: {},
  place: '',
  words: '',
  phase: '',
  same: '',
};

/** What still has to be asked, given what has been answered. */
export interface QuestionsAsked {
  readonly offered: FindingOffered | null;
  readonly kind: boolean;
  readonly choice: boolean;
  /** The items to choose from; empty when there is nothing to choose. */
  readonly items: readonly ItemOnList[];
  /** How many are installed where it matters how many of them are out; else 0. */
  readonly countUpTo: number;
}

/** `equipment` is the whole list, offered when something outside the catalogue does not work. */
export function questionsFor(
  draft: FindingDraft,
  offers: readonly FindingOffered[],
  equipment: readonly ItemOnList[],
): QuestionsAsked {
  const offered = offers.find((one) => one.key === draft.finding) ?? null;
  const isElse = draft.finding === SOMETHING_ELSE;
  const items = itemsFor(draft, offered, isElse, equipment);
  const item = itemMeant(draft, items, isElse);
  return {
    offered,
    kind: isElse,
    choice: (offered?.choices.length ?? 0) > 0,
    items: isElse || items.length > 1 ? items : [],
    countUpTo: item && item.installed > 1 ? item.installed : 0,
  };
}

function itemsFor(
  draft: FindingDraft,
  offered: FindingOffered | null,
  isElse: boolean,
  equipment: readonly ItemOnList[],
): readonly ItemOnList[] {
  if (isElse) return draft.kind === 'inoperative' ? equipment : [];
  if (!offered) return [];
  if (offered.choices.length === 0) return offered.items;
  return offered.choices.find((choice) => choice.jasc === draft.choice)?.items ?? [];
}

/** The item chosen, or the only one it can be. */
const itemMeant = (draft: FindingDraft, items: readonly ItemOnList[], isElse: boolean): ItemOnList | null =>
  !isElse && items.length === 1 ? (items[0] ?? null) : (items.find((item) => item.id === draft.item) ?? null);

export type Composed =
  | { readonly ok: true; readonly input: ReportFindingInput }
  | { readonly ok: false; readonly fields: Readonly<Record<string, string>> };

/** What surrounds the draft: where it is sent from and under which number. */
export interface FindingSetting {
  readonly requestId: string;
  readonly aircraftId: string;
  readonly walkaroundId: string | null;
  readonly station: string;
  /** Item of the walkaround list it was found at. */
  readonly itemKey: string | null;
  readonly foundAt: string;
  readonly offers: readonly FindingOffered[];
  readonly equipment: readonly ItemOnList[];
}

/**
 * Composes the finding, or says field by field what is missing. "Not sure" is an answer: it goes out as unknown, and
 * unknown grounds until a mechanic has looked.
 */
export function composeFinding(draft: FindingDraft, setting: FindingSetting): Composed {
  const asked = questionsFor(draft, setting.offers, setting.equipment);
  const fields: Record<string, string> = {};
  const need = (name: string, isOpen: boolean, say: string) => {
    if (isOpen) fields[name] = say;
  };
  const choices = asked.offered?.choices.map((choice) => choice.jasc) ?? [];
  const items = asked.items.map((item) => item.id);
  const counts = countsUpTo(asked.countUpTo);
  need('finding', !asked.offered && !asked.kind, 'Say what you found.');
  need('kind', asked.kind && draft.kind === '', 'Say what kind of trouble it is, or that you are not sure.');
  need('choice', isUnanswered(draft.choice, choices), 'Say which it is, or that you are not sure.');
  need('item', isUnanswered(draft.item, items), 'Say which one it is, or that you are not sure.');
  need('count', isUnanswered(draft.count, counts), 'Say how many do not work, or that you are not sure.');
  need('words', draft.words.trim() === '', 'Say in a few words what you saw.');

  const measured = readMeasured(draft, asked.offered);
  Object.assign(fields, measured.fields);
  if (Object.keys(fields).length > 0) return { ok: false, fields };

  const isElse = asked.kind;
  const related = readSame(draft.same);
  const item = itemMeant(draft, itemsFor(draft, asked.offered, isElse, setting.equipment), isElse);
  return {
    ok: true,
    input: {
      requestId: setting.requestId,
      aircraftId: setting.aircraftId,
      walkaroundId: setting.walkaroundId,
      station: setting.station,
      findingKey: asked.offered?.key ?? null,
      kind: isElse ? (sure(draft.kind) as ReportFindingInput['kind']) : null,
      jasc: asked.choice ? sure(draft.choice) : null,
      equipmentId: item?.id ?? null,
      inoperativeCount: countOf(item, asked.countUpTo, draft.count),
      place: draft.place.trim(),
      words: draft.words.trim(),
      measurements: measured.values,
      foundAt: setting.foundAt,
      itemKey: setting.itemKey,
      phase: phaseOf(draft, setting),
      relatedId: related && related.how !== 'same' ? related.writeUpId : null,
    },
  };
}

/** What is sent when it is one that is written up already. */
export interface ObservationMade {
  readonly requestId: string;
  readonly discrepancyId: string;
  readonly walkaroundId: string | null;
  readonly station: string;
  readonly itemKey: string | null;
  readonly words: string;
  readonly measurements: Readonly<Record<string, number>>;
  readonly foundAt: string;
  readonly phase: Phase | null;
}

export type ComposedObservation =
  | { readonly ok: true; readonly input: ObservationMade }
  | { readonly ok: false; readonly fields: Readonly<Record<string, string>> };

/**
 * Composes an observation of the write-up `discrepancyId`: it was seen again, as written. Where on the aircraft it is and
 * what it is stand in the write-up; the place typed goes along with the words. Without words it says that it was seen.
 */
export function composeObservation(
  draft: FindingDraft,
  discrepancyId: string,
  setting: FindingSetting,
): ComposedObservation {
  const { offered } = questionsFor(draft, setting.offers, setting.equipment);
  const measured = readMeasured(draft, offered);
  const words = [draft.words.trim(), draft.place.trim()].filter(Boolean).join(' / ');
  const fields: Record<string, string> = { ...measured.fields };
  if (words.length > MOST_WORDS) fields['words'] = 'That is too long together with the place.';
  if (Object.keys(fields).length > 0) return { ok: false, fields };
  return {
    ok: true,
    input: {
      requestId: setting.requestId,
      discrepancyId,
      walkaroundId: setting.walkaroundId,
      station: setting.station,
      itemKey: setting.itemKey,
      words: words === '' ? SEEN_AGAIN : words,
      measurements: measured.values,
      foundAt: setting.foundAt,
      phase: phaseOf(draft, setting),
    },
  };
}

/** As many characters as the service takes. */
const MOST_WORDS = 2000;
const SEEN_AGAIN = 'Seen again, as written.';

/**
 * The form a message was composed from, for putting right what the server refused. What was answered with "not sure" is
 * so again; who takes the form up again answers anew whether it is one that is written up already, unless it said so.
 */
export function draftOfFinding(
  input: ReportFindingInput,
  offers: readonly FindingOffered[],
  related: HowTheSame | null,
): FindingDraft {
  const offered = offers.find((one) => one.key === input.findingKey);
  return {
    finding: offered?.key ?? SOMETHING_ELSE,
    kind: offered ? '' : (input.kind ?? NOT_SURE),
    choice: offered && offered.choices.length > 0 ? (input.jasc ?? NOT_SURE) : '',
    item: input.equipmentId ?? NOT_SURE,
    count: input.inoperativeCount === null ? NOT_SURE : String(input.inoperativeCount),
    measurements: typedMeasurements(input.measurements, offered ?? null),
    place: input.place,
    words: input.words,
    phase: input.phase ?? '',
    same: input.relatedId && related ? sameAnswer(related, input.relatedId) : '',
  };
}

/** Stored values as they would be typed, for those a finding asks for. */
export const typedMeasurements = (
  values: Readonly<Record<string, number>>,
  offered: FindingOffered | null,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (offered?.measurements ?? []).flatMap(({ key, unit }) => {
      const value = values[key];
      return value === undefined ? [] : [[key, digitsOf(value, unit)]];
    }),
  );

/** On a walkaround it is before the flight, whatever else was not said. */
const phaseOf = (draft: FindingDraft, setting: FindingSetting): Phase | null =>
  isPhase(draft.phase) ? draft.phase : setting.walkaroundId === null ? null : 'before-flight';

/** What was measured, in whole units; what cannot be read is said by field. */
function readMeasured(draft: FindingDraft, offered: FindingOffered | null) {
  const values: Record<string, number> = {};
  const fields: Record<string, string> = {};
  for (const { key, unit } of offered?.measurements ?? []) {
    const typed = draft.measurements[key]?.trim() ?? '';
    if (typed === '') continue;
    const read = readMeasurement(typed, unit);
    if (read.ok) values[key] = read.value;
    else fields[`measurements.${key}`] = read.say;
  }
  return { values, fields };
}

/** "1", "2" and so on: the answers to "how many do not work?". Empty when it is not asked. */
export const countsUpTo = (most: number): readonly string[] =>
  Array.from({ length: most }, (_, index) => String(index + 1));

/** An answer left over from a finding chosen before is none to what is asked now. */
const isUnanswered = (answer: string, offered: readonly string[]): boolean =>
  offered.length > 0 && answer !== NOT_SURE && !offered.includes(answer);

const sure = (answer: string): string | null => (answer === '' || answer === NOT_SURE ? null : answer);

/** One is out when only one is there; else what was answered; else unknown. */
function countOf(item: ItemOnList | null, upTo: number, answer: string): number | null {
  if (!item) return null;
  if (upTo === 0) return item.installed === 1 ? 1 : null;
  const given = sure(answer);
  return given === null ? null : Number.parseInt(given, 10);
}
