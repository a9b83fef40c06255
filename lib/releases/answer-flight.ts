import { AfterReading, query, type Context } from '../access/service';
import { instant } from '../db/dates';
import { bookedFlights } from '../fleet/booked-flights';
import { aircraftFacts, readSome } from '../fleet/facts';
import type { Instant } from '../rules/facts';
import { proposalsFor, warningsFor, type FlightWarning } from '../rules/proposals';
import type { Answer } from '../rules/verdict';
import { judgeFlight, type JudgedFlight } from './compose-flight';
import type { SpentAhead } from './hours-ahead';
import { pilotCommitments } from './pilot-commitments';
import { proposalView, type ProposalView } from './proposal-view';
import { answerFlightInput, type ComposedFlight } from './schema';

/** The answer for a composed flight, as the desk shows it. */
export interface FlightAnswer {
  readonly aircraftId: string;
  readonly registration: string;
  readonly answer: Answer;
  readonly light: 'day' | 'night' | null;
  readonly betweenSunsetAndSunrise: boolean;
  readonly hire: boolean;
  readonly departAt: string;
  readonly arriveAt: string;
  readonly zone: string;
  readonly sunsetAt: string | null;
  readonly factsVersion: number;
  readonly rulesVersion: string;
  readonly answeredAt: string;
  /** What to see before releasing, whatever the answer is. */
  readonly warnings: readonly FlightWarning[];
  /** What would make it go; empty when it may go already. */
  readonly proposals: readonly ProposalView[];
  /** Hours that flights released before it will have spent by its departure; null when there are none. */
  readonly spentAhead: SpentAhead | null;
}

/**
 * Answers a composed flight with the facts of this moment, warns, and proposes what would make it go. Nothing is recorded.
 */
export const answerFlight = query({
  verb: 'flight.answer',
  input: answerFlightInput,
  async run(context, input) {
    const judged = await judgeFlight(context, input);
    const isNoGo = judged.answer.outcome === 'no-go';
    const propose = isNoGo ? await proposalsOf(context, judged, input, instant(context.now)) : () => [];
    return new AfterReading(() => flightAnswerView(judged, propose(), context.now));
  },
});

/**
 * What would make the flight go: asked of the rules with this aircraft, and with every other one of its type. Reads what that
 * takes, and gives how to work it out.
 */
async function proposalsOf(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  { row, recorded, flight, booked }: JudgedFlight,
  { pilotId, plannedFlightId }: ComposedFlight,
  asOf: Instant,
): Promise<() => readonly ProposalView[]> {
  const rows = await readSome(tx, { operatorId, typeId: row.typeId, retiredOn: null, id: { not: row.id } });
  const others = await bookedFlights(
    tx,
    operatorId,
    now,
    rows.map(({ id }) => id),
  );
  const commitments = await pilotCommitments(tx, operatorId, now, pilotId, plannedFlightId);
  return () =>
    proposalsFor(
      recorded,
      flight,
      rows.map((other) => ({
        facts: aircraftFacts(other),
        booked: others.get(other.id) ?? [],
        atBase: other.base.ident === flight.from.ident,
      })),
      booked,
      asOf,
      commitments,
    ).map((proposal) => proposalView(proposal, flight));
}

/** A judged flight as plain data for the screen. */
export function flightAnswerView(
  judged: JudgedFlight,
  proposals: readonly ProposalView[],
  now: Date,
): FlightAnswer {
  const { row, recorded, flight, use, answer, booked, spentAhead } = judged;
  return {
    aircraftId: row.id,
    registration: row.registration,
    answer,
    light: use?.light ?? null,
    betweenSunsetAndSunrise: use?.betweenSunsetAndSunrise ?? false,
    hire: use?.hire ?? false,
    departAt: flight.departAt,
    arriveAt: flight.arriveAt,
    zone: flight.from.zone,
    sunsetAt: use?.sunsetAt ?? null,
    factsVersion: judged.factsVersion,
    rulesVersion: judged.rulesVersion,
    answeredAt: now.toISOString(),
    warnings: warningsFor(recorded, flight, use, booked),
    proposals,
    spentAhead,
  };
}
