import { command } from '../access/service';
import { Prisma } from '../db/client';
import { dateColumn } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { parseTenths } from '../rules/hours';
import { testsOwedBy } from '../rules/part-91/91-411-413-after-work';
import { refuseGaps, type EntryInput } from './check-entry';
import { entryHash, requireWork, type EntryDetails, type WorkRow } from './entry';
import { asksOf, type EntryAsks } from './entry-asks';
import { enterWorkInput } from './schema';
import { refuseTooSmallAWord } from './usual-kind';
import { said } from '../words/said';

/**
 * Writes the entry of 43.9(a). It may be written again until it is signed; the signature binds the last version. What
 * Appendix A(b), 43.5 and 91.411 and 91.413 ask about the work is answered here by a person, and refused when it is not.
 */
export const enterWork = command({
  verb: 'work.enter',
  input: enterWorkInput,
  async run({ tx, operatorId, actor, now }, input) {
    const work = await requireWork(tx, operatorId, input.workId);
    refuseOtherDoor(work);
    if (work.state !== 'started' && work.state !== 'entered') {
      throw new Refusal('conflict', {
        say: said('This work is signed or was given up. A correction is a new entry.'),
      });
    }
    if (input.entryHash !== undefined && input.entryHash !== entryHash(work)) {
      throw new Refusal('superseded', {
        say: said(
          'Somebody else wrote this entry since you opened it. What you typed is still here: read theirs, then write again.',
        ),
      });
    }
    const kind = kindEntered(work, input);
    const asks = asksOf(work, kind);
    refuseGaps(work, input, kind, asks);
    const details = detailsEntered(work, input, kind, asks);
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: {
        state: 'entered',
        workKind: kind,
        preventiveItem: kind === 'preventive' ? work.preventiveItem : null,
        outcome: asks.outcome ? input.outcome : null,
        description: input.description,
        references: input.references || null,
        parts: input.parts ? [...input.parts] : Prisma.DbNull,
        partsUsed: input.partsUsed === undefined ? work.partsUsed : input.partsUsed || null,
        laborTenths: input.laborHours ? parseTenths(input.laborHours) : null,
        completedOn: dateColumn(input.completedOn),
        performedBy: input.performedBy,
        // A correction is about the time at which the work was done.
        ttisTenths: work.supersedesId ? work.ttisTenths : work.aircraft.ttisTenths,
        majorAnswers: asks.majorQuestions.length > 0 ? answersAsked(asks, input) : Prisma.DbNull,
        testsOwed: [...testsOwedBy(details.tests ?? {})],
        ...majorColumns(input, kind),
        details: Object.keys(details).length > 0 ? (details as object) : Prisma.DbNull,
        supervised: null,
        checkFlightNeeded: input.checkFlightNeeded,
        checkFlightReason: input.checkFlightReason,
        enteredById: actor.personId,
        enteredAt: now,
      },
    });
    await factsChanged(tx, operatorId, work.aircraftId);
    const hash = entryHash(await requireWork(tx, operatorId, work.id));
    return {
      value: { workId: work.id, entryHash: hash },
      audit: { subjectKind: 'work', subjectId: work.id, detail: { title: work.title, entryHash: hash } },
    };
  },
});

/** Work of an inspection has its own entry, 43.11, and is signed with it: 43.9(c). */
export function refuseOtherDoor(work: Pick<WorkRow, 'inspectionId'>): void {
  if (work.inspectionId) {
    throw new Refusal('conflict', { say: said('It is entered and signed with its inspection.') });
  }
}

/** The kind of repair the entry says it was; kept as begun unless said. */
function kindEntered(work: WorkRow, { workKind }: EntryInput): string {
  if (!workKind || workKind === work.workKind) return work.workKind;
  if (!asksOf(work).repair) throw fieldRefusal('workKind', said('This is no repair.'));
  if (work.discrepancy) refuseTooSmallAWord(work.discrepancy, work.part, workKind);
  return workKind;
}

/** Answers to the questions that were asked, and to no others. */
const answersAsked = (asks: EntryAsks, { majorAnswers }: EntryInput): Record<string, boolean> =>
  Object.fromEntries(asks.majorQuestions.map(({ key }) => [key, majorAnswers?.[key] === true]));

const majorColumns = (input: EntryInput, kind: string) =>
  kind === 'major'
    ? {
        form337: input.form337 || null,
        approvedData: input.approvedData || null,
        limitsChanged: input.limitsChanged ?? null,
        limitsRevised: input.limitsChanged ? input.limitsRevised || null : null,
      }
    : { form337: null, approvedData: null, limitsChanged: null, limitsRevised: null };

function detailsEntered(work: WorkRow, input: EntryInput, kind: string, asks: EntryAsks): EntryDetails {
  const { tests, lookedFor, majorRecord, cabinTank, copyAboard } = input;
  const ofRecord = work.requirementId || work.testForId ? input.details : undefined;
  const answered = asks.repair && tests && Object.values(tests).some((answer) => answer !== undefined);
  return {
    ...ofRecord,
    ...(answered && { tests }),
    ...(asks.outcome && input.outcome === 'could-not-duplicate' && { lookedFor }),
    ...(kind === 'major' && { majorRecord, cabinTank, ...(cabinTank && { copyAboard }) }),
  };
}
