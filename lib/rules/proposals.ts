/**
 * What would make a flight go. Every proposal is proven: the rules are asked again with that one thing changed, and one
 * that does not turn no go into an answer that may fly is not made. What nobody knows is never made up.
 *
 * Which ways there are is common practice of a dispatcher's desk, no source; what each is worth is the rules' own word.
 * The hours of flights released or out before the flight are counted, as in the answer it was given; plans are not.
 */
import type { AircraftFacts } from './aircraft';
import { answerForFlight } from './answer';
import type { HoursTenths, Instant } from './facts';
import type { ProposedFlight } from './operations';
import { earlierReturn, leaveEarlier } from './proposals-in-time';
import { callMechanic, deferOpen, placePlacards } from './proposals-on-the-ground';
import { afterFlights, isCommitted, type BookedFlight } from './spent-hours';
import type { Answer } from './verdict';

export { warningsFor, type FlightWarning } from './flight-warnings';

/** An answer that may fly. */
export type GoOutcome = 'go' | 'go-with-limits';

export interface Proven {
  /** A sentence for the dispatcher: what to do, and what it would settle. */
  readonly because: string;
  /** The answer with that one thing changed. */
  readonly outcome: GoOutcome;
  readonly answer: Answer;
}

/** A write-up, a piece of work or something that recurs, which a proposal is about. */
export interface ProposalItem {
  readonly kind: 'discrepancy' | 'work' | 'requirement';
  readonly id: string;
  /** "W-0001 Landing light does not light", or the name of the work or requirement. */
  readonly label: string;
}

export interface OtherAircraftProposal extends Proven {
  readonly kind: 'other-aircraft';
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
}

export interface EarlierReturn extends Proven {
  readonly kind: 'earlier-return';
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths;
}

export interface LeaveEarlier extends Proven {
  readonly kind: 'leave-earlier';
  readonly departAt: Instant;
  readonly arriveAt: Instant;
}

export interface OnTheGround extends Proven {
  readonly kind: 'place-placard' | 'defer' | 'call-mechanic';
  /** All of them are needed; none of them alone is enough. */
  readonly items: readonly ProposalItem[];
}

export type Proposal = OtherAircraftProposal | EarlierReturn | LeaveEarlier | OnTheGround;

/** Another aircraft that could be asked, with what is booked on it already. */
export interface OtherAircraft {
  readonly facts: AircraftFacts;
  readonly booked?: readonly BookedFlight[];
  /** Whether it is of the base the flight departs from; left out counts as yes. */
  readonly atBase?: boolean;
}

/** When the pilot is to fly something else, in whatever aircraft. */
export type PilotCommitment = Pick<ProposedFlight, 'departAt' | 'arriveAt'>;

/** The answer for a flight with one thing changed, or null when it is still no go. */
export type Ask = (change: {
  readonly aircraft?: AircraftFacts;
  readonly flight?: ProposedFlight;
}) => { readonly outcome: GoOutcome; readonly answer: Answer } | null;

/**
 * What would make `flight` go, quickest first: what the desk can change, then what somebody does at the aircraft. Empty
 * when it may go already, and when it cannot be judged as composed.
 * @param aircraft the facts as they are now: the hours of `booked` are added here
 * @param others the rest of the fleet; those of another type are left out here
 * @param booked flights of this aircraft, without the proposed one
 * @param now nothing is proposed to leave before it
 * @param pilotBusy what else its pilot flies: no other times are proposed that overlap it
 */
export function proposalsFor(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  others: readonly OtherAircraft[],
  booked: readonly BookedFlight[],
  now: Instant,
  pilotBusy: readonly PilotCommitment[] = [],
): readonly Proposal[] {
  const { answer, use } = answerForFlight(...withHours(aircraft, flight, booked));
  if (answer.outcome !== 'no-go' || use === null) return [];
  const ask: Ask = (change) =>
    change.flight !== undefined && overlapping(pilotBusy, change.flight).length > 0
      ? null
      : askOf(change.aircraft ?? aircraft, change.flight ?? flight, booked);
  return [
    ...otherAircraft(aircraft, flight, others),
    ...earlierReturn(flight, ask),
    ...leaveEarlier(flight, booked, now, ask),
    ...placePlacards(aircraft, ask),
    ...deferOpen(aircraft, flight, ask),
    ...callMechanic(aircraft, flight, answer, ask),
  ];
}

function withHours(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  booked: readonly BookedFlight[],
): [AircraftFacts, ProposedFlight] {
  return [afterFlights(aircraft, booked.filter(isCommitted), flight.departAt).facts, flight];
}

function askOf(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  booked: readonly BookedFlight[],
): ReturnType<Ask> {
  const { answer } = answerForFlight(...withHours(aircraft, flight, booked));
  return answer.outcome === 'no-go' ? null : { outcome: answer.outcome, answer };
}

/**
 * Of the same type, free all the while, and able to make the flight. Those of the departure base first, since others have to
 * be fetched; go before go with limits. A permit is not theirs.
 */
function otherAircraft(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  others: readonly OtherAircraft[],
): OtherAircraftProposal[] {
  const found = others.flatMap(({ facts, booked = [], atBase = true }) => {
    if (facts.id === aircraft.id || facts.type.name !== aircraft.type.name) return [];
    if (overlapping(booked, flight).length > 0) return [];
    const proven = askOf(facts, { ...flight, specialFlightPermit: null }, booked);
    if (proven === null) return [];
    const { id, registration, type } = facts;
    const because = `Take ${registration}: same type, nothing booked on it then, ${OUTCOME_WORDS[proven.outcome]}.`;
    const which = { aircraftId: id, registration, typeName: type.name };
    return [{ atBase, proposal: { kind: 'other-aircraft' as const, because, ...proven, ...which } }];
  });
  return found
    .sort(
      (a, b) =>
        Number(b.atBase) - Number(a.atBase) ||
        RANK[a.proposal.outcome] - RANK[b.proposal.outcome] ||
        (a.proposal.registration < b.proposal.registration ? -1 : 1),
    )
    .map(({ proposal }) => proposal);
}

export const OUTCOME_WORDS: Readonly<Record<GoOutcome, string>> = {
  go: 'go',
  'go-with-limits': 'go with limits',
};

const RANK: Readonly<Record<GoOutcome, number>> = { go: 0, 'go-with-limits': 1 };

/** Flights that would have the aircraft, or the pilot, at the same time. One that ends as the other departs does not. */
export function overlapping<T extends PilotCommitment>(
  booked: readonly T[],
  { departAt, arriveAt }: PilotCommitment,
): readonly T[] {
  const [depart, arrive] = [Date.parse(departAt), Date.parse(arriveAt)];
  return booked.filter((other) => Date.parse(other.departAt) < arrive && Date.parse(other.arriveAt) > depart);
}
