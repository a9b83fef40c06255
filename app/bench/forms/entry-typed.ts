import { formatTenths } from '@/lib/rules/hours';
import { type PartLine } from '@/lib/work/parts';
import { type WorkView } from '@/lib/work/work-view';
import { wholeOrNull, yesNo } from './typed';

/** The entry as it stands in the boxes of its form. */
export interface EntryTyped {
  workKind: string;
  outcome: string;
  lookedFor: string;
  description: string;
  references: string;
  parts: Record<keyof PartLine, string>[];
  partsUsed: string;
  laborHours: string;
  completedOn: string;
  performedBy: string;
  majorAnswers: string;
  majorTicked: string[];
  majorRecord: string;
  form337: string;
  approvedData: string;
  limitsChanged: string;
  limitsRevised: string;
  cabinTank: string;
  copyAboard: string;
  tests: Record<'staticOpened' | 'altitudeError' | 'transponderError', string>;
  staticOnTheWay: boolean;
  checkFlightNeeded: string;
  checkFlightReason: string;
  /** What the record of something that recurs says beyond the entry. */
  details: Record<'testedToFt' | 'newExpiry' | 'method' | 'revision', string>;
}

/** A part before anything is typed. */
export const NO_PART: EntryTyped['parts'][number] = {
  did: '',
  name: '',
  number: '',
  serial: '',
  batch: '',
  quantity: '',
  release: '',
};

const typedYesNo = (answer: boolean | null | undefined): string =>
  answer === true ? 'yes' : answer === false ? 'no' : '';

/** What the boxes begin with: the entry as it was written last, and nothing where nobody has answered. */
export function typedFrom(entry: WorkView['entry']): EntryTyped {
  const { majorAnswers, details } = entry;
  const ticked = Object.keys(majorAnswers ?? {}).filter((key) => majorAnswers?.[key] === true);
  return {
    workKind: entry.workKind,
    outcome: entry.outcome ?? '',
    lookedFor: details?.lookedFor ?? '',
    description: entry.description ?? '',
    references: entry.references ?? '',
    parts: (entry.parts ?? []).map((part) => ({
      ...part,
      serial: part.serial ?? '',
      batch: part.batch ?? '',
      release: part.release ?? '',
    })),
    partsUsed: entry.partsUsed ?? '',
    laborHours: entry.laborTenths === undefined ? '' : formatTenths(entry.laborTenths),
    completedOn: entry.completedOn ?? '',
    performedBy: entry.performedBy ?? '',
    majorAnswers: !majorAnswers ? '' : ticked.length > 0 ? 'some' : 'none',
    majorTicked: ticked,
    majorRecord: details?.majorRecord ?? '',
    form337: entry.form337 ?? '',
    approvedData: entry.approvedData ?? '',
    limitsChanged: typedYesNo(entry.limitsChanged),
    limitsRevised: entry.limitsRevised ?? '',
    cabinTank: typedYesNo(details?.cabinTank),
    copyAboard: typedYesNo(details?.copyAboard),
    tests: {
      staticOpened: typedYesNo(details?.tests?.staticOpened),
      altitudeError: typedYesNo(details?.tests?.altitudeError),
      transponderError: typedYesNo(details?.tests?.transponderError),
    },
    staticOnTheWay: details?.tests?.staticOpened === true,
    checkFlightNeeded: typedYesNo(entry.checkFlightNeeded),
    checkFlightReason: entry.checkFlightReason ?? '',
    details: {
      testedToFt: details?.testedToFt === undefined ? '' : String(details.testedToFt),
      newExpiry: details?.newExpiry ?? '',
      method: details?.method ?? '',
      revision: details?.revision ?? '',
    },
  };
}

/** What was typed, as the service takes it. A choice not made stays missing, and the service says so. */
export function asInput(typed: EntryTyped, entry: WorkView['entry'], asks: WorkView['asks']): object {
  const { majorTicked, staticOnTheWay, ...fields } = typed;
  return {
    ...fields,
    // Preventive work stays what it was begun as; its item was named then.
    workKind: asks.repair && typed.workKind !== 'preventive' ? typed.workKind : undefined,
    outcome: asks.outcome ? chosen(typed.outcome) : undefined,
    partsUsed: entry.partsUsed ? typed.partsUsed : undefined,
    majorAnswers: answers(typed.majorAnswers, majorTicked, asks),
    majorRecord: chosen(typed.majorRecord),
    limitsChanged: yesNo(typed.limitsChanged),
    cabinTank: yesNo(typed.cabinTank),
    copyAboard: yesNo(typed.copyAboard),
    tests: testsSaid(typed.tests, staticOnTheWay, asks),
    details: { ...entry.details, ...recordSaid(typed.details) },
    checkFlightNeeded: yesNo(typed.checkFlightNeeded),
  };
}

/** Of work on something that recurs; what is left empty is not said. */
function recordSaid({ testedToFt, newExpiry, method, revision }: EntryTyped['details']) {
  return {
    testedToFt: wholeOrNull(testedToFt) ?? undefined,
    newExpiry: chosen(newExpiry),
    method: chosen(method.trim()),
    revision: chosen(revision.trim()),
  };
}

/** Nothing chosen is no answer, not an answer of its own. */
const chosen = (value: string): string | undefined => (value === '' ? undefined : value);

/** "None" answers every question no; "some" without a tick answers nothing. */
function answers(said: string, ticked: readonly string[], { majorQuestions }: WorkView['asks']) {
  const nothing = said === '' || (said === 'some' && ticked.length === 0);
  if (nothing) return undefined;
  return Object.fromEntries(majorQuestions.map(({ key }) => [key, said === 'some' && ticked.includes(key)]));
}

function testsSaid(tests: EntryTyped['tests'], onTheWay: boolean, { testQuestions }: WorkView['asks']) {
  if (testQuestions.length === 0) return onTheWay ? { staticOpened: true } : undefined;
  return Object.fromEntries(testQuestions.map(({ key }) => [key, yesNo(tests[key])]));
}
