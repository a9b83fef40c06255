import { SEDGE_EQUIPMENT } from './equipment';
import { SEDGE_LIMITS } from './limits';
import type { AircraftPlan } from './shapes';

const sedge = (
  plan: Pick<
    AircraftPlan,
    | 'registration'
    | 'serial'
    | 'base'
    | 'manufacturedOn'
    | 'ttisTenths'
    | 'tenthsADay'
    | 'annualMonthsAgo'
    | 'hundredHourTenthsLeft'
    | 'altimeterTestMonthsAgo'
    | 'vorCheckDaysAgo'
  > &
    Partial<AircraftPlan>,
): AircraftPlan => ({
  type: 'sedge',
  forHire: true,
  hobbsAheadTenths: -2140,
  tachAheadTenths: -310,
  ttisMeter: 'tach',
  parked: false,
  equipment: SEDGE_EQUIPMENT,
  limits: SEDGE_LIMITS,
  directives: [
    {
      number: 'Demo directive 2003-118',
      title: 'stall warning vane must work',
      equipment: 'stall-warning',
    },
    { number: 'Demo directive 2011-042', title: 'seat rail pins', equipment: null },
  ],
  directivesReviewedMonthsAgo: plan.annualMonthsAgo,
  mel: null,
  registrationGoodMonths: 31,
  altimeterTestedToFt: 20_000,
  eltBatteryGoodMonths: 19,
  oilChangeTenthsAgo: 212,
  ...plan,
});

export const SEDGES: readonly AircraftPlan[] = [
  sedge({
    registration: 'N041QB',
    serial: '112-0041',
    base: 'qb',
    manufacturedOn: '2001-04-09',
    ttisTenths: 68_412,
    tenthsADay: 13,
    annualMonthsAgo: 3,
    hundredHourTenthsLeft: 412,
    altimeterTestMonthsAgo: 9,
    vorCheckDaysAgo: 11,
  }),
  sedge({
    registration: 'N042QB',
    serial: '112-0042',
    base: 'qb',
    manufacturedOn: '2001-05-22',
    ttisTenths: 71_935,
    tenthsADay: 14,
    annualMonthsAgo: 8,
    hundredHourTenthsLeft: 536,
    altimeterTestMonthsAgo: 14,
    vorCheckDaysAgo: 19,
    hobbsAheadTenths: 260,
    oilChangeTenthsAgo: 95,
  }),
  sedge({
    registration: 'N043QB',
    serial: '112-0057',
    base: 'qb',
    manufacturedOn: '2003-02-17',
    ttisTenths: 59_870,
    tenthsADay: 12,
    annualMonthsAgo: 6,
    hundredHourTenthsLeft: 308,
    altimeterTestMonthsAgo: 17,
    vorCheckDaysAgo: 6,
    registrationGoodMonths: 52,
    oilChangeTenthsAgo: 331,
  }),
  sedge({
    registration: 'N045TM',
    serial: '112-0063',
    base: 'tm',
    manufacturedOn: '2004-08-30',
    ttisTenths: 44_206,
    tenthsADay: 9,
    annualMonthsAgo: 5,
    hundredHourTenthsLeft: 640,
    altimeterTestMonthsAgo: 11,
    // Nobody has entered how high the altimeter was tested: barred under IFR, and the answer says what is missing.
    altimeterTestedToFt: null,
    vorCheckDaysAgo: 8,
    eltBatteryGoodMonths: 7,
    oilChangeTenthsAgo: 174,
  }),
];
