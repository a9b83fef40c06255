/**
 * Ways to fill the flight form in one press: from a plan, from an earlier release, by a proposal. Pure. What a plan or a
 * release does not say stays unanswered; what belongs to one flight only (a permit, a word of air traffic control) is not
 * carried over.
 */
import { emptyFlightForm, QUESTIONS, type FlightForm } from './flight-form';
import { localTimeOf } from './flight-times';
import { placeText, type NamedPlace } from './place-text';
import type { Fact, HoursTenths, Instant } from '../rules/facts';
import { formatTenths } from '../rules/hours';
import type { ProposedFlight, Purpose } from '../rules/operations';
import type { FormChange } from './proposal-view';

/** A planned flight, as far as it says something to the form. */
export interface PlanToCompose {
  readonly id: string;
  readonly aircraftId: string;
  readonly pilotId: string | null;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths | null;
  readonly from: NamedPlace;
  readonly to: NamedPlace;
  readonly rules: 'VFR' | 'IFR' | null;
  readonly purpose: Purpose | null;
}

/** The form for a planned flight. */
export const formOfPlan = (plan: PlanToCompose): FlightForm => ({
  ...emptyFlightForm(plan.aircraftId),
  pilotId: plan.pilotId ?? '',
  from: placeText(plan.from),
  to: placeText(plan.to),
  departLocal: localTimeOf(plan.departAt, plan.from.zone),
  arriveLocal: localTimeOf(plan.arriveAt, plan.to.zone),
  plannedHours: plan.plannedTenths === null ? '' : formatTenths(plan.plannedTenths),
  rules: plan.rules ?? '',
  purpose: plan.purpose ?? '',
  plannedFlightId: plan.id,
  plannedAircraftId: plan.aircraftId,
});

/** A flight that was released before, to be released anew. */
export interface FlightToRepeat {
  readonly aircraftId: string;
  readonly pilotId: string | null;
  readonly flight: ProposedFlight;
  readonly plannedFlightId: string | null;
}

/** The form for the same flight once more. `nameOf` gives a place its name, where one is known. */
export function formOfFlight(
  { aircraftId, pilotId, flight, plannedFlightId }: FlightToRepeat,
  nameOf: (ident: string) => string | undefined,
): FlightForm {
  const form: FlightForm = {
    ...emptyFlightForm(aircraftId),
    pilotId: pilotId ?? '',
    from: placeOf(flight.from.ident, nameOf),
    to: placeOf(flight.to.ident, nameOf),
    departLocal: localTimeOf(flight.departAt, flight.from.zone),
    arriveLocal: localTimeOf(flight.arriveAt, flight.to.zone),
    rules: flight.rules,
    purpose: flight.purpose,
    plannedHours: formatTenths(flight.plannedTenths),
    highestAltitudeFtMsl: flight.highestAltitudeFtMsl.known ? String(flight.highestAltitudeFtMsl.value) : '',
    plannedFlightId: plannedFlightId ?? '',
    plannedAircraftId: aircraftId,
  };
  for (const question of QUESTIONS) form[question] = asTyped(flight[question]);
  return form;
}

const asTyped = (fact: Fact<boolean>): '' | 'yes' | 'no' => (fact.known ? (fact.value ? 'yes' : 'no') : '');

function placeOf(ident: string, nameOf: (ident: string) => string | undefined): string {
  const name = nameOf(ident);
  return name === undefined ? ident : placeText({ ident, name });
}

/** The form with a proposal taken. Whether it goes then is for the answer to say. A permit is of one aircraft only. */
export const withChange = (form: FlightForm, change: FormChange): FlightForm => ({
  ...form,
  ...change,
  ...(change.aircraftId !== undefined && change.aircraftId !== form.aircraftId ? { permitId: '' } : {}),
});
