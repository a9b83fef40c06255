import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import { mayExtendThrough } from '../rules/advisory/mmel-extension';
import { aboutDiscrepancy } from '../rules/part-91/91-213-item';
import { extensionOf } from '../rules/part-91/91-213-list-entry';
import { extendIntervalInput } from './schema';
import { linesOf } from './write-up';
import { said } from '../words/said';

/**
 * Lengthens the repair interval of an item deferred under a minimum equipment list, once, where the letter of authorization
 * gives the authority. The list and letter bind the operator, so no certificate is asked for; who did it and why is signed.
 * Refuses with the paragraphs when the authority, the category, the day or the next inspection is against it.
 */
export const extendInterval = command({
  verb: 'deferral.extend',
  input: extendIntervalInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, { deferralId, until, reason }) {
    const deferral = await tx.deferral.findUnique({
      where: { operatorId_id: { operatorId, id: deferralId } },
      include: { end: true, discrepancy: { select: { id: true, number: true, aircraftId: true } } },
    });
    if (!deferral) throw new Refusal('not_found', { say: said('There is no such deferral here.') });
    if (deferral.end) throw new Refusal('conflict', { say: said('This deferral has ended.') });
    const row = await readAircraft(tx, operatorId, deferral.discrepancy.aircraftId);
    const facts = row && aircraftFacts(row);
    const writeUp = facts?.discrepancies.find(({ id }) => id === deferral.discrepancy.id);
    if (!row || !facts || !writeUp) throw new Refusal('not_found');
    const { zone } = row.base;
    const asked = extensionOf(facts, writeUp, dayAtBase(now, zone));
    if (asked === null) {
      throw new Refusal('conflict', {
        say: said(
          'Only an item deferred under a minimum equipment list that is in force has a repair interval to extend.',
        ),
      });
    }
    const ruling = mayExtendThrough(asked, until, aboutDiscrepancy(writeUp));
    if (!ruling.allowed) {
      const lines = linesOf(ruling.lines);
      // Where only the day is wrong, it is said beside the day.
      if (asked.allowed)
        throw new Refusal('invalid', { fields: { until: [lines[0]?.because ?? ''] }, lines });
      throw new Refusal('signature_refused', { say: said('This interval cannot be extended.'), lines });
    }
    const authority = facts.mel.known ? (facts.mel.value?.extension?.reference ?? '') : '';
    const content = {
      what: 'repair-interval-extended',
      writeUp: writeUp.number,
      title: writeUp.title,
      aircraft: row.registration,
      endsOn: asked.endsOn,
      until,
      reason,
      authority,
      lines: ruling.lines,
      by: actor.name,
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, zone);
    const extensionId = randomUUID();
    await tx.melExtension.create({
      data: {
        id: extensionId,
        operatorId,
        deferralId,
        untilOn: dateColumn(until),
        reason,
        authority,
        personId: actor.personId,
        personName: actor.name,
        ...signature,
      },
    });
    await factsChanged(tx, operatorId, row.id);
    return {
      value: { extensionId, until },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: { number: writeUp.number, deferralId, until, authority, hash: signature.hash },
      },
    };
  },
});
