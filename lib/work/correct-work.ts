import { command } from '../access/service';
import { Prisma } from '../db/client';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { refuseOtherDoor } from './enter-work';
import { requireWork, type WorkRow } from './entry';
import { correctWorkInput } from './schema';
import { said } from '../words/said';

/**
 * Begins the correction of a signed entry. Nothing signed is changed: a copy of the work stands beside it, is entered and
 * signed like any other, and with its signature takes the earlier one's place in the record; both stay readable. Until
 * then the aircraft does not fly, because work stands unsigned (91.407(a)). Given up, the earlier entry stands.
 */
export const correctWork = command({
  verb: 'work.correct',
  input: correctWorkInput,
  async run({ tx, operatorId, actor, requestId }, input) {
    const work = await requireWork(tx, operatorId, input.workId);
    refuseOtherDoor(work);
    if (work.state !== 'signed') {
      throw new Refusal('conflict', {
        say: said('It is not signed: the entry itself can still be changed.'),
      });
    }
    const standing = work.corrections[0];
    if (standing) {
      throw new Refusal('conflict', {
        say:
          standing.state === 'signed'
            ? said('This entry was corrected already. Correct the newer one.')
            : said('A correction of this entry is under way: sign it or give it up.'),
      });
    }
    if (work.discrepancyId && !work.deferralId) await refuseUnderWork(tx, operatorId, work.discrepancyId);
    await tx.maintenanceAction.create({
      data: {
        ...copied(work),
        id: requestId,
        operatorId,
        state: 'started',
        supersedesId: work.id,
        supersedeWhy: input.why,
        startedById: actor.personId,
      },
    });
    await factsChanged(tx, operatorId, work.aircraftId);
    return {
      value: { workId: requestId },
      audit: {
        subjectKind: 'work',
        subjectId: requestId,
        detail: { title: work.title, corrects: work.signOff?.hash ?? null, why: input.why },
      },
    };
  },
});

async function refuseUnderWork(tx: Prisma.TransactionClient, operatorId: string, discrepancyId: string) {
  const underWay = await tx.maintenanceAction.findFirst({
    where: { operatorId, discrepancyId, deferralId: null, state: { in: ['started', 'entered'] } },
  });
  if (underWay) {
    throw new Refusal('conflict', {
      say: said('Other work on this write-up is under way: sign it or give it up.'),
    });
  }
}

/** What the correction starts from. The day the work began stays: a completion before it would be no date (43.9(a)(2)). */
const copied = (work: WorkRow) => ({
  aircraftId: work.aircraftId,
  discrepancyId: work.discrepancyId,
  deferralId: work.deferralId,
  requirementId: work.requirementId,
  testForId: work.testForId,
  title: work.title,
  part: work.part,
  jasc: work.jasc,
  workKind: work.workKind,
  preventiveItem: work.preventiveItem,
  swapOnly: work.swapOnly,
  startedAt: work.startedAt,
  description: work.description,
  references: work.references,
  partsUsed: work.partsUsed,
  laborTenths: work.laborTenths,
  completedOn: work.completedOn,
  performedBy: work.performedBy,
  ttisTenths: work.ttisTenths,
  testsOwed: work.testsOwed,
  form337: work.form337,
  approvedData: work.approvedData,
  limitsChanged: work.limitsChanged,
  limitsRevised: work.limitsRevised,
  outcome: work.outcome,
  checkFlightNeeded: work.checkFlightNeeded,
  checkFlightReason: work.checkFlightReason,
  parts: work.parts ?? Prisma.DbNull,
  majorAnswers: work.majorAnswers ?? Prisma.DbNull,
  details: work.details ?? Prisma.DbNull,
});
