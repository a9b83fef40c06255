/**
 * 14 CFR 91.205: instruments and equipment that a powered civil aircraft with a standard airworthiness certificate
 * must have aboard and in operable condition, by kind of flight.
 *
 * (a) Nobody may operate such an aircraft in an operation of (b) to (f) without the items named there, or approved
 *   equivalents, in operable condition.
 * (b) VFR by day: (1) airspeed indicator; (2) altimeter; (3) magnetic direction indicator; (4) tachometer for each
 *   engine; (5) oil pressure gauge for each engine using a pressure system; (6) temperature gauge for each
 *   liquid-cooled engine; (7) oil temperature gauge for each air-cooled engine; (8) manifold pressure gauge for each
 *   altitude engine; (9) fuel gauge for each tank; (10) gear position indicator if the gear retracts; (11) red or
 *   white anticollision lights on small airplanes certificated after 11 March 1996 under part 23, and if one fails,
 *   the flight may continue to a place where it can be repaired; (12) flotation gear for each occupant and a
 *   pyrotechnic signal, for hire over water beyond power-off gliding distance from shore; (13) a safety belt for
 *   each occupant two years or older; (14) on small airplanes, a shoulder harness for each front seat if manufactured
 *   after 18 July 1978 and for all seats if after 12 December 1986; (15) an emergency locator transmitter if 91.207
 *   requires it; (16) reserved; (17) a shoulder harness for each seat of rotorcraft manufactured after 16 September
 *   1992.
 * (c) VFR by night: (1) all of (b); (2) position lights; (3) red or white anticollision lights on every aircraft, and
 *   if one fails, the flight may continue to a stop where it can be repaired; (4) one electric landing light if for
 *   hire; (5) an adequate source of electrical energy; (6) a spare set of fuses, or three of each kind, in reach.
 * (d) IFR: (1) all of (b), by night all of (c); (2) two-way radio and navigation equipment suitable for the route;
 *   (3) gyroscopic rate-of-turn indicator; (4) slip-skid indicator; (5) sensitive altimeter; (6) clock with hours,
 *   minutes and seconds; (7) generator or alternator; (8) gyroscopic pitch and bank indicator; (9) directional gyro.
 * (e) At and above 24,000 ft MSL where (d)(2) means VOR: distance measuring equipment or a suitable RNAV system.
 *
 * Not coded: (d)(3)'s exception for a third attitude system (no fact tells of one, so the rate-of-turn indicator is
 * asked for); (e)'s relief (it is for a failure up there, not for a departure); (f) and (g), category II and III;
 * (h), night vision goggles. Read in the eCFR of 24 August 2026 (stored copy, github.com/Lyutenant/FAR-AIM).
 */
import type { AircraftFacts, EquipmentFunction } from '../aircraft';
import type { Demand } from '../demand';
import {
  allHold,
  demandAlways,
  demandAsManyWhen,
  demandWhen,
  holds,
  isAfter,
  isSmall,
} from '../demand-conditions';
import { installedCount, operativeCount } from '../equipment-count';
import { known, type Fact } from '../facts';
import type { CiteId } from '../law';
import type { UseOfAircraft } from '../operations';
import { barsForMissing, type Line } from '../verdict';
import { demandsOf91207 } from './91-207-emergency-locator-transmitter';

/** Last day on which a small airplane could be certificated without (b)(11). */
const ANTICOLLISION_AFTER = '1996-03-11';
const FRONT_HARNESS_AFTER = '1978-07-18';
const ALL_HARNESS_AFTER = '1986-12-12';
const ROTORCRAFT_HARNESS_AFTER = '1992-09-16';
const DME_FROM_FT_MSL = 24_000;

type Paragraph = (aircraft: AircraftFacts, use: UseOfAircraft) => readonly Demand[];

/**
 * What 91.205 demands for this use: (b), at night (c), under IFR (d) and (e). Nothing for an aircraft without an
 * engine by its kind (a glider or lighter-than-air aircraft with none), which the section does not reach.
 */
export function demandsOf91205(aircraft: AircraftFacts, use: UseOfAircraft): Demand[] {
  if (!isPowered(aircraft)) return [];
  const paragraphs =
    use.rules === 'IFR'
      ? [...instrumentFlight, flightLevel240]
      : use.light === 'night'
        ? visualNight
        : visualDay;
  return paragraphs.flatMap((paragraph) => paragraph(aircraft, use));
}

/** (a): the lists are for standard airworthiness certificates. Other classes are not judged, so not answered go. */
export function standardCategoryOnly({ standardCategory, registration, id }: AircraftFacts): Line[] {
  const about = { kind: 'aircraft', id, label: registration } as const;
  if (!standardCategory.known) return [barsForMissing('14cfr91.205(a)', standardCategory.missing, about)];
  if (standardCategory.value) return [];
  const because =
    'This aircraft has no standard airworthiness certificate. Other airworthiness classes are not judged here.';
  return [{ effect: 'bars', cite: '14cfr91.205(a)', because, about }];
}

/** "Powered": only a glider or a lighter-than-air aircraft can be without an engine. */
export const isPowered = ({ type }: AircraftFacts): boolean =>
  type.engines >= 1 || (type.category !== 'glider' && type.category !== 'lighter-than-air');

/** (b)(1) */
const airspeedIndicator: Paragraph = () =>
  demandAlways({
    function: 'airspeed-indicator',
    cite: '14cfr91.205(b)(1)',
    because: 'Every flight needs an airspeed indicator.',
  });

/** (b)(2) */
const altimeter: Paragraph = () =>
  demandAlways({
    function: 'altimeter',
    cite: '14cfr91.205(b)(2)',
    because: 'Every flight needs an altimeter.',
  });

/** (b)(3) */
const magneticDirectionIndicator: Paragraph = () =>
  demandAlways({
    function: 'magnetic-direction-indicator',
    cite: '14cfr91.205(b)(3)',
    because: 'Every flight needs a magnetic direction indicator.',
  });

/** (b)(4) */
const tachometer: Paragraph = (aircraft) =>
  perEngine(aircraft, known(true), 'tachometer', '14cfr91.205(b)(4)', 'Each engine needs a tachometer.');

/** (b)(5): no fact tells of an engine without a pressure oil system, so each is taken to have one. */
const oilPressureGauge: Paragraph = (aircraft) =>
  perEngine(
    aircraft,
    known(true),
    'oil-pressure-gauge',
    '14cfr91.205(b)(5)',
    'Each engine needs an oil pressure gauge.',
  );

/** (b)(6) */
const coolantTemperatureGauge: Paragraph = (aircraft) =>
  perEngine(
    aircraft,
    holds(aircraft.type.cooling, (cooling) => cooling === 'liquid'),
    'coolant-temperature-gauge',
    '14cfr91.205(b)(6)',
    'Each liquid-cooled engine needs a temperature gauge.',
  );

/** (b)(7) */
const oilTemperatureGauge: Paragraph = (aircraft) =>
  perEngine(
    aircraft,
    holds(aircraft.type.cooling, (cooling) => cooling === 'air'),
    'oil-temperature-gauge',
    '14cfr91.205(b)(7)',
    'Each air-cooled engine needs an oil temperature gauge.',
  );

/** (b)(8): an engine that keeps its power above sea level, not any engine with a constant-speed propeller. */
const manifoldPressureGauge: Paragraph = (aircraft) =>
  perEngine(
    aircraft,
    aircraft.type.altitudeEngine,
    'manifold-pressure-gauge',
    '14cfr91.205(b)(8)',
    'Each altitude engine needs a manifold pressure gauge.',
  );

/** (b)(9): a full tank by the stick does not replace its gauge. */
const fuelQuantityGauge: Paragraph = (aircraft) =>
  oneForEach(aircraft, known(true), aircraft.type.fuelTanks, {
    function: 'fuel-quantity-gauge',
    cite: '14cfr91.205(b)(9)',
    because: 'Each fuel tank needs a fuel gauge.',
  });

/** (b)(10) */
const gearPositionIndicator: Paragraph = ({ type }) =>
  demandWhen(type.retractableGear, {
    function: 'gear-position-indicator',
    cite: '14cfr91.205(b)(10)',
    because: 'Retractable landing gear needs a position indicator.',
  });

/** (b)(11) */
const anticollisionByDay: Paragraph = (aircraft, use) => {
  const { applies, strictReading } = newSmallPart23Airplane(aircraft);
  return demandWhen(applies, {
    function: 'anticollision-lights',
    count: wholeSystem(aircraft, 'anticollision-lights'),
    cite: '14cfr91.205(b)(11)',
    because:
      'A small airplane certificated under part 23 after 11 March 1996 needs its anticollision lights.',
    ...continueToRepair(aircraft, use, '14cfr91.205(b)(11)', strictReading),
  });
};

/** (b)(12) */
const flotationAndSignal: Paragraph = ({ type }, use) =>
  demandAsManyWhen(allHold(known(use.hire), use.overWaterBeyondGlide), type.seats, {
    function: 'flotation-and-signal',
    cite: '14cfr91.205(b)(12)',
    because:
      'For hire over water beyond gliding distance from shore: flotation gear for each occupant, and a pyrotechnic signal.',
    strictReading: 'Who will be aboard is not known here, so flotation gear is counted for every seat.',
  });

/** (b)(13) */
const safetyBelts: Paragraph = (aircraft) =>
  oneForEach(aircraft, known(true), aircraft.type.seats, {
    function: 'seat-belts',
    cite: '14cfr91.205(b)(13)',
    because: 'Each occupant needs a safety belt.',
    strictReading: 'Who will sit where is not known here, so a belt is counted for every seat.',
  });

/** (b)(14), first sentence: until the second asks for all seats. */
const frontShoulderHarness: Paragraph = (aircraft) =>
  oneForEach(
    aircraft,
    allHold(
      smallAirplane(aircraft),
      isAfter(aircraft.manufacturedOn, FRONT_HARNESS_AFTER),
      holds(isAfter(aircraft.manufacturedOn, ALL_HARNESS_AFTER), (allSeats) => !allSeats),
    ),
    aircraft.type.frontSeats,
    {
      function: 'shoulder-harness',
      cite: '14cfr91.205(b)(14)',
      because:
        'A small airplane manufactured after 18 July 1978 needs a shoulder harness at each front seat.',
      strictReading:
        'The equipment list does not say which seat a harness serves, so every harness installed must work.',
    },
  );

/** (b)(14), second sentence. */
const everyShoulderHarness: Paragraph = (aircraft) =>
  oneForEach(
    aircraft,
    allHold(smallAirplane(aircraft), isAfter(aircraft.manufacturedOn, ALL_HARNESS_AFTER)),
    aircraft.type.seats,
    {
      function: 'shoulder-harness',
      cite: '14cfr91.205(b)(14)',
      because: 'A small airplane manufactured after 12 December 1986 needs a shoulder harness at every seat.',
    },
  );

/** (b)(15): 91.207 decides when, and with what relief. */
const emergencyLocatorTransmitter: Paragraph = (aircraft, use) =>
  demandsOf91207(aircraft, use).map((demand) => ({ ...demand, cite: '14cfr91.205(b)(15)' }));

/** (b)(17) */
const rotorcraftShoulderHarness: Paragraph = (aircraft) =>
  oneForEach(
    aircraft,
    allHold(
      known(aircraft.type.category === 'rotorcraft'),
      isAfter(aircraft.manufacturedOn, ROTORCRAFT_HARNESS_AFTER),
    ),
    aircraft.type.seats,
    {
      function: 'shoulder-harness',
      cite: '14cfr91.205(b)(17)',
      because: 'A rotorcraft manufactured after 16 September 1992 needs a shoulder harness at every seat.',
    },
  );

/** (b) */
const visualDay: readonly Paragraph[] = [
  airspeedIndicator,
  altimeter,
  magneticDirectionIndicator,
  tachometer,
  oilPressureGauge,
  coolantTemperatureGauge,
  oilTemperatureGauge,
  manifoldPressureGauge,
  fuelQuantityGauge,
  gearPositionIndicator,
  anticollisionByDay,
  flotationAndSignal,
  safetyBelts,
  frontShoulderHarness,
  everyShoulderHarness,
  emergencyLocatorTransmitter,
  rotorcraftShoulderHarness,
];

/** (c)(1) */
const dayListByNight: Paragraph = (aircraft, use) =>
  visualDay.flatMap((paragraph) => paragraph(aircraft, use));

/** (c)(2) */
const positionLights: Paragraph = (aircraft) =>
  demandAlways({
    function: 'position-lights',
    count: wholeSystem(aircraft, 'position-lights'),
    cite: '14cfr91.205(c)(2)',
    because: 'Night flight needs every position light.',
  });

/** (c)(3) */
const anticollisionByNight: Paragraph = (aircraft, use) =>
  demandAlways({
    function: 'anticollision-lights',
    count: wholeSystem(aircraft, 'anticollision-lights'),
    cite: '14cfr91.205(c)(3)',
    because: 'Night flight needs the anticollision lights.',
    ...continueToRepair(aircraft, use, '14cfr91.205(c)(3)'),
  });

/** (c)(4) */
const landingLight: Paragraph = (_aircraft, use) =>
  demandWhen(known(use.hire), {
    function: 'landing-light',
    cite: '14cfr91.205(c)(4)',
    because: 'Night flight for hire needs an electric landing light.',
    strictReading: instructionIsForHire(use),
  });

/** (c)(5): battery and generator each count where the list names them; nobody here can say half is adequate. */
const electricalSource: Paragraph = (aircraft) => {
  const sources: EquipmentFunction[] = ['electrical-source', 'generator'];
  const listed = sources.filter((fn) => installedCount(aircraft, fn) > 0);
  const asked: EquipmentFunction[] = listed.length > 0 ? listed : ['electrical-source'];
  return asked.flatMap((fn) =>
    demandAlways({
      function: fn,
      count: wholeSystem(aircraft, fn),
      cite: '14cfr91.205(c)(5)',
      because: 'Night flight needs an adequate source of electrical energy for everything installed.',
      strictReading: 'Whether what is left is adequate is not known here, so every source listed must work.',
    }),
  );
};

/** (c)(6): circuit breakers need no spares. */
const spareFuses: Paragraph = ({ type }) =>
  demandWhen(type.usesFuses, {
    function: 'spare-fuses',
    cite: '14cfr91.205(c)(6)',
    because: 'Night flight with fuses needs a spare set, or three of each kind, within reach.',
  });

/** (c) */
const visualNight: readonly Paragraph[] = [
  dayListByNight,
  positionLights,
  anticollisionByNight,
  landingLight,
  electricalSource,
  spareFuses,
];

/** (d)(1) */
const dayAndNightLists: Paragraph = (aircraft, use) =>
  (use.light === 'night' ? visualNight : visualDay).flatMap((paragraph) => paragraph(aircraft, use));

/** (d)(2): a VOR receiver where the route is flown by VOR, otherwise an area navigator. */
const radioAndNavigation: Paragraph = (_aircraft, use) => {
  const cite = '14cfr91.205(d)(2)';
  return [
    ...demandAlways({ function: 'two-way-radio', cite, because: 'IFR flight needs a two-way radio.' }),
    ...demandWhen(use.usesVor, {
      function: 'vor-receiver',
      cite,
      because: 'IFR flight by VOR needs a VOR receiver.',
    }),
    ...demandWhen(
      holds(use.usesVor, (usesVor) => !usesVor),
      { function: 'gps-navigator', cite, because: 'IFR flight without VOR needs a GPS navigator.' },
    ),
  ];
};

/** (d)(3) */
const rateOfTurnIndicator: Paragraph = () =>
  demandAlways({
    function: 'rate-of-turn-indicator',
    cite: '14cfr91.205(d)(3)',
    because: 'IFR flight needs a gyroscopic rate-of-turn indicator.',
  });

/** (d)(4) */
const slipSkidIndicator: Paragraph = () =>
  demandAlways({
    function: 'slip-skid-indicator',
    cite: '14cfr91.205(d)(4)',
    because: 'IFR flight needs a slip-skid indicator.',
  });

/** (d)(5): the list does not tell kinds of altimeter apart; the one aboard is taken as adjustable. */
const sensitiveAltimeter: Paragraph = () =>
  demandAlways({
    function: 'altimeter',
    cite: '14cfr91.205(d)(5)',
    because: 'IFR flight needs a sensitive altimeter adjustable for pressure.',
  });

/** (d)(6): an installed clock, not a wristwatch. */
const clock: Paragraph = () =>
  demandAlways({
    function: 'clock',
    cite: '14cfr91.205(d)(6)',
    because: 'IFR flight needs a clock with hours, minutes and seconds.',
  });

/** (d)(7) */
const generator: Paragraph = (aircraft) =>
  demandAlways({
    function: 'generator',
    count: wholeSystem(aircraft, 'generator'),
    cite: '14cfr91.205(d)(7)',
    because: 'IFR flight needs a generator or alternator of adequate capacity.',
    strictReading:
      installedCount(aircraft, 'generator') > 1
        ? 'Whether one of several is adequate is not known here, so every one listed must work.'
        : undefined,
  });

/** (d)(8) */
const pitchAndBankIndicator: Paragraph = () =>
  demandAlways({
    function: 'attitude-indicator',
    cite: '14cfr91.205(d)(8)',
    because: 'IFR flight needs a gyroscopic pitch and bank indicator.',
  });

/** (d)(9) */
const directionIndicator: Paragraph = () =>
  demandAlways({
    function: 'heading-gyro',
    cite: '14cfr91.205(d)(9)',
    because: 'IFR flight needs a directional gyro or equivalent.',
  });

/** (d) */
const instrumentFlight: readonly Paragraph[] = [
  dayAndNightLists,
  radioAndNavigation,
  rateOfTurnIndicator,
  slipSkidIndicator,
  sensitiveAltimeter,
  clock,
  generator,
  pitchAndBankIndicator,
  directionIndicator,
];

/** (e): either will do, so the navigator is asked for where one works, and distance measuring equipment elsewhere. */
const flightLevel240: Paragraph = (aircraft, use) => {
  const navigators = operativeCount(aircraft, 'gps-navigator').operative;
  return demandWhen(
    allHold(
      holds(use.highestAltitudeFtMsl, (feet) => feet >= DME_FROM_FT_MSL),
      use.usesVor,
    ),
    {
      function: navigators.known && navigators.value > 0 ? 'gps-navigator' : 'dme',
      cite: '14cfr91.205(e)',
      because: 'At and above 24,000 ft by VOR: distance measuring equipment or a suitable RNAV system.',
    },
  );
};

/** One for each engine, where the condition holds. */
function perEngine(
  aircraft: AircraftFacts,
  condition: Fact<boolean>,
  fn: EquipmentFunction,
  cite: CiteId,
  because: string,
): Demand[] {
  return oneForEach(aircraft, condition, known(aircraft.type.engines), { function: fn, cite, because });
}

/**
 * One for each of several places (engines, tanks, seats). A spare one somewhere else does not serve a place whose own
 * one is out, and the list does not tell places apart: where there is more than one place, all installed must work.
 */
function oneForEach(
  aircraft: AircraftFacts,
  condition: Fact<boolean>,
  places: Fact<number>,
  ask: Parameters<typeof demandAsManyWhen>[2],
): Demand[] {
  const installed = installedCount(aircraft, ask.function);
  const several = places.known && Number.isSafeInteger(places.value) && places.value > 1;
  const count = several ? known(Math.max(places.value, installed)) : places;
  return demandAsManyWhen(condition, count, ask);
}

/** "Small civil airplanes". */
const smallAirplane = ({ type }: AircraftFacts): Fact<boolean> =>
  allHold(known(type.category === 'airplane'), isSmall(type));

/** Every light or source of an installed system; at least one. */
const wholeSystem = (aircraft: AircraftFacts, fn: EquipmentFunction): number =>
  Math.max(1, installedCount(aircraft, fn));

/**
 * The class of (b)(11). For a type certificated by the border whose airframe is newer, the text can be read both
 * ways, and is read as taking it in.
 */
function newSmallPart23Airplane(aircraft: AircraftFacts): {
  readonly applies: Fact<boolean>;
  readonly strictReading?: string;
} {
  const ofTheClass = allHold(smallAirplane(aircraft), aircraft.type.certificatedUnderPart23);
  const newType = isAfter(aircraft.type.certificatedOn, ANTICOLLISION_AFTER);
  if (!newType.known || newType.value) return { applies: allHold(ofTheClass, newType) };
  return {
    applies: allHold(ofTheClass, isAfter(aircraft.manufacturedOn, ANTICOLLISION_AFTER)),
    strictReading:
      'The type is older than 12 March 1996 but this airframe is not; the paragraph is read as taking it in.',
  };
}

/**
 * The relief of (b)(11) and (c)(3): a light that failed under way may wait until a place where it can be repaired.
 * Strictly read, it ends where repair is to be had, so it does not serve a departure from such a place, nor from one
 * of which this is not known, nor a flight to a place without repair.
 */
function continueToRepair(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  cite: CiteId,
  strictReading?: string,
): Pick<Demand, 'relief' | 'strictReading'> {
  if (!use.continuingToRepair || installedCount(aircraft, 'anticollision-lights') === 0) {
    return { relief: null, strictReading };
  }
  const noneHere = use.from.repairAvailable.known && !use.from.repairAvailable.value;
  const someThere = use.to.repairAvailable.known && use.to.repairAvailable.value;
  if (noneHere && someThere) {
    const limit = `Anticollision light failed under way: only on to ${use.to.ident} for repair, no further flight before it.`;
    return { relief: { cite, limit }, strictReading };
  }
  const ended =
    'Going on with a failed light is read as ending where repair is to be had, and as leading to a place that has it.';
  return { relief: null, strictReading: strictReading ? `${strictReading} ${ended}` : ended };
}

/** Whether instruction is "for hire" in (c)(4) is not settled by the text. */
const instructionIsForHire = (use: UseOfAircraft): string | undefined =>
  use.purpose === 'instruction-for-hire'
    ? 'Whether instruction counts as for hire here is not settled; instruction the school provides is taken as for hire.'
    : undefined;
