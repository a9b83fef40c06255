import { command } from '../access/service';
import { instant } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import { endLimitInput } from './schema';
import { said } from '../words/said';

/**
 * Ends a stored limit: a newer document took its place. What was found within it stays. A number that it would have caught is
 * judged by nothing from then on, so it is a signature; the audit row keeps the content and its hash.
 */
export const endLimit = command({
  verb: 'limit.end',
  input: endLimitInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.limitId } };
    const row = await tx.storedLimit.findUnique({ where: key, include: { aircraft: true } });
    if (!row || row.aircraft.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such limit here.') });
    if (row.endedAt) throw new Refusal('conflict', { say: said('This has been ended already.') });
    const { measurement, unit, min, max, source } = row;
    const content = { measurement, unit, min, max, source, why: input.why, endedAt: instant(now) };
    await tx.storedLimit.update({ where: key, data: { endedAt: now, endedById: actor.personId } });
    await factsChanged(tx, operatorId, row.aircraftId);
    return {
      value: { limitId: row.id },
      audit: {
        subjectKind: 'limit',
        subjectId: row.id,
        detail: {
          registration: row.aircraft.registration,
          ...content,
          hash: contentHash(content),
          by: actor.name,
        },
      },
    };
  },
});
