import type { PersonPlan } from './shapes';

/** One easy password for everybody in the demo. */
export const DEMO_PASSWORD = 'wheelchock-demo';

const SINGLE_ENGINE_LAND = ['airplane-single-engine-land'];

/** Twelve invented people. Their certificates decide what the demo lets them sign. */
export const PEOPLE: readonly PersonPlan[] = [
  {
    key: 'pia',
    name: 'Pia Ottersby',
    email: 'pia@quillback.example',
    roles: ['pilot'],
    base: 'qb',
    certificates: [{ kind: 'pilot', number: 'DEMO-P-1101', grade: 'private', ratings: SINGLE_ENGINE_LAND }],
    namedForPreventiveMaintenance:
      'May do preventive maintenance on our aircraft, items (c)(1), (c)(17), (c)(23) and (c)(26), with the manual open.',
    inWords: 'private pilot who rents; named for preventive maintenance',
  },
  {
    key: 'ruth',
    name: 'Ruth Wrenbury',
    email: 'ruth@quillback.example',
    roles: ['pilot'],
    base: 'tm',
    certificates: [{ kind: 'pilot', number: 'DEMO-P-1102', grade: 'private', ratings: SINGLE_ENGINE_LAND }],
    inWords: 'private pilot who rents; not named for preventive maintenance',
  },
  {
    key: 'sam',
    name: 'Sam Thistlewick',
    email: 'sam@quillback.example',
    roles: ['pilot'],
    base: 'qb',
    certificates: [{ kind: 'pilot', number: 'DEMO-P-1103', grade: 'student', ratings: [] }],
    inWords: 'student pilot',
  },
  {
    key: 'ines',
    name: 'Ines Kestrelby',
    email: 'ines@quillback.example',
    roles: ['pilot'],
    base: 'qb',
    certificates: [
      { kind: 'pilot', number: 'DEMO-P-1104', grade: 'commercial', ratings: SINGLE_ENGINE_LAND },
    ],
    inWords: 'instructor, commercial pilot',
  },
  {
    key: 'dov',
    name: 'Dov Larkmoor',
    email: 'dov@quillback.example',
    roles: ['pilot', 'dispatcher'],
    base: 'tm',
    certificates: [
      { kind: 'pilot', number: 'DEMO-P-1105', grade: 'commercial', ratings: SINGLE_ENGINE_LAND },
    ],
    inWords: 'instructor, and dispatcher at Tamarack Shore',
  },
  {
    key: 'abel',
    name: 'Abel Gannetford',
    email: 'abel@quillback.example',
    roles: ['mechanic'],
    base: 'qb',
    certificates: [
      { kind: 'mechanic', number: 'DEMO-M-2101', ratings: ['airframe'], recentThroughMonths: 14 },
    ],
    inWords: 'mechanic, airframe only',
  },
  {
    key: 'moira',
    name: 'Moira Stobwell',
    email: 'moira@quillback.example',
    roles: ['mechanic'],
    base: 'qb',
    certificates: [
      {
        kind: 'mechanic',
        number: 'DEMO-M-2102',
        ratings: ['airframe', 'powerplant'],
        recentThroughMonths: 18,
      },
      { kind: 'inspection-authorization', number: 'DEMO-I-2102', ends: 'next-odd-march' },
    ],
    inWords: 'mechanic, airframe and powerplant, inspection authorization',
  },
  {
    key: 'hugo',
    name: 'Hugo Pellingrove',
    email: 'hugo@quillback.example',
    roles: ['mechanic'],
    base: 'qb',
    certificates: [
      {
        kind: 'mechanic',
        number: 'DEMO-M-2103',
        ratings: ['airframe', 'powerplant'],
        recentThroughMonths: 9,
      },
      { kind: 'inspection-authorization', number: 'DEMO-I-2103', ends: 'last-odd-march' },
    ],
    inWords: 'mechanic, airframe and powerplant, inspection authorization lapsed',
  },
  {
    key: 'wen',
    name: 'Wen Corriedale',
    email: 'wen@quillback.example',
    roles: ['mechanic'],
    base: 'qb',
    certificates: [
      {
        kind: 'repair-station',
        number: 'DEMO-R-310',
        ratings: ['radio', 'instrument'],
        authorisedToSign: true,
      },
    ],
    inWords: 'signs for a repair station, radio and instrument',
  },
  {
    key: 'tess',
    name: 'Tess Dunnockby',
    email: 'tess@quillback.example',
    roles: ['dispatcher'],
    base: 'qb',
    certificates: [],
    inWords: 'dispatcher',
  },
  {
    key: 'gil',
    name: 'Gil Farrowmere',
    email: 'gil@quillback.example',
    roles: ['pilot', 'dispatcher', 'manager'],
    base: 'qb',
    certificates: [
      { kind: 'pilot', number: 'DEMO-P-1106', grade: 'commercial', ratings: SINGLE_ENGINE_LAND },
    ],
    inWords: 'manager, who also dispatches and flies',
  },
  {
    key: 'olaf',
    name: 'Olaf Brindlemoss',
    email: 'olaf@quillback.example',
    roles: ['mechanic'],
    base: 'qb',
    certificates: [
      {
        kind: 'mechanic',
        number: 'DEMO-M-2104',
        ratings: ['airframe', 'powerplant'],
        recentThroughMonths: 2,
      },
    ],
    leftDaysAgo: 120,
    inWords: 'mechanic who left and can no longer sign in',
  },
];
