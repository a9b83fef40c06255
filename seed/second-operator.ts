import { SEDGE_EQUIPMENT } from './equipment';
import { SEDGE_LIMITS } from './limits';
import type { OperatorPlan } from './shapes';

/**
 * A second, tiny operator, so that it can be seen that nothing leaks from one to the other. Nobody has entered when its
 * type was certificated, so its one aircraft is no go and the answer names what is missing.
 */
export const MARROWFIELD: OperatorPlan = {
  key: 'marrowfield',
  name: 'Marrowfield Sunday Wings',
  part141: false,
  bases: [
    {
      key: 'mf',
      ident: 'ZZMF',
      name: 'Marrowfield Meadow',
      latitudeDeg: 39.72,
      longitudeDeg: -105.9,
      zone: 'America/Denver',
      repairAvailable: false,
      transponderAirspace: false,
      adsbAirspace: false,
      controlledAirspace: false,
    },
  ],
  people: [
    {
      key: 'nell',
      name: 'Nell Ashgrebe',
      email: 'nell@marrowfield.example',
      roles: ['pilot', 'manager'],
      base: 'mf',
      certificates: [
        {
          kind: 'pilot',
          number: 'DEMO-P-5101',
          grade: 'private',
          ratings: ['airplane-single-engine-land'],
        },
      ],
      inWords: 'manager and pilot of another, tiny operator',
    },
  ],
  types: [
    {
      key: 'teasel',
      name: 'Teasel 90',
      category: 'airplane',
      rating: 'airplane-single-engine-land',
      turbine: false,
      maxTakeoffWeightLb: 1600,
      mmelPublished: true,
      certificatedOn: null,
      certificatedUnderPart23: true,
      engines: 1,
      cooling: 'air',
      altitudeEngine: false,
      retractableGear: false,
      fuelTanks: 2,
      seats: 2,
      frontSeats: 2,
      usesFuses: false,
      equipmentListSource: 'Flight manual, section 6, invented for the demo',
    },
  ],
  aircraft: [
    {
      registration: 'N091MF',
      serial: 'T90-014',
      type: 'teasel',
      base: 'mf',
      forHire: false,
      manufacturedOn: '1994-06-06',
      ttisTenths: 22_417,
      hobbsAheadTenths: 0,
      tachAheadTenths: 0,
      ttisMeter: 'tach',
      tenthsADay: 2,
      parked: false,
      equipment: SEDGE_EQUIPMENT,
      limits: SEDGE_LIMITS,
      directives: [],
      directivesReviewedMonthsAgo: 4,
      mel: null,
      registrationGoodMonths: 17,
      annualMonthsAgo: 4,
      hundredHourTenthsLeft: null,
      altimeterTestMonthsAgo: 10,
      altimeterTestedToFt: 14_000,
      vorCheckDaysAgo: 12,
      eltBatteryGoodMonths: 14,
      oilChangeTenthsAgo: 120,
    },
  ],
  enteredBy: 'nell',
  vorChecker: 'nell',
  inspector: 'a visiting inspector, inspection authorization DEMO-I-9001',
  station: 'repair station DEMO-R-901',
};
