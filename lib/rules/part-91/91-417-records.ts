/**
 * 14 CFR 91.417(b): how long a record is kept.
 * (1) Records of work (a)(1): until the work is repeated or superseded by other work, or for 1 year after it was done.
 * (2) Records of status (a)(2): kept, and handed over with the aircraft when it is sold.
 * (3) The list of defects given under 43.11: until they are repaired and the aircraft is approved for return to service.
 * (a) leaves work under 91.411 and 91.413 out.
 *
 * This program deletes no record; what is computed here says how long the law asks for it. The text of (b)(1) does not
 * say which of its two ends counts when work is repeated within the year: the strict reading keeps the record for both.
 */
import type { RequirementKind } from '../aircraft';
import type { CalendarDate, Fact } from '../facts';
import { dayInWords } from '../in-words';
import type { CiteId } from '../law';
import { parseCalendarDate } from '../months';

/** What a record is, as far as its keeping goes. */
export type RecordKind =
  /** Maintenance, preventive maintenance, alteration: (a)(1). */
  | 'work'
  /** A required inspection: (a)(1), and the inspection status of (a)(2)(iv) rests on the last one. */
  | 'inspection'
  /** A test under 91.411 or 91.413, which (a) leaves out. */
  | 'altimeter-transponder-test'
  | 'directive'
  | 'life-limit'
  | 'overhaul'
  /** Form 337: (a)(2)(vi) names alterations; a repair is not told from an alteration here. */
  | 'major'
  | 'total-time'
  /** 43.11(b). */
  | 'list'
  /** A determination, deferral, permit or the like: no paragraph of 91.417 names it. */
  | 'judgement';

export interface RecordToKeep {
  readonly kind: RecordKind;
  /** The day the work was completed; for a list its date. */
  readonly doneOn: Fact<CalendarDate>;
  /** The day on which the same work was done again, or other work took its place; null: it stands. */
  readonly supersededOn: CalendarDate | null;
  /** Lists: the day on which the last item was repaired and approved for return to service; null: something is open. */
  readonly repairedOn: CalendarDate | null;
}

export interface Retention {
  /**
   * Last day on which the law asks for it; `with-the-aircraft`: always, and it goes with the aircraft; `until-repaired`,
   * `until-the-next`: no day is set yet; `not-named`: 91.417 does not ask for it.
   */
  readonly keepThrough:
    CalendarDate | 'with-the-aircraft' | 'until-repaired' | 'until-the-next' | 'not-named';
  readonly cite: CiteId;
  readonly because: string;
  /** Whether the law still asks for it on the day it was asked about. */
  readonly asked: boolean;
  readonly strictReading?: string;
}

const WITH_THE_AIRCRAFT: Partial<Record<RecordKind, readonly [CiteId, string]>> = {
  'total-time': ['14cfr91.417(a)(2)(i)', 'Total time in service'],
  'life-limit': ['14cfr91.417(a)(2)(ii)', 'The status of a life-limited part'],
  overhaul: ['14cfr91.417(a)(2)(iii)', 'The time since an overhaul that is required at a set time'],
  directive: ['14cfr91.417(a)(2)(v)', 'The status of an airworthiness directive'],
  major: ['14cfr91.417(a)(2)(vi)', 'Form 337'],
};

const STRICT =
  '91.417(b)(1) does not say which end counts when work is repeated within the year. Here both must be past.';

/** How long the law asks for a record. `on`: the day at the base for which `asked` is answered. */
export function retentionOf(record: RecordToKeep, on: CalendarDate): Retention {
  const status = WITH_THE_AIRCRAFT[record.kind];
  if (status) {
    const [cite, what] = status;
    return {
      keepThrough: 'with-the-aircraft',
      cite,
      because: `${what} is kept and goes with the aircraft when it is sold.`,
      asked: true,
    };
  }
  switch (record.kind) {
    case 'list':
      return listRetention(record, on);
    case 'judgement':
      return {
        keepThrough: 'not-named',
        cite: '14cfr91.417(a)',
        because: 'No paragraph of 91.417 names it. It stays with the record it belongs to.',
        asked: false,
      };
    case 'inspection':
      return record.supersededOn === null
        ? untilTheNext('14cfr91.417(b)(1)', 'inspection')
        : yearAndMore(record, on);
    case 'altimeter-transponder-test':
      return record.supersededOn === null
        ? untilTheNext('14cfr91.417(a)', 'test')
        : {
            keepThrough: record.supersededOn,
            cite: '14cfr91.417(a)',
            because: `91.417(a) leaves tests of 91.411 and 91.413 out. The next test was made on ${dayInWords(record.supersededOn)}.`,
            asked: on <= record.supersededOn,
          };
    default:
      return yearAndMore(record, on);
  }
}

/** It shows that the aircraft is in its inspection until the next one takes its place. */
const untilTheNext = (cite: CiteId, what: 'inspection' | 'test'): Retention => ({
  keepThrough: 'until-the-next',
  cite,
  because: `It shows that the ${what} is current: kept until the next ${what} supersedes it.`,
  asked: true,
});

/** (b)(3) */
function listRetention({ repairedOn }: RecordToKeep, on: CalendarDate): Retention {
  const cite = '14cfr91.417(b)(3)';
  return repairedOn === null
    ? {
        keepThrough: 'until-repaired',
        cite,
        because: 'Kept until every item is repaired and the aircraft approved for return to service.',
        asked: true,
      }
    : {
        keepThrough: repairedOn,
        cite,
        because: `Its last item was repaired and approved for return to service on ${dayInWords(repairedOn)}.`,
        asked: on <= repairedOn,
      };
}

/** (b)(1) */
function yearAndMore({ doneOn, supersededOn }: RecordToKeep, on: CalendarDate): Retention {
  const cite = '14cfr91.417(b)(1)';
  if (!doneOn.known) {
    return {
      keepThrough: 'until-the-next',
      cite,
      because: `Not known: ${doneOn.missing}. Kept until the work is repeated or superseded.`,
      asked: true,
    };
  }
  const year = aYearAfter(doneOn.value);
  const keepThrough = supersededOn !== null && supersededOn > year ? supersededOn : year;
  const asked = on <= keepThrough;
  if (supersededOn === null) {
    return {
      keepThrough,
      cite,
      because: `One year after the work of ${dayInWords(doneOn.value)}; earlier only if it is repeated or superseded.`,
      asked,
    };
  }
  return {
    keepThrough,
    cite,
    because: `Repeated or superseded on ${dayInWords(supersededOn)}; the year ends on ${dayInWords(year)}.`,
    asked,
    strictReading: STRICT,
  };
}

/**
 * Last day of "1 year after the work is performed": the same day of the next year. Of 29 February it is 1 March, because
 * a year is not over before.
 */
export function aYearAfter(done: CalendarDate): CalendarDate {
  const from = parseCalendarDate(done);
  const later = from.add({ years: 1 });
  return (later.day === from.day ? later : later.add({ days: 1 })).toString();
}

/** Which kind of record signed work is: its own kind, or that of what recurs and was answered by it. */
export function kindOfWorkRecord(workKind: string, answers: RequirementKind | null): RecordKind {
  if (answers !== null) return kindOfCompliance(answers);
  switch (workKind) {
    case 'annual':
    case 'hundred-hour':
      return 'inspection';
    case 'static-test':
    case 'altimeter-transponder-test':
      return 'altimeter-transponder-test';
    case 'major':
      return 'major';
    default:
      return 'work';
  }
}

/** Which kind of record the answer to something that recurs is. */
export function kindOfCompliance(kind: RequirementKind): RecordKind {
  switch (kind) {
    case 'annual':
    case 'hundred-hour':
    case 'elt-inspection':
      return 'inspection';
    case 'static-and-altimeter':
    case 'transponder':
      return 'altimeter-transponder-test';
    case 'directive':
      return 'directive';
    case 'life-limit':
      return 'life-limit';
    case 'elt-battery':
    case 'vor-check':
    case 'maker-interval':
      return 'work';
  }
}
