import { BRACKEN_EQUIPMENT } from './equipment';
import { BRACKEN_LIMITS } from './limits';
import type { AircraftPlan } from './shapes';

const bracken = (
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
  type: 'bracken',
  forHire: true,
  hobbsAheadTenths: -31_200,
  tachAheadTenths: -18_450,
  ttisMeter: 'tach',
  parked: false,
  equipment: BRACKEN_EQUIPMENT,
  limits: BRACKEN_LIMITS,
  directives: [
    { number: 'Demo directive 79-231', title: 'fuel cap seals', equipment: null },
    { number: 'Demo directive 84-077', title: 'front seat stops', equipment: null },
  ],
  directivesReviewedMonthsAgo: plan.annualMonthsAgo,
  mel: null,
  registrationGoodMonths: 22,
  altimeterTestedToFt: 18_000,
  eltBatteryGoodMonths: 11,
  oilChangeTenthsAgo: 160,
  ...plan,
});

export const BRACKENS: readonly AircraftPlan[] = [
  // 1.4 h of its 100 hours left: good for a short lesson, not for a long one.
  bracken({
    registration: 'N051QB',
    serial: '40-212',
    base: 'qb',
    manufacturedOn: '1969-03-11',
    ttisTenths: 112_486,
    tenthsADay: 12,
    annualMonthsAgo: 7,
    hundredHourTenthsLeft: 14,
    altimeterTestMonthsAgo: 13,
    vorCheckDaysAgo: 14,
  }),
  bracken({
    registration: 'N052TM',
    serial: '40-268',
    base: 'tm',
    manufacturedOn: '1970-07-02',
    ttisTenths: 98_310,
    tenthsADay: 8,
    annualMonthsAgo: 4,
    hundredHourTenthsLeft: 478,
    altimeterTestMonthsAgo: 6,
    vorCheckDaysAgo: 16,
    registrationGoodMonths: 40,
    oilChangeTenthsAgo: 288,
  }),
  // Its annual ran out at the end of last month; it stands in the hangar for the next.
  bracken({
    registration: 'N053QB',
    serial: '40-301',
    base: 'qb',
    manufacturedOn: '1971-10-19',
    ttisTenths: 105_744,
    tenthsADay: 10,
    parked: true,
    annualMonthsAgo: 13,
    hundredHourTenthsLeft: 122,
    altimeterTestMonthsAgo: 19,
    vorCheckDaysAgo: 24,
    oilChangeTenthsAgo: 402,
  }),
  // Rented to members only, so it is not kept on 100-hour inspections.
  bracken({
    registration: 'N054TM',
    serial: '40-355',
    base: 'tm',
    manufacturedOn: '1973-05-28',
    ttisTenths: 87_125,
    tenthsADay: 6,
    forHire: false,
    annualMonthsAgo: 5,
    hundredHourTenthsLeft: null,
    altimeterTestMonthsAgo: 8,
    vorCheckDaysAgo: 21,
    eltBatteryGoodMonths: 26,
    oilChangeTenthsAgo: 140,
  }),
];
