/**
 * From what a form holds (all text, as typed) to a finding as `reportFinding` takes it. Pure, and light enough for a
 * phone: the catalogue stays on the server, which offers the findings of one station (offer-findings.ts).
 */
import type { MeasureUnit } from '../rules/findings/measurements';
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

  const measurements: Record<string, number> = {};
  for (const { key, unit } of asked.offered?.measurements ?? []) {
    const typed = draft.measurements[key]?.trim() ?? '';
    if (typed === '') continue;
    const read = readMeasurement(typed, unit);
    if (read.ok) measurements[key] = read.value;
    else fields[`measurements.${key}`] = read.say;
  }
  if (Object.keys(fields).length > 0) return { ok: false, fields };

  const isElse = asked.kind;
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
      measurements,
      foundAt: setting.foundAt,
    },
  };
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
