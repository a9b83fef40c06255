/** What part 91 wants installed and working for a use: 91.205, 91.207, 91.209, 91.215, 91.225. Read plainly, one item after the other. */
import type { AircraftFacts, EquipmentFacts, EquipmentFunction } from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { addDays, and, lastDay, nothing, or, tri, valueOf, type Sheet, type Tri } from './sheet';

export interface Want {
  readonly cite: string;
  readonly fn: EquipmentFunction;
  /** Null: the number is not known. */
  readonly count: number | null;
  readonly applies: Tri;
  /** The paragraph of a relief that this use meets. */
  readonly relief: string | null;
}

const rowsOf = (aircraft: AircraftFacts, fn: EquipmentFunction): EquipmentFacts[] =>
  aircraft.equipment.filter((row) => row.function === fn);

export const installed = (aircraft: AircraftFacts, fn: EquipmentFunction): number =>
  rowsOf(aircraft, fn).reduce((sum, row) => sum + row.installed, 0);

/** How many of one row still work: every open write-up counts against it, deferred or not. */
export function workingOfRow(aircraft: AircraftFacts, row: EquipmentFacts): number {
  let left = row.installed;
  for (const d of aircraft.discrepancies) {
    if (d.kind !== 'inoperative' || d.equipmentId !== row.id) continue;
    const out = valueOf(d.inoperativeCount);
    left -= out === null || !Number.isInteger(out) || out < 1 ? row.installed : out;
  }
  return Math.max(0, left);
}

/** How many of a kind work; null when a write-up without an item may be about one of them. */
export function working(aircraft: AircraftFacts, fn: EquipmentFunction): number | null {
  const rows = rowsOf(aircraft, fn);
  const listed = (id: string | null) => aircraft.equipment.some((row) => row.id === id);
  const nameless = aircraft.discrepancies.some(
    (d) => d.kind === 'inoperative' && !listed(d.equipmentId) && rows.some((row) => row.jasc === d.jasc),
  );
  if (nameless) return null;
  return rows.filter((row) => row.confirmed.known).reduce((sum, row) => sum + workingOfRow(aircraft, row), 0);
}

/** One for each place. With more than one place, a spare elsewhere serves none, so all that are installed must work. */
function each(aircraft: AircraftFacts, fn: EquipmentFunction, places: number | null): number | null {
  if (places === null || !Number.isInteger(places)) return null;
  return places > 1 ? Math.max(places, installed(aircraft, fn)) : 1;
}

const whole = (aircraft: AircraftFacts, fn: EquipmentFunction): number =>
  Math.max(1, installed(aircraft, fn));

export const small = (aircraft: AircraftFacts): Tri =>
  tri(aircraft.type.maxTakeoffWeightLb, (lb) => lb <= 12_500);

/** The failed light may wait until the place of repair; not at a place that can repair it. */
const onToRepair = (use: UseOfAircraft): boolean =>
  use.continuingToRepair &&
  valueOf(use.from.repairAvailable) === false &&
  valueOf(use.to.repairAvailable) === true;

export function wants(aircraft: AircraftFacts, use: UseOfAircraft): Want[] {
  const { type, manufacturedOn } = aircraft;
  const list: Want[] = [];
  const want = (
    cite: string,
    fn: EquipmentFunction,
    count: number | null = 1,
    applies: Tri = true,
    relief: string | null = null,
  ) => {
    if (applies !== false) list.push({ cite, fn, count, applies, relief });
  };
  const perEngine = (fn: EquipmentFunction) => each(aircraft, fn, type.engines);
  const perSeat = (fn: EquipmentFunction) => each(aircraft, fn, valueOf(type.seats));
  const airplane = type.category === 'airplane';
  const smallAirplane = and(airplane, small(aircraft));
  const madeAfter = (day: string) => tri(manufacturedOn, (on) => on > day);
  const engineless =
    type.engines === 0 && (type.category === 'glider' || type.category === 'lighter-than-air');
  const night = use.light === 'night';
  const ifr = use.rules === 'IFR';

  if (!engineless) {
    want('91.205(b)(1)', 'airspeed-indicator');
    want('91.205(b)(2)', 'altimeter');
    want('91.205(b)(3)', 'magnetic-direction-indicator');
    want('91.205(b)(4)', 'tachometer', perEngine('tachometer'));
    want('91.205(b)(5)', 'oil-pressure-gauge', perEngine('oil-pressure-gauge'));
    want(
      '91.205(b)(6)',
      'coolant-temperature-gauge',
      perEngine('coolant-temperature-gauge'),
      tri(type.cooling, (c) => c === 'liquid'),
    );
    want(
      '91.205(b)(7)',
      'oil-temperature-gauge',
      perEngine('oil-temperature-gauge'),
      tri(type.cooling, (c) => c === 'air'),
    );
    want(
      '91.205(b)(8)',
      'manifold-pressure-gauge',
      perEngine('manifold-pressure-gauge'),
      valueOf(type.altitudeEngine),
    );
    want(
      '91.205(b)(9)',
      'fuel-quantity-gauge',
      each(aircraft, 'fuel-quantity-gauge', valueOf(type.fuelTanks)),
    );
    want('91.205(b)(10)', 'gear-position-indicator', 1, valueOf(type.retractableGear));
    // Certificated after the day, or an airframe built after it (both ways of reading it). The first date has to be known.
    const newer = type.certificatedOn.known
      ? or(type.certificatedOn.value > '1996-03-11', madeAfter('1996-03-11'))
      : null;
    const inClass = and(smallAirplane, valueOf(type.certificatedUnderPart23), newer);
    // One that failed: not where there is none.
    const failed = installed(aircraft, 'anticollision-lights') > 0;
    const continuing = (cite: string) => (failed && onToRepair(use) ? cite : null);
    want(
      '91.205(b)(11)',
      'anticollision-lights',
      whole(aircraft, 'anticollision-lights'),
      inClass,
      continuing('91.205(b)(11)'),
    );
    want(
      '91.205(b)(12)',
      'flotation-and-signal',
      valueOf(type.seats),
      and(use.hire, valueOf(use.overWaterBeyondGlide)),
    );
    want('91.205(b)(13)', 'seat-belts', perSeat('seat-belts'));
    const allSeats = and(smallAirplane, madeAfter('1986-12-12'));
    want('91.205(b)(14)', 'shoulder-harness', perSeat('shoulder-harness'), allSeats);
    const front = and(
      smallAirplane,
      madeAfter('1978-07-18'),
      tri(manufacturedOn, (on) => on <= '1986-12-12'),
    );
    want(
      '91.205(b)(14)',
      'shoulder-harness',
      each(aircraft, 'shoulder-harness', valueOf(type.frontSeats)),
      front,
    );
    want(
      '91.205(b)(17)',
      'shoulder-harness',
      perSeat('shoulder-harness'),
      and(type.category === 'rotorcraft', madeAfter('1992-09-16')),
    );
    if (night) {
      want('91.205(c)(2)', 'position-lights', whole(aircraft, 'position-lights'));
      want(
        '91.205(c)(3)',
        'anticollision-lights',
        whole(aircraft, 'anticollision-lights'),
        true,
        continuing('91.205(c)(3)'),
      );
      want('91.205(c)(4)', 'landing-light', 1, use.hire);
      want(
        '91.205(c)(5)',
        'electrical-source',
        whole(aircraft, 'electrical-source'),
        installed(aircraft, 'electrical-source') > 0 || installed(aircraft, 'generator') === 0,
      );
      want('91.205(c)(5)', 'generator', whole(aircraft, 'generator'), installed(aircraft, 'generator') > 0);
      want('91.205(c)(6)', 'spare-fuses', 1, valueOf(type.usesFuses));
    }
    if (ifr) {
      want('91.205(d)(2)', 'two-way-radio');
      const byVor = valueOf(use.usesVor);
      want('91.205(d)(2)', 'vor-receiver', 1, byVor);
      want('91.205(d)(2)', 'gps-navigator', 1, byVor === null ? null : !byVor);
      want('91.205(d)(3)', 'rate-of-turn-indicator');
      want('91.205(d)(4)', 'slip-skid-indicator');
      want('91.205(d)(5)', 'altimeter');
      want('91.205(d)(6)', 'clock');
      want('91.205(d)(7)', 'generator', whole(aircraft, 'generator'));
      want('91.205(d)(8)', 'attitude-indicator');
      want('91.205(d)(9)', 'heading-gyro');
      const high = and(
        tri(use.highestAltitudeFtMsl, (ft) => ft >= 24_000),
        byVor,
      );
      // Either will do.
      const rnav = (working(aircraft, 'gps-navigator') ?? 0) > 0;
      want('91.205(e)', rnav ? 'gps-navigator' : 'dme', 1, high);
    }
  }
  if (airplane && valueOf(type.seats) !== 1) want('91.207(a)(2)', 'elt', 1, true, eltRelief(aircraft, use));
  if (use.betweenSunsetAndSunrise)
    want('91.209(a)(1)', 'position-lights', whole(aircraft, 'position-lights'));
  const granted = use.atcTransponder === 'granted' ? '91.215(d)' : null;
  want('91.215(b)', 'transponder', 1, valueOf(use.transponderAirspace), granted);
  want('91.215(b)', 'altitude-reporting', 1, valueOf(use.transponderAirspace), granted);
  want('91.225', 'adsb-out', 1, valueOf(use.adsbAirspace), use.atcAdsb === 'granted' ? '91.225(g)' : null);
  return list;
}

/** 91.207(f)(3): instruction (no solo, no rental) wholly within 50 nautical miles. Null: not known. */
export function trainingNearby(use: UseOfAircraft): Tri {
  if (use.purpose !== 'instruction-for-hire') return false;
  return and(valueOf(use.trainingWithin50Nm), nauticalMiles(use) <= 50);
}

function nauticalMiles({ from, to }: UseOfAircraft): number {
  const rad = (deg: number) => (deg * Math.PI) / 180;
  const [a, b] = [rad(from.latitudeDeg), rad(to.latitudeDeg)];
  const h =
    Math.sin((b - a) / 2) ** 2 +
    Math.cos(a) * Math.cos(b) * Math.sin(rad(to.longitudeDeg - from.longitudeDeg) / 2) ** 2;
  return 2 * 3440.065 * Math.asin(Math.sqrt(h));
}

function eltRelief(aircraft: AircraftFacts, use: UseOfAircraft): string | null {
  if (trainingNearby(use) === true) return '91.207(f)(3)';
  // (e)(2): required crew only, from where it cannot be repaired to where it can; no student, no customer.
  const ferry = !use.hire && use.purpose !== 'student-solo' && valueOf(use.crewOnly) === true;
  const there = valueOf(use.from.repairAvailable) === false && valueOf(use.to.repairAvailable) === true;
  if (ferry && there) return '91.207(e)(2)';
  // (f)(10): every write-up on it is a removal, recorded and placarded, and the first of them 90 days ago at most.
  const ids = rowsOf(aircraft, 'elt').map(({ id }) => id);
  const writeUps = aircraft.discrepancies.filter(
    (d) => d.kind === 'inoperative' && d.equipmentId !== null && ids.includes(d.equipmentId),
  );
  const removals = writeUps.map(({ deferral }) =>
    deferral?.method === 'removed' && deferral.eltRemoval?.recordComplete === true && deferral.placardPlaced
      ? deferral.eltRemoval.firstRemovedOn
      : null,
  );
  if (removals.length === 0 || removals.includes(null)) return null;
  const first = removals.map((on) => on ?? '').sort()[0] ?? '';
  return lastDay(use) <= addDays(first, 90) ? '91.207(f)(10)' : null;
}

/** Whether what works is enough; null when that cannot be said. */
export function met(aircraft: AircraftFacts, want: Want): Tri {
  const works = working(aircraft, want.fn);
  if (want.applies === null || want.count === null || works === null) return null;
  return works >= Math.max(1, want.count);
}

/** Required equipment of the whole aircraft, and the list of equipment itself. */
export function judgeEquipment(aircraft: AircraftFacts, use: UseOfAircraft, sheet: Sheet): void {
  if (valueOf(aircraft.standardCategory) === null) sheet.unknown('91.205(a)');
  if (valueOf(aircraft.standardCategory) === false) sheet.bar('91.205(a)');
  for (const want of wants(aircraft, use)) {
    const is = met(aircraft, want);
    const row = rowsOf(aircraft, want.fn)[0];
    const about = row ? ({ kind: 'equipment', id: row.id } as const) : nothing;
    if (is === null) sheet.unknown(want.cite, about);
    if (is === false && want.relief === null) sheet.bar(want.cite, about);
    if (is === false && want.relief !== null) sheet.limit(want.relief);
  }
  for (const row of aircraft.equipment) {
    const about = { kind: 'equipment', id: row.id } as const;
    if (!row.confirmed.known) {
      sheet.unknown('house-caution', about);
      continue;
    }
    // 91.7(a): fewer aboard than its own list asks for is not the aircraft that was certificated.
    const listed = listAsks(row, use);
    const design = row.installed === 0 ? valueOf(row.vfrDayTypeDesign) : false;
    if (listed === null || design === null) sheet.unknown('91.7(a)', about);
    if ((listed ?? 0) > row.installed || design === true) sheet.bar('91.7(a)', about);
  }
  // 91.209(b): an installed anticollision light is lit, or it is out of use and placarded.
  for (const row of rowsOf(aircraft, 'anticollision-lights')) {
    for (const d of aircraft.discrepancies) {
      if (d.kind !== 'inoperative' || d.equipmentId !== row.id) continue;
      const off = d.deferral;
      const isWork = off !== null && (off.method === 'removed' || off.deactivationIsMaintenance);
      const out = off !== null && off.placardPlaced && (!isWork || off.maintenanceRecordSigned);
      if (!out) sheet.bar('91.209(b)', { kind: 'discrepancy', id: d.id });
    }
  }
}

/** 91.213(d)(2)(ii): night asks what day asks too, IFR what VFR asks. */
export function listAsks(row: EquipmentFacts, use: UseOfAircraft): number | null {
  const list = valueOf(row.requiredByList);
  if (list === null) return null;
  let most = list.dayVfr;
  if (use.light === 'night') most = Math.max(most, list.nightVfr);
  if (use.rules === 'IFR') most = Math.max(most, list.dayIfr);
  if (use.light === 'night' && use.rules === 'IFR') most = Math.max(most, list.nightIfr);
  return most;
}

export { onToRepair };
