import { calendarDateOrNull, instant } from '../db/dates';
import { rulingsForRequirementWork, whoCanSignRequirementWork } from '../inspections/work-of-requirement';
import { nameIn } from '../people/names';
import type { OwedTest, WorkFacts } from '../rules/aircraft';
import type { CalendarDate } from '../rules/facts';
import type { SignerFacts } from '../rules/people';
import type { Ruling } from '../rules/ruling';
import { entryContent, entryHash, type EntryContent, type WorkRow } from './entry';
import { asksOf, type EntryAsks } from './entry-asks';
import { workerAsked, workToSign } from './signing-lines';

/** A piece of work, with whether the person looking could sign it as it stands. */
export interface WorkView {
  readonly id: string;
  readonly forDeferral: boolean;
  readonly state: string;
  readonly startedAt: string;
  readonly startedBy: string;
  readonly entry: EntryContent;
  readonly entryHash: string;
  /** What its entry is asked beyond 43.9(a); of a repair as if it were minor, since its kind can be changed there. */
  readonly asks: EntryAsks;
  readonly signOff: {
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly statement: string;
    readonly at: string;
    readonly hash: string;
  } | null;
  readonly checkFlight: {
    readonly by: string;
    readonly flownOn: string | null;
    readonly words: string;
  } | null;
  /** What is owed after it now: the check flight of 91.407(b), tests of 91.411 and 91.413. */
  readonly owes: { readonly checkFlight: boolean; readonly tests: readonly OwedTest[] };
  /** The signed work whose owed test this is. */
  readonly testFor: { readonly id: string; readonly title: string } | null;
  /** The signed entry this one corrects, and why. */
  readonly corrects: { readonly id: string; readonly why: string } | null;
  /** The signed correction that has taken its place. */
  readonly supersededBy: {
    readonly id: string;
    readonly by: string;
    readonly at: string;
    readonly why: string;
  } | null;
  /** Signed, and no correction stands or is under way. Whether the person may is for the policy. */
  readonly mayCorrect: boolean;
  /** For work not yet signed: the ruling about the person looking, and who else could. */
  readonly mySignature:
    | (Ruling & {
        readonly whoCan: string;
        /** The certificate a signature would be given under; null when the ruling refuses. */
        readonly certificate: { readonly kind: string; readonly number: string } | null;
        /** Somebody else did the work: the signer has to say how they could (43.3). */
        readonly workerAsked: boolean;
      })
    | null;
}

interface Looking {
  readonly me: SignerFacts;
  readonly on: CalendarDate;
  readonly names: ReadonlyMap<string, string>;
  /** The facts of the aircraft's work: what is still owed after it. */
  readonly facts: readonly WorkFacts[];
}

/** A piece of work as `looking` sees it. */
export function workView(work: WorkRow, { me, on, names, facts }: Looking): WorkView {
  const fact = facts.find(({ id }) => id === work.id);
  const underWay = work.state === 'started' || work.state === 'entered';
  const newer = work.corrections.find(({ state }) => state === 'signed');
  return {
    id: work.id,
    forDeferral: work.deferralId !== null,
    state: work.state,
    startedAt: instant(work.startedAt),
    startedBy: nameIn(names, work.startedById),
    entry: entryContent(work),
    entryHash: entryHash(work),
    asks: asksOf(work, asksOf(work).repair ? 'minor' : work.workKind),
    signOff: work.signOff
      ? {
          by: work.signOff.personName,
          certificateKind: work.signOff.certificateKind,
          certificateNumber: work.signOff.certificateNumber,
          statement: work.signOff.statement,
          at: instant(work.signOff.signedAt),
          hash: work.signOff.hash,
        }
      : null,
    checkFlight: work.checkFlight
      ? {
          by: work.checkFlight.personName,
          flownOn: calendarDateOrNull(work.checkFlight.flownOn),
          words: work.checkFlight.words,
        }
      : null,
    owes: {
      checkFlight:
        work.state === 'signed' &&
        fact !== undefined &&
        fact.checkFlight.known &&
        fact.checkFlight.value === 'owed',
      tests: fact?.testsOwed ?? [],
    },
    testFor: work.testFor ? { id: work.testFor.id, title: work.testFor.title } : null,
    corrects: work.supersedes ? { id: work.supersedes.id, why: work.supersedeWhy ?? '' } : null,
    supersededBy: newer?.signOff
      ? {
          id: newer.id,
          by: newer.signOff.personName,
          at: instant(newer.signOff.signedAt),
          why: newer.supersedeWhy ?? '',
        }
      : null,
    mayCorrect: work.state === 'signed' && work.corrections.length === 0 && work.inspectionId === null,
    mySignature: underWay ? mySignature(me, work, on) : null,
  };
}

function mySignature(me: SignerFacts, work: WorkRow, on: CalendarDate): WorkView['mySignature'] {
  const toSign = workToSign(work, me);
  const recurs = work.requirement?.kind ?? null;
  const { allowed, lines, under } = rulingsForRequirementWork(me, toSign, recurs, on);
  return {
    allowed,
    lines,
    whoCan: whoCanSignRequirementWork(toSign, recurs),
    certificate: under?.certificate ?? null,
    workerAsked: workerAsked(work, me, under),
  };
}
