import { randomUUID } from 'node:crypto';
import { command, type Context } from '../access/service';
import { calendarDateOrNull } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import type { AircraftTypeFacts } from '../rules/aircraft';
import { factOf, known, type CalendarDate } from '../rules/facts';
import type { PartOfAircraft } from '../rules/jasc';
import { localDate } from '../rules/months';
import { checkEntry439 } from '../rules/part-43/43-9-entry';
import {
  mayApproveReturnToService,
  whoCanSentence,
  type SigningRuling,
  type WorkKind,
  type WorkToSign,
} from '../rules/who-may-sign';
import type { SignerFacts } from '../rules/people';
import { entryContent, entryHash, requireWork, type WorkRow } from './entry';
import { signWorkInput } from './schema';

/** What the signer declares by signing, shown before and kept with the signature. */
export const RETURN_TO_SERVICE_STATEMENT =
  'I approve the aircraft for return to service with respect to the work described here and no other (14 CFR 43.9).';

/**
 * Approval for return to service. The password was asked again at the door. Here the law is asked: is the entry
 * whole (43.9(a)), and does this person's certificate reach this work (43.7, part 65)? If so the signature is bound to
 * the entry, the work is frozen, and the write-up is closed; a deferral it had ends.
 */
export const signWork = command({
  verb: 'work.sign',
  input: signWorkInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const work = await requireWork(tx, operatorId, input.workId);
    if (work.state === 'started') {
      throw new Refusal('conflict', { say: 'Write the entry first: there is nothing to sign yet.' });
    }
    if (work.state !== 'entered') throw new Refusal('conflict', { say: 'This work is closed already.' });
    if (entryHash(work) !== input.entryHash) {
      throw new Refusal('superseded', {
        say: 'The entry was changed after you read it. Read it again, then sign.',
      });
    }
    const zone = work.aircraft.base.zone;
    const on = dayAtBase(now, zone);
    const facts = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const toSign = workToSign(work, facts);
    const ruling = mayApproveReturnToService(facts, toSign, on);
    if (!ruling.allowed || !ruling.under) {
      throw new Refusal('signature_refused', {
        say: `Your certificates do not allow this signature. ${whoCanSentence(toSign)}`,
        lines: linesOf(ruling.lines),
      });
    }
    const entryLines = entryLinesOf(work, facts, ruling, on);
    const gaps = entryLines.filter((line) => line.effect === 'bars');
    if (gaps.length > 0) {
      throw new Refusal('signature_refused', { say: 'The entry is not complete.', lines: linesOf(gaps) });
    }
    const lines = [...ruling.lines, ...entryLines];
    const { certificate, capacity } = ruling.under;
    const content = {
      entry: entryContent(work),
      statement: RETURN_TO_SERVICE_STATEMENT,
      signer: { name: actor.name, capacity, certificate },
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, zone);
    const signOffId = randomUUID();
    await tx.signOff.create({
      data: {
        id: signOffId,
        operatorId,
        workId: work.id,
        personId: actor.personId,
        personName: actor.name,
        certificateKind: certificate.kind,
        certificateNumber: certificate.number,
        statement: RETURN_TO_SERVICE_STATEMENT,
        lines: lines as object,
        ...signature,
      },
    });
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: { state: 'signed' },
    });
    if (work.discrepancy && !work.deferralId) await closeWriteUp(context, work, input.placardRemoved);
    await factsChanged(tx, operatorId, work.aircraftId);
    if (work.discrepancyId) {
      await tellReporters(context, {
        discrepancyId: work.discrepancyId,
        what: work.deferralId ? 'made-safe' : 'repaired',
        eventId: signOffId,
        byName: actor.name,
        words: work.description ?? work.title,
      });
    }
    return {
      value: { signOffId, hash: signature.hash },
      audit: {
        subjectKind: 'work',
        subjectId: work.id,
        detail: {
          title: work.title,
          writeUp: work.discrepancy?.number ?? null,
          capacity,
          hash: signature.hash,
        },
      },
    };
  },
});

/** The work as the law of signatures sees it, for this signer. */
export function workToSign(work: WorkRow, signer: Pick<SignerFacts, 'name'>): WorkToSign {
  return {
    part: work.part as PartOfAircraft,
    kind: work.workKind as WorkKind,
    preventiveItem: work.preventiveItem,
    swapOnly: work.swapOnly,
    aircraftCategory: work.aircraft.type.category as AircraftTypeFacts['category'],
    performedBySigner: work.performedBy?.trim().toLowerCase() === signer.name.trim().toLowerCase(),
  };
}

function entryLinesOf(work: WorkRow, signer: SignerFacts, ruling: SigningRuling, on: CalendarDate) {
  return checkEntry439(
    {
      description: work.description,
      dataReference: work.references,
      startedOn: known(localDate(work.startedAt.toISOString(), work.aircraft.base.zone)),
      completedOn: factOf(calendarDateOrNull(work.completedOn), 'the day the work was completed'),
      performedBy: work.performedBy ? [work.performedBy] : [],
      approver: {
        name: signer.name,
        signed: true,
        certificateNumber: ruling.under?.certificate.number ?? null,
        certificateKind: ruling.under?.certificate.kind ?? null,
      },
    },
    on,
  );
}

/** The write-up is repaired: it closes, and a deferral it had ends with its placard taken down. */
async function closeWriteUp(
  { tx, operatorId, actor, now }: Context,
  work: WorkRow,
  placardRemoved: boolean | null,
): Promise<void> {
  const discrepancyId = work.discrepancyId;
  if (!discrepancyId) return;
  const live = await tx.deferral.findMany({
    where: { operatorId, discrepancyId, end: null },
    include: { placards: true },
  });
  for (const deferral of live) {
    const standing = deferral.placards.filter((placard) => placard.placedAt && !placard.removedAt);
    if (standing.length > 0 && placardRemoved !== true) {
      throw fieldRefusal('placardRemoved', 'The item works again: take its placard down and say so.');
    }
    for (const placard of standing) {
      await tx.placard.update({
        where: { operatorId_id: { operatorId, id: placard.id } },
        data: { removedAt: now, removedById: actor.personId },
      });
    }
    await tx.deferralEnd.create({
      data: {
        id: randomUUID(),
        operatorId,
        deferralId: deferral.id,
        how: 'repaired',
        words: work.title,
        endedById: actor.personId,
        endedAt: now,
      },
    });
  }
  await tx.discrepancy.update({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    data: { state: 'closed', closedAt: now, closedHow: 'repaired' },
  });
}
