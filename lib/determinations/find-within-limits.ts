import type { z } from 'zod';
import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { workPartOf } from '../rules/findings/catalogue';
import { mayFindWithinLimits } from '../rules/who-may-determine';
import { heldAgainstLimits, limitsOfWriteUp, neededInWords, type MeasuredWithin } from './limits-of-write-up';
import { refuseListedUnairworthy } from './listed-unairworthy';
import { recordDetermination } from './record-determination';
import { findWithinLimitsInput } from './schema';
import { requireAllowed, requireOpenWriteUp } from './write-up';
import { said } from '../words/said';

/** Kinds that can lie within a maker's limit. What does not work, and a paper that is missing, cannot. */
export const MEASURABLE: readonly string[] = [
  'damage',
  'wear',
  'leak',
  'contamination',
  'fastener',
  'servicing',
];

/**
 * A mechanic with the rating for the part finds the condition within a named limit. Where the aircraft has stored limits for
 * the finding, numbers are held against them; else the limit and its source are written. The write-up stays open as a "watch":
 * within limits today, looked at again. Refuses what stands on a signed list of 43.11(b).
 */
export const findWithinLimits = command({
  verb: 'within-limits.find',
  input: findWithinLimitsInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
    await refuseListedUnairworthy(tx, operatorId, writeUp);
    if (!MEASURABLE.includes(writeUp.kind)) {
      throw new Refusal('conflict', {
        say: said(
          'Only a measurable condition can be within limits. Equipment that does not work is repaired or deferred.',
        ),
      });
    }
    const part = workPartOf(writeUp.findingKey, writeUp.jasc);
    if (!part.known) {
      throw new Refusal('conflict', {
        say: said('Give the write-up its JASC code first: the part decides who may find this.'),
      });
    }
    const zone = writeUp.aircraft.base.zone;
    const signer = await readSigner(tx, operatorId, actor.personId);
    const ruling = mayFindWithinLimits(signerFacts(signer), part.value, dayAtBase(now, zone));
    requireAllowed(ruling);
    const limits = await limitsOfWriteUp(tx, { ...writeUp, operatorId });
    const { statement } = input;
    const beside = { needed: neededInWords(writeUp.findingKey, limits), words: input };
    const within = limits.length > 0 ? heldAgainstLimits(limits, readingsOf(input), beside) : inWords(input);
    const { measured, limitText, limitSource } = within;
    const [first] = within.readings;
    const signed = await recordDetermination(context, writeUp, signer, {
      kind: 'within-limits',
      under: ruling.under,
      statement,
      severity: 'watch',
      measured,
      limitText,
      limitSource,
      measurement: first?.measurement,
      measuredValue: first?.measuredValue,
      limitId: first?.limitId,
      lines: ruling.lines,
      said: {
        measured,
        limit: limitText,
        source: limitSource,
        ...(within.readings.length > 0 ? { readings: within.readings } : {}),
      },
    });
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: { severity: 'watch' },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    await tellReporters(context, {
      discrepancyId: writeUp.id,
      what: 'within-limits',
      eventId: signed.id,
      byName: actor.name,
      words: statement,
    });
    return {
      value: { determinationId: signed.id },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: { number: writeUp.number, measured, limit: limitText, hash: signed.hash },
      },
    };
  },
});

type Input = z.output<typeof findWithinLimitsInput>;

/** The numbers typed; the one a stored limit asks for is needed. */
function readingsOf({ limitId, measuredValue, alsoMeasured = [] }: Input) {
  if (limitId === undefined || measuredValue === undefined) {
    throw fieldRefusal(
      'measuredValue',
      said('This aircraft has a stored limit for this finding: enter the number that was measured.'),
    );
  }
  return [{ limitId, measuredValue }, ...alsoMeasured];
}

/** Without a stored limit: what was measured, the limit, and where it comes from, all in words and all needed: the schema asks. */
function inWords({ measured, limitText, limitSource, limitId }: Input): MeasuredWithin {
  if (limitId !== undefined) {
    throw fieldRefusal('limitId', said('This aircraft has no such limit for this finding.'));
  }
  return { measured, limitText, limitSource, readings: [] };
}
