import { FOXGLOVE_EQUIPMENT } from './equipment';
import { FOXGLOVE_LIMITS } from './limits';
import type { AircraftPlan, MelItemPlan, MelPlan } from './shapes';

const entry = (
  equipment: MelItemPlan['equipment'],
  title: string,
  category: MelItemPlan['category'],
  proviso: string,
  more: Partial<MelItemPlan> = {},
): MelItemPlan => ({
  equipment,
  title,
  category,
  installed: 1,
  requiredForDispatch: 0,
  allowedNight: true,
  allowedIfr: true,
  allowedHire: true,
  proviso,
  operatingProcedure: null,
  maintenanceProcedure: null,
  ...more,
});

const MEL: MelPlan = {
  reference: 'Demo MEL FX-200, revision 3',
  letterReference: 'Demo letter of authorization 0611',
  extensionCategories: ['C'],
  extensionReference: 'Demo letter of authorization 0611, paragraph 4',
  items: [
    entry('autopilot', 'Autopilot', 'C', 'The flight does not need it.', {
      maintenanceProcedure: 'Pull and collar the autopilot breaker; check that the servos are free.',
    }),
    entry('landing-light', 'Landing light', 'C', 'Not for a night flight for hire.'),
    entry('taxi-light', 'Taxi light', 'C', 'The landing light works at night.'),
    entry('clock', 'Clock', 'C', 'VFR only.', { allowedIfr: false }),
    entry('dme', 'Distance measuring equipment', 'C', 'The procedures flown do not need it.'),
    entry('cabin-heat', 'Cabin heat', 'D', 'No icing on the route.'),
    entry('intercom', 'Intercom', 'D', 'The crew can hear each other by another way.', {
      allowedHire: false,
    }),
  ],
};

export const FOXGLOVE: AircraftPlan = {
  registration: 'N061QB',
  serial: '200-0117',
  type: 'foxglove',
  base: 'qb',
  forHire: true,
  manufacturedOn: '2006-01-24',
  ttisTenths: 31_058,
  hobbsAheadTenths: 1120,
  tachAheadTenths: 0,
  ttisMeter: null,
  tenthsADay: 8,
  parked: false,
  equipment: FOXGLOVE_EQUIPMENT,
  limits: FOXGLOVE_LIMITS,
  directives: [{ number: 'Demo directive 2009-205', title: 'fuel selector detent', equipment: null }],
  directivesReviewedMonthsAgo: 2,
  mel: MEL,
  registrationGoodMonths: 64,
  annualMonthsAgo: 2,
  hundredHourTenthsLeft: 590,
  altimeterTestMonthsAgo: 2,
  altimeterTestedToFt: 20_000,
  vorCheckDaysAgo: 9,
  eltBatteryGoodMonths: 33,
  oilChangeTenthsAgo: 205,
};
