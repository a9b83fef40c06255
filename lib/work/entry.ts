import { calendarDateOrNull } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import type { OwedTest } from '../rules/aircraft';
import type { HoursTenths } from '../rules/facts';
import type { MajorRecordKind } from '../rules/part-43/43-5-before-approval';
import type { MajorAnswers } from '../rules/part-43/43-appendix-a-major';
import type { TestAnswers } from '../rules/part-91/91-411-413-after-work';
import { partsOf, type PartLine } from './parts';
import { said } from '../words/said';

/** What the entry and every act on a piece of work need with it. */
export const WORK_ROW = {
  aircraft: { include: { base: true, type: true } },
  discrepancy: { include: { finding: { select: { findingKey: true } } } },
  deferral: true,
  requirement: true,
  signOff: true,
  checkFlight: true,
  // What this entry corrects, what corrects it, and the work whose owed test it is.
  supersedes: { include: { signOff: true } },
  corrections: { where: { state: { not: 'abandoned' } }, include: { signOff: true } },
  testFor: { include: { signOff: true } },
} as const satisfies Prisma.MaintenanceActionInclude;

export type WorkRow = Prisma.MaintenanceActionGetPayload<{ include: typeof WORK_ROW }>;

/** One piece of work, or `not_found`. */
export async function requireWork(tx: Tx, operatorId: string, id: string): Promise<WorkRow> {
  const work = await tx.maintenanceAction.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: WORK_ROW,
  });
  if (!work) throw new Refusal('not_found', { say: said('There is no such work here.') });
  return work;
}

/**
 * What an entry says beside its columns. The first five belong to work on something that recurs; the rest to 43.5,
 * Appendix B, and write-ups that nobody could find again.
 */
export interface EntryDetails {
  /** 91.411(d): highest altitude tested, feet. */
  readonly testedToFt?: number;
  /** 91.207(c): last good day of the battery now fitted. */
  readonly newExpiry?: string;
  readonly method?: string;
  readonly revision?: string;
  /** Answers of 91.411(a)(2), (a)(3) and 91.413(b). */
  readonly tests?: TestAnswers;
  /** Could not duplicate: how it was looked for. */
  readonly lookedFor?: string;
  /** Which paper records a major repair: Form 337, or a repair station's work order (Appendix B(b)). */
  readonly majorRecord?: MajorRecordKind;
  /** Appendix B(d): an extended-range tank in the cabin or baggage compartment, and the copy of the form put aboard. */
  readonly cabinTank?: boolean;
  readonly copyAboard?: boolean;
}

/** The details of a piece of work; empty for an entry that has none. */
export const detailsOf = (work: Pick<WorkRow, 'details'>): EntryDetails =>
  (work.details ?? {}) as EntryDetails;

/** The answers to the questions of Appendix A(b), by question; null when they were not asked. */
export const majorAnswersOf = (work: Pick<WorkRow, 'majorAnswers'>): MajorAnswers | null =>
  work.majorAnswers as MajorAnswers | null;

/**
 * The entry as it will be signed: everything 43.9(a) asks of the work itself, and what kind of work it was. What an older
 * entry was not asked has no key here: its hash is over what it said.
 */
export function entryContent(work: WorkRow) {
  return {
    aircraft: work.aircraft.registration,
    serial: work.aircraft.serial,
    writeUp: work.discrepancy?.number ?? null,
    title: work.title,
    part: work.part,
    jasc: work.jasc,
    workKind: work.workKind,
    preventiveItem: work.preventiveItem,
    swapOnly: work.swapOnly,
    description: work.description,
    references: work.references,
    partsUsed: work.partsUsed,
    completedOn: calendarDateOrNull(work.completedOn),
    performedBy: work.performedBy,
    ttisTenths: work.ttisTenths,
    checkFlightNeeded: work.checkFlightNeeded,
    checkFlightReason: work.checkFlightReason,
    ...whereSaid(work),
  };
}

/** What entries say since they are asked more; each only where it was said. */
interface SaidSince {
  readonly parts?: readonly PartLine[];
  readonly laborTenths?: HoursTenths;
  readonly majorAnswers?: MajorAnswers;
  readonly testsOwed?: readonly OwedTest[];
  readonly form337?: string;
  readonly approvedData?: string;
  readonly limitsChanged?: boolean;
  readonly limitsRevised?: string;
  /** 43.3(d): the signer supervised; false: whoever did it was certificated. Said with the signature. */
  readonly supervised?: boolean;
  readonly outcome?: string;
  readonly details?: EntryDetails;
  /** What recurs and is answered by this work. */
  readonly requirement?: string;
  /** The entry this one corrects: hash of its signature, and why. */
  readonly corrects?: { readonly hash: string | null; readonly why: string };
  /** The signed work whose owed test this is. */
  readonly testFor?: { readonly title: string; readonly hash: string | null };
}

function whereSaid(work: WorkRow): SaidSince {
  const parts = partsOf(work.parts);
  const majorAnswers = majorAnswersOf(work);
  const details = detailsOf(work);
  return {
    ...(parts.length > 0 && { parts }),
    ...(work.laborTenths !== null && { laborTenths: work.laborTenths }),
    ...(majorAnswers && { majorAnswers }),
    ...(work.testsOwed.length > 0 && { testsOwed: work.testsOwed as OwedTest[] }),
    ...(work.form337 && { form337: work.form337 }),
    ...(work.approvedData && { approvedData: work.approvedData }),
    ...(work.limitsChanged !== null && { limitsChanged: work.limitsChanged }),
    ...(work.limitsRevised && { limitsRevised: work.limitsRevised }),
    ...(work.supervised !== null && { supervised: work.supervised }),
    ...(work.outcome && { outcome: work.outcome }),
    ...(Object.keys(details).length > 0 && { details }),
    ...(work.requirement && { requirement: work.requirement.name }),
    ...(work.supersedes && {
      corrects: { hash: work.supersedes.signOff?.hash ?? null, why: work.supersedeWhy ?? '' },
    }),
    ...(work.testFor && {
      testFor: { title: work.testFor.title, hash: work.testFor.signOff?.hash ?? null },
    }),
  };
}

/** The entry, as screens and papers read it. */
export type EntryContent = ReturnType<typeof entryContent>;

/** Hash of the entry; shown to the signer and demanded back with the signature. */
export const entryHash = (work: WorkRow): string => contentHash(entryContent(work));
