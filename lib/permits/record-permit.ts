import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import type { Tx } from '../db/client';
import { readAircraft } from '../fleet/facts';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import { coverable } from './covered';
import { recordPermitInput } from './schema';
import { said } from '../words/said';

/**
 * Records what a special flight permit says (21.197, 21.199), transcribed from its paper and signed by whoever read it. It
 * permits nothing by itself: the FAA does. Refuses what is not this aircraft's, a day of issue to come, and a permit that is
 * over already.
 */
export const recordPermit = command({
  verb: 'permit.record',
  input: recordPermitInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const row = await readAircraft(tx, operatorId, input.aircraftId);
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const from = await requireBase(tx, operatorId, input.fromBaseId, 'fromBaseId');
    const to = await requireBase(tx, operatorId, input.toBaseId, 'toBaseId');
    const today = dayAtBase(now, row.base.zone);
    if (input.issuedOn > today) throw fieldRefusal('issuedOn', said('This day has not come yet.'));
    if (input.goodThrough < today) throw fieldRefusal('goodThrough', said('This permit is over already.'));
    const able = coverable(row);
    const covers = [...new Set(input.covers)].map((id) => {
      const found = able.find((one) => one.id === id);
      if (!found)
        throw fieldRefusal(
          'covers',
          said('Something chosen is no open matter of this aircraft. Look again.'),
        );
      return found;
    });
    const { reference, purpose, issuedBy, issuedOn, goodFrom, goodThrough, crew, limits, asksInspection } =
      input;
    const content = {
      what: 'special-flight-permit',
      aircraft: row.registration,
      reference,
      purpose,
      issuedBy,
      issuedOn,
      goodFrom,
      goodThrough,
      from: from.ident,
      to: to.ident,
      crew,
      limits,
      covers,
      asksInspection,
      by: actor.name,
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, row.base.zone);
    const permitId = randomUUID();
    await tx.specialFlightPermit.create({
      data: {
        id: permitId,
        operatorId,
        aircraftId: row.id,
        reference,
        purpose,
        issuedBy,
        issuedOn: dateColumn(issuedOn),
        goodFrom: dateColumn(goodFrom),
        goodThrough: dateColumn(goodThrough),
        fromBaseId: from.id,
        toBaseId: to.id,
        crew,
        limits: [...limits],
        covers: covers.map((one) => ({ ...one })),
        asksInspection,
        recordedById: actor.personId,
        ...signature,
      },
    });
    await factsChanged(tx, operatorId, row.id);
    return {
      value: { permitId },
      audit: {
        subjectKind: 'special-flight-permit',
        subjectId: permitId,
        detail: { aircraft: row.registration, reference, hash: signature.hash },
      },
    };
  },
});

async function requireBase(tx: Tx, operatorId: string, id: string, field: string) {
  const base = await tx.base.findUnique({ where: { operatorId_id: { operatorId, id } } });
  if (!base) throw fieldRefusal(field, said('There is no such base here.'));
  return base;
}
