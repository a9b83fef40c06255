import { command, type Context } from '../access/service';
import { instant } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { touched } from '../fleet/require-aircraft';
import { tellOfFlight } from '../notices/tell-of-flight';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { toPlain } from '../records/canonical';
import { releaseHash } from '../records/release-hash';
import { clockInWords } from '../rules/in-words';
import type { UseOfAircraft } from '../rules/operations';
import { lastDayOf } from '../rules/requirement-lines';
import type { Outcome } from '../rules/verdict';
import { expiredBars } from '../rules/who-may-sign';
import { whereActive, whereHolds, whereSpendsPermit } from './active-releases';
import { judgeFlight, type JudgedFlight } from './compose-flight';
import { releaseFlightInput, type ComposedFlight } from './schema';
import { filled, said } from '../words/said';

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
    if (!composed.pilotId) throw fieldRefusal('pilotId', said('A release needs its pilot in command.'));
    await refuseSpentPermit(context, composed.permitId);
    await refuseSpentPlan(context, composed);
    const judged = await judgeFlight(context, composed);
    await requirePilot(context, composed.pilotId, judged.use);
    if (judged.answer.outcome === 'no-go') {
      throw new Refusal('no_go', { lines: linesOf(judged.answer.lines) });
    }
    if (judged.factsVersion !== factsVersion) throw new Refusal('superseded');
    await refuseOverlap(context, judged, composed.pilotId);
    const limited = judged.answer.outcome === 'go-with-limits';
    if (limited && !limitsPassedOn) {
      throw fieldRefusal(
        'limitsPassedOn',
        said('Pass the limits to the pilot in command, then confirm it here.'),
      );
    }
    const kept = toPlain({ flight: judged.flight, facts: judged.facts, answer: judged.answer });
    const spentAhead = judged.spentAhead && toPlain(judged.spentAhead);
    const plannedFlightId = composed.plannedFlightId ?? null;
    const hash = releaseHash({
      ...kept,
      rulesVersion: judged.rulesVersion,
      factsVersion,
      by: actor.personId,
      spentAhead,
      plannedFlightId,
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
        plannedFlightId,
        ...(spentAhead && { spentAhead: spentAhead as unknown as object }),
        outcome: judged.answer.outcome,
        answer: kept.answer as object,
        rulesVersion: judged.rulesVersion,
        limitsPassedOn,
        hash,
        releasedAt: now,
      },
    });
    // The hours of this flight are spent before a later one leaves: those are asked about again.
    touched(tx, judged.row.id);
    if (composed.pilotId !== actor.personId) {
      await tellOfFlight(context, [composed.pilotId], {
        releaseId: requestId,
        what: 'released',
        eventId: requestId,
        discrepancyId: null,
        words: OUTCOME[judged.answer.outcome],
      });
    }
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

const OUTCOME: Readonly<Record<Outcome, string>> = {
  go: 'The answer is go.',
  'go-with-limits': 'The answer is go with limits. Read them before you accept.',
  'no-go': 'The answer is no go.',
};

/** A plan is released once, for the aircraft it was made for. A release that went void or was withdrawn frees it again. */
async function refuseSpentPlan(
  { tx, operatorId }: Context,
  { plannedFlightId, aircraftId }: Pick<ComposedFlight, 'plannedFlightId' | 'aircraftId'>,
): Promise<void> {
  if (plannedFlightId === undefined) return;
  const plan = await tx.plannedFlight.findUnique({
    where: { operatorId_id: { operatorId, id: plannedFlightId } },
    include: { releases: { where: whereHolds, select: { id: true } } },
  });
  if (!plan) throw fieldRefusal('plannedFlightId', said('There is no such planned flight here.'));
  if (plan.aircraftId !== aircraftId) {
    throw fieldRefusal('plannedFlightId', said('This flight is planned with another aircraft.'));
  }
  if (plan.cancelledAt) throw fieldRefusal('plannedFlightId', said('This planned flight was cancelled.'));
  if (plan.releases.length > 0) {
    throw fieldRefusal('plannedFlightId', said('This planned flight was released already.'));
  }
}

/** One aircraft cannot be in two flights, and neither can a pilot in command. Ending when the next begins is no overlap. */
async function refuseOverlap(
  { tx, operatorId, now }: Context,
  { row, flight }: JudgedFlight,
  pilotId: string,
): Promise<void> {
  const overlapping = await tx.release.findMany({
    where: {
      AND: [
        whereActive(now),
        { OR: [{ aircraftId: row.id }, { pilotId }] },
        { events: { none: { what: 'landed' } } },
      ],
      operatorId,
      departAt: { lt: new Date(flight.arriveAt) },
      arriveAt: { gt: new Date(flight.departAt) },
    },
    include: { aircraft: { select: { registration: true } } },
    orderBy: { departAt: 'asc' },
  });
  const fields: Record<string, string[]> = {};
  for (const other of overlapping) {
    const when = `${clockInWords(instant(other.departAt), flight.from.zone)} to ${clockInWords(instant(other.arriveAt), flight.from.zone)}`;
    if (other.aircraftId === row.id) {
      (fields['aircraftId'] ??= []).push(`${row.registration} is released for another flight, ${when}.`);
    }
    if (other.pilotId === pilotId) {
      (fields['pilotId'] ??= []).push(
        `This pilot is released for another flight, ${other.aircraft.registration}, ${when}.`,
      );
    }
  }
  if (overlapping.length > 0) throw new Refusal('invalid', { fields });
}

/**
 * One flight a permit (21.199(a)). A release that went void or was withdrawn before anybody set out was no flight. The write
 * lock of the operator makes the look safe: no other release is given between it and ours.
 */
async function refuseSpentPermit({ tx, operatorId }: Context, permitId: string | undefined): Promise<void> {
  if (permitId === undefined) return;
  const spent = await tx.release.findFirst({
    where: { AND: [whereSpendsPermit], operatorId, permitId },
    select: { id: true },
  });
  if (spent) {
    throw new Refusal('conflict', {
      say: said('This special flight permit was for one flight, and that flight was released already.'),
    });
  }
}

/** The pilot in command holds a pilot certificate and still belongs to the operator. Ratings are the pilot's own part 61. */
async function requirePilot(
  { tx, operatorId }: Context,
  pilotId: string,
  use: UseOfAircraft | null,
): Promise<void> {
  const { name, pilot, leftOn } = signerFacts(await readSigner(tx, operatorId, pilotId));
  if (pilot === null)
    throw fieldRefusal('pilotId', filled(said('No pilot certificate of {name} is on file.'), { name }));
  if (leftOn !== null) throw fieldRefusal('pilotId', filled(said('{name} has left.'), { name }));
  // A flight that cannot be judged is no go, and goes no further.
  if (!use) return;
  const [over] = expiredBars('pilot certificate', pilot, lastDayOf(use), '14cfr91.3(a)');
  if (over) throw fieldRefusal('pilotId', over.because);
}
