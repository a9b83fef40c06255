import { command, type Context } from '../access/service';
import { fieldRefusal, Refusal } from '../problems';
import { contentHash, toPlain } from '../records/canonical';
import { linesOf } from '../determinations/write-up';
import { readSigner, signerFacts } from '../people/signer';
import { judgeFlight } from './compose-flight';
import { releaseFlightInput } from './schema';

/**
 * Releases a flight, or refuses. The rules are asked again inside the transaction that records the release, behind the
 * operator's write lock: a write-up that came in a moment before is seen, one that comes a moment later finds the
 * release recorded with the exact facts it stood on. Refuses `superseded` when the facts moved since the dispatcher
 * looked, `no_go` with the paragraphs when the answer is no go.
 */
export const releaseFlight = command({
  verb: 'flight.release',
  input: releaseFlightInput,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const { requestId: ownNumber, factsVersion, limitsPassedOn, ...composed } = input;
    void ownNumber;
    if (!composed.pilotId) throw fieldRefusal('pilotId', 'A release needs its pilot in command.');
    await requirePilot(context, composed.pilotId);
    await refuseSpentPermit(context, composed.permitId);
    const judged = await judgeFlight(context, composed);
    if (judged.answer.outcome === 'no-go') {
      throw new Refusal('no_go', { lines: linesOf(judged.answer.lines) });
    }
    if (judged.factsVersion !== factsVersion) throw new Refusal('superseded');
    const limited = judged.answer.outcome === 'go-with-limits';
    if (limited && !limitsPassedOn) {
      throw fieldRefusal('limitsPassedOn', 'Pass the limits to the pilot in command, then confirm it here.');
    }
    const kept = toPlain({ flight: judged.flight, facts: judged.facts, answer: judged.answer });
    const hash = contentHash({
      ...kept,
      rulesVersion: judged.rulesVersion,
      factsVersion,
      by: actor.personId,
    });
    await tx.release.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: judged.row.id,
        dispatcherId: actor.personId,
        pilotId: composed.pilotId,
        departAt: new Date(judged.flight.departAt),
        arriveAt: new Date(judged.flight.arriveAt),
        flight: kept.flight as object,
        facts: kept.facts as object,
        factsVersion,
        permitId: composed.permitId,
        outcome: judged.answer.outcome,
        answer: kept.answer as object,
        rulesVersion: judged.rulesVersion,
        limitsPassedOn,
        hash,
        releasedAt: now,
      },
    });
    return {
      value: { releaseId: requestId, outcome: judged.answer.outcome, hash },
      audit: {
        subjectKind: 'release',
        subjectId: requestId,
        detail: {
          aircraft: judged.row.registration,
          outcome: judged.answer.outcome,
          departAt: judged.flight.departAt,
          factsVersion,
          hash,
        },
      },
    };
  },
});

/** One flight a permit (21.199(a)); the database keeps to it as well. */
async function refuseSpentPermit({ tx, operatorId }: Context, permitId: string | undefined): Promise<void> {
  if (permitId === undefined) return;
  const spent = await tx.release.findFirst({ where: { operatorId, permitId }, select: { id: true } });
  if (spent) {
    throw new Refusal('conflict', {
      say: 'This special flight permit was for one flight, and that flight was released already.',
    });
  }
}

/** The pilot in command holds a pilot certificate and still belongs to the operator. Ratings are the pilot's own part 61. */
async function requirePilot({ tx, operatorId }: Context, pilotId: string): Promise<void> {
  const { name, pilot, leftOn } = signerFacts(await readSigner(tx, operatorId, pilotId));
  if (pilot === null) throw fieldRefusal('pilotId', `No pilot certificate of ${name} is on file.`);
  if (leftOn !== null) throw fieldRefusal('pilotId', `${name} has left.`);
}
