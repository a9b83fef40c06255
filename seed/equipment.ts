import type { EquipmentFunction, RequiredCounts } from '../lib/rules/aircraft';
import type { EquipmentPlan } from './shapes';

/** The equipment lists of the invented types. JASC codes as the public table has them. */

const NONE: RequiredCounts = { dayVfr: 0, nightVfr: 0, dayIfr: 0, nightIfr: 0 };
const always = (count: number): RequiredCounts => ({
  dayVfr: count,
  nightVfr: count,
  dayIfr: count,
  nightIfr: count,
});
const atNight = (count: number): RequiredCounts => ({ ...NONE, nightVfr: count, nightIfr: count });
const underIfr = (count: number): RequiredCounts => ({ ...NONE, dayIfr: count, nightIfr: count });

const item = (
  fn: EquipmentFunction,
  name: string,
  jasc: string,
  installed = 1,
  required: RequiredCounts = NONE,
): EquipmentPlan => ({ function: fn, name, jasc, installed, vfrDayTypeDesign: false, required });

/** Part of the VFR-day type design, and on the list for every kind of flight. */
const design = (fn: EquipmentFunction, name: string, jasc: string, installed = 1): EquipmentPlan => ({
  ...item(fn, name, jasc, installed, always(installed)),
  vfrDayTypeDesign: true,
});

const BASIC: readonly EquipmentPlan[] = [
  design('airspeed-indicator', 'Airspeed indicator', '3414'),
  design('altimeter', 'Altimeter', '3416'),
  design('magnetic-direction-indicator', 'Magnetic compass', '3423'),
  design('tachometer', 'Tachometer', '7714'),
  design('oil-pressure-gauge', 'Oil pressure gauge', '7931'),
  design('oil-temperature-gauge', 'Oil temperature gauge', '7933'),
  design('fuel-quantity-gauge', 'Fuel quantity gauges', '2841', 2),
  design('electrical-source', 'Battery', '2432'),
  design('generator', 'Alternator', '2434'),
  design('stall-warning', 'Stall warning', '3418'),
  design('flaps', 'Wing flaps', '2750'),
  item('elt', 'Emergency locator transmitter', '2562', 1, always(1)),
  item('position-lights', 'Position lights', '3340', 3, atNight(3)),
  item('instrument-lights', 'Instrument lights', '3310', 1, atNight(1)),
  item('landing-light', 'Landing light', '3340'),
  item('taxi-light', 'Taxi light', '3340'),
  item('two-way-radio', 'VHF radio', '2312', 1, underIfr(1)),
  item('vor-receiver', 'VOR receiver', '3454'),
  item('gps-navigator', 'GPS navigator', '3457'),
  item('transponder', 'Transponder', '3452'),
  item('altitude-reporting', 'Altitude encoder', '3416'),
  item('adsb-out', 'ADS-B Out transmitter', '3452'),
  item('rate-of-turn-indicator', 'Turn coordinator', '3424', 1, underIfr(1)),
  item('slip-skid-indicator', 'Slip-skid ball', '3424', 1, underIfr(1)),
  item('attitude-indicator', 'Attitude indicator', '3421', 1, underIfr(1)),
  item('heading-gyro', 'Directional gyro', '3422', 1, underIfr(1)),
  item('clock', 'Panel clock', '3120', 1, underIfr(1)),
  item('vacuum-pump', 'Vacuum pump', '3700', 1, underIfr(1)),
  item('vacuum-gauge', 'Vacuum gauge', '3720', 1, underIfr(1)),
  item('pitot-heat', 'Pitot heat', '3030', 1, underIfr(1)),
  item('intercom', 'Intercom', '2340'),
  item('cabin-heat', 'Cabin heat', '2140'),
  item('fire-extinguisher', 'Fire extinguisher', '2622'),
  item('other', 'Vertical speed indicator', '3413'),
];

/** Two seats, breakers, anticollision light in the type design. */
export const SEDGE_EQUIPMENT: readonly EquipmentPlan[] = [
  ...BASIC,
  design('anticollision-lights', 'Anticollision beacon', '3340'),
  design('seat-belts', 'Safety belts', '2510', 2),
  design('shoulder-harness', 'Shoulder harnesses', '2510', 2),
];

/** Four seats, fuses; the rotating beacon was an option, asked for at night only. */
export const BRACKEN_EQUIPMENT: readonly EquipmentPlan[] = [
  ...BASIC,
  item('anticollision-lights', 'Rotating beacon', '3340', 1, atNight(1)),
  item('spare-fuses', 'Spare fuses', '2460', 1, atNight(1)),
  design('seat-belts', 'Safety belts', '2510', 4),
  item('shoulder-harness', 'Shoulder harnesses, front seats', '2510', 2),
];

/** Four seats, constant-speed propeller, autopilot. */
export const FOXGLOVE_EQUIPMENT: readonly EquipmentPlan[] = [
  ...BASIC,
  design('anticollision-lights', 'Anticollision strobes', '3340', 2),
  design('seat-belts', 'Safety belts', '2510', 4),
  design('shoulder-harness', 'Shoulder harnesses', '2510', 4),
  design('manifold-pressure-gauge', 'Manifold pressure gauge', '7713'),
  item('autopilot', 'Autopilot, two axes', '2210'),
  item('dme', 'Distance measuring equipment', '3451'),
];
