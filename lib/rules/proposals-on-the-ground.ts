/**
 * Proposals for what somebody does at the aircraft: a placard still owed, a deferral, a call to the mechanic. Each names
 * the fewest things that are enough together.
 */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts, RequirementFacts, WorkFacts } from './aircraft';
import { known } from './facts';
import { localDate } from './months';
import type { ProposedFlight } from './operations';
import type { Ask, OnTheGround, ProposalItem } from './proposals';
import type { Answer, Line } from './verdict';

/** One thing that can be settled, and the facts once it is. */
interface Settleable {
  readonly item: ProposalItem;
  readonly settled: (aircraft: AircraftFacts) => AircraftFacts;
}

/** 91.213(d)(3): deferrals of which only the placard is owed. */
export function placePlacards(aircraft: AircraftFacts, ask: Ask): readonly OnTheGround[] {
  const owed = aircraft.discrepancies.flatMap((d): Settleable[] => {
    const { deferral } = d;
    if (deferral === null || deferral.placardPlaced) return [];
    return [{ item: itemOf(d), settled: withDeferral(d, { ...deferral, placardPlaced: true }) }];
  });
  return fewest(aircraft, owed, ask, 'place-placard', (names) => `Place the placard still owed: ${names}.`);
}

/** 91.213(d), or (a) with a list: inoperative items judged and not deferred. Whoever determines may still say no. */
export function deferOpen(aircraft: AircraftFacts, flight: ProposedFlight, ask: Ask): readonly OnTheGround[] {
  const open = aircraft.discrepancies.flatMap((d): Settleable[] => {
    const judged = d.severity.known && d.severity.value !== 'grounding';
    if (d.kind !== 'inoperative' || d.deferral !== null || !judged) return [];
    return [{ item: itemOf(d), settled: withDeferral(d, completeDeferral(aircraft, d, flight)) }];
  });
  return fewest(
    aircraft,
    open,
    ask,
    'defer',
    (names) => `Have it deferred under 91.213, if whoever determines finds no hazard: ${names}.`,
  );
}

/** Repaired or otherwise settled by a mechanic and signed off: write-ups, work under way or with a test owed, inspections over. */
export function callMechanic(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  answer: Answer,
  ask: Ask,
): readonly OnTheGround[] {
  const bars = answer.lines.filter(({ effect }) => effect === 'bars');
  const repairs = aircraft.discrepancies
    .filter((d) => bars.some((line) => isAbout(line, d)))
    .map((d): Settleable => ({ item: itemOf(d), settled: repaired(d) }));
  const work = aircraft.work
    .filter((one) => one.state !== 'signed' || one.testsOwed.length > 0)
    .filter(({ id }) => bars.some(({ about }) => about?.kind === 'work' && about.id === id))
    .map((one): Settleable => ({
      item: { kind: 'work', id: one.id, label: one.title },
      settled: signedOff(one),
    }));
  // Of a requirement whose record is missing nobody knows that it is over: the record is wanted, not the mechanic.
  const overdue = aircraft.requirements
    .filter(({ id }) =>
      bars.some(
        ({ about, missing }) => missing === undefined && about?.kind === 'requirement' && about.id === id,
      ),
    )
    .map((row): Settleable => ({
      item: { kind: 'requirement', id: row.id, label: row.name },
      settled: doneFor(row, flight),
    }));
  return fewest(
    aircraft,
    [...repairs, ...work, ...overdue],
    ask,
    'call-mechanic',
    (names) => `Call the mechanic. Signed off, this would let it fly: ${names}.`,
  );
}

/** Settles all, then leaves out what is not needed. No proposal when even all is not enough. */
function fewest(
  aircraft: AircraftFacts,
  all: readonly Settleable[],
  ask: Ask,
  kind: OnTheGround['kind'],
  inWords: (names: string) => string,
): readonly OnTheGround[] {
  const settle = (some: readonly Settleable[]) =>
    ask({ aircraft: some.reduce((facts, { settled }) => settled(facts), aircraft) });
  if (all.length === 0 || settle(all) === null) return [];
  let needed = all;
  for (const one of all) {
    const others = needed.filter((other) => other !== one);
    if (settle(others) !== null) needed = others;
  }
  const proven = settle(needed);
  if (proven === null) return [];
  const items = needed.map(({ item }) => item);
  return [{ kind, because: inWords(items.map(({ label }) => label).join('; ')), ...proven, items }];
}

const itemOf = (d: DiscrepancyFacts): ProposalItem => ({
  kind: 'discrepancy',
  id: d.id,
  label: `${d.number} ${d.title}`,
});

function isAbout({ about }: Line, d: DiscrepancyFacts): boolean {
  if (about?.kind === 'discrepancy') return about.id === d.id;
  if (about?.kind === 'deferral') return about.id === d.deferral?.id;
  return about?.kind === 'equipment' && about.id === d.equipmentId;
}

const withDeferral =
  (d: DiscrepancyFacts, deferral: DeferralFacts) =>
  (aircraft: AircraftFacts): AircraftFacts => ({
    ...aircraft,
    discrepancies: aircraft.discrepancies.map((other) =>
      other.id === d.id ? { ...other, deferral } : other,
    ),
  });

/** A deferral with every step taken, as it would be after somebody entitled to has determined and signed. */
function completeDeferral(
  { mel }: AircraftFacts,
  d: DiscrepancyFacts,
  flight: ProposedFlight,
): DeferralFacts {
  const recordedOn = localDate(d.reportedAt, flight.from.zone);
  const by = {
    name: 'a rated mechanic',
    pilotGrade: null,
    pilotRatedForAircraft: false,
    mechanicRatings: ['airframe', 'powerplant'],
    repairStation: false,
  } as const;
  return {
    id: `proposed-${d.id}`,
    basis: mel.known && mel.value !== null ? 'mel' : '91.213(d)',
    method: 'deactivated',
    deactivationIsMaintenance: true,
    maintenanceRecordSigned: true,
    determination: known({ by, on: recordedOn }),
    placardPlaced: true,
    eltRemoval: null,
    melItemId: null,
    extendedThrough: null,
    melProceduresDone: true,
    recordedOn,
    inspectionsSince: [],
  };
}

const repaired =
  (d: DiscrepancyFacts) =>
  (aircraft: AircraftFacts): AircraftFacts => ({
    ...aircraft,
    discrepancies: aircraft.discrepancies.filter(({ id }) => id !== d.id),
  });

/** Signed, with the tests owed done. Whether a check flight is owed stays as it is: that is not the mechanic's to fly. */
const signedOff =
  (work: WorkFacts) =>
  (aircraft: AircraftFacts): AircraftFacts => ({
    ...aircraft,
    work: aircraft.work.map((one) => (one.id === work.id ? { ...one, state: 'signed', testsOwed: [] } : one)),
  });

/** Done before the flight, at the hours of now, by somebody who may; a part with a date on it exchanged for a new one. */
const doneFor =
  (row: RequirementFacts, flight: ProposedFlight) =>
  (aircraft: AircraftFacts): AircraftFacts => {
    const { ttisTenths } = aircraft;
    if (!ttisTenths.known) return aircraft;
    const on = localDate(flight.departAt, flight.from.zone);
    const lastDone = known({
      on,
      ttisTenths: ttisTenths.value,
      wasDueTenths: null,
      approvedByAuthorised: known(true),
    });
    const done: RequirementFacts = {
      ...row,
      lastDone,
      fixedExpiry: row.fixedExpiry === null ? null : localDate(flight.arriveAt, flight.to.zone),
    };
    return {
      ...aircraft,
      requirements: aircraft.requirements.map((other) => (other.id === row.id ? done : other)),
    };
  };
