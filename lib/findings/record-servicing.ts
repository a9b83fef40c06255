import { command } from '../access/service';
import { recordDetermination } from '../determinations/record-determination';
import { requireAllowed, requireOpenWriteUp, underWork } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { mayRecordServicing } from '../rules/who-may-determine';
import { recordServicingInput } from './schema';
import { isClosedByServicing } from './servicing';
import { said } from '../words/said';

/**
 * Servicing done (oil added, tyre inflated, samples clean): closes a write-up that servicing settles, and only such a
 * one. Once a mechanic has judged it, it is the mechanic's.
 */
export const recordServicing = command({
  verb: 'servicing.record',
  input: recordServicingInput,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
    if (!isClosedByServicing(writeUp)) {
      throw new Refusal('conflict', {
        say: said('This is more than servicing: a mechanic has to see to it.'),
      });
    }
    if (writeUp.determinations.length > 0) {
      throw new Refusal('conflict', {
        say: said('A mechanic has judged this since it was written up: it ends with a signature.'),
      });
    }
    if (underWork(writeUp)) {
      throw new Refusal('conflict', { say: said('Work on this has begun; it ends with a signature.') });
    }
    const signer = await readSigner(tx, operatorId, actor.personId);
    const ruling = mayRecordServicing(signerFacts(signer), dayAtBase(now, writeUp.aircraft.base.zone));
    requireAllowed(ruling);
    const signed = await recordDetermination(context, writeUp, signer, {
      kind: 'servicing',
      under: ruling.under,
      statement: input.words,
      lines: ruling.lines,
      said: input.oilAddedTenths === undefined ? {} : { oilAddedTenths: input.oilAddedTenths },
    });
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: { state: 'closed', closedAt: now, closedHow: 'serviced' },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    await tellReporters(context, {
      discrepancyId: writeUp.id,
      what: 'serviced',
      eventId: signed.id,
      byName: actor.name,
      words: input.words,
    });
    return {
      value: { determinationId: signed.id },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: { number: writeUp.number, words: input.words, by: actor.name, hash: signed.hash },
      },
    };
  },
});
