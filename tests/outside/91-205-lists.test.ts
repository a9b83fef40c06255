/**
 * The lists of 14 CFR 91.205 (b), (c) and (d), transcribed by hand, against what the code asks of a standard,
 * nonturbine, fixed-gear, air-cooled single of four seats and two tanks: certificated 1998 under part 23,
 * manufactured 2001, flown privately over land.
 *
 * Every row was transcribed from the eCFR of 24 August 2026, section 91.205, as stored in github.com/Lyutenant/FAR-AIM
 * (vault/FAR/Part 091/91.205.md). `also` names a printed page on which the same words were read:
 * - P742, P743: Code of Federal Regulations of 1 January 2014, title 14 volume 2, printed pages 732 and 733
 *   (www.faraim.org, stored pages 742 and 743).
 * - P720: the same of 1 January 2024, printed page 720 (www.faraim.org, section 91.207), which carries the end of (d).
 * The printed page of 2014 has other words in (b)(13), (14) and (16), which were amended in 2016.
 */
import { describe, expect, it } from 'vitest';
import type { EquipmentFunction } from '../../lib/rules/aircraft';
import { known } from '../../lib/rules/facts';
import { demandsOf91205 } from '../../lib/rules/part-91/91-205-required-instruments';
import { trainer, useOf } from '../fixtures/aircraft';

interface Row {
  readonly paragraph: string;
  /** The words of the paragraph, shortened. */
  readonly says: string;
  readonly asks: readonly (readonly [EquipmentFunction, number])[];
  readonly also?: 'P742' | 'P743' | 'P720';
}

/** Rows whose condition this airplane or flight does not meet ask for nothing. */
const DAY: readonly Row[] = [
  { paragraph: '(b)(1)', says: 'Airspeed indicator', asks: [['airspeed-indicator', 1]], also: 'P742' },
  { paragraph: '(b)(2)', says: 'Altimeter', asks: [['altimeter', 1]], also: 'P742' },
  {
    paragraph: '(b)(3)',
    says: 'Magnetic direction indicator',
    asks: [['magnetic-direction-indicator', 1]],
    also: 'P742',
  },
  { paragraph: '(b)(4)', says: 'Tachometer for each engine', asks: [['tachometer', 1]], also: 'P742' },
  {
    paragraph: '(b)(5)',
    says: 'Oil pressure gauge for each engine using pressure system',
    asks: [['oil-pressure-gauge', 1]],
    also: 'P742',
  },
  { paragraph: '(b)(6)', says: 'Temperature gauge for each liquid-cooled engine', asks: [], also: 'P742' },
  {
    paragraph: '(b)(7)',
    says: 'Oil temperature gauge for each air-cooled engine',
    asks: [['oil-temperature-gauge', 1]],
    also: 'P742',
  },
  { paragraph: '(b)(8)', says: 'Manifold pressure gauge for each altitude engine', asks: [], also: 'P742' },
  {
    paragraph: '(b)(9)',
    says: 'Fuel gauge indicating the quantity of fuel in each tank',
    asks: [['fuel-quantity-gauge', 2]],
    also: 'P742',
  },
  {
    paragraph: '(b)(10)',
    says: 'Landing gear position indicator, if the aircraft has a retractable landing gear',
    asks: [],
    also: 'P742',
  },
  {
    paragraph: '(b)(11)',
    says: 'Small civil airplanes certificated after March 11, 1996, under part 23: anticollision light system',
    asks: [['anticollision-lights', 1]],
    also: 'P742',
  },
  {
    paragraph: '(b)(12)',
    says: 'For hire over water and beyond power-off gliding distance from shore: flotation gear, pyrotechnic signal',
    asks: [],
    also: 'P742',
  },
  {
    paragraph: '(b)(13)',
    says: 'Approved safety belt or other approved restraint for each occupant 2 years of age or older',
    asks: [['seat-belts', 4]],
  },
  {
    paragraph: '(b)(14)',
    says: 'Small civil airplanes: shoulder harness for each front seat after July 18, 1978, all seats after December 12, 1986',
    asks: [['shoulder-harness', 4]],
  },
  {
    paragraph: '(b)(15)',
    says: 'Emergency locator transmitter, if required by 91.207',
    asks: [['elt', 1]],
  },
  {
    paragraph: '(b)(16)',
    says: 'Reserved',
    asks: [],
  },
  {
    paragraph: '(b)(17)',
    says: 'Rotorcraft manufactured after September 16, 1992: shoulder harness for each seat',
    asks: [],
  },
];

const NIGHT: readonly Row[] = [
  {
    paragraph: '(c)(2)',
    says: 'Approved position lights',
    asks: [['position-lights', 3]],
  },
  {
    paragraph: '(c)(3)',
    says: 'Approved aviation red or aviation white anticollision light system',
    asks: [['anticollision-lights', 1]],
    also: 'P743',
  },
  { paragraph: '(c)(4)', says: 'If operated for hire, one electric landing light', asks: [], also: 'P743' },
  {
    paragraph: '(c)(5)',
    says: 'Adequate source of electrical energy for all installed electrical and radio equipment',
    asks: [
      ['electrical-source', 1],
      ['generator', 1],
    ],
    also: 'P743',
  },
  {
    paragraph: '(c)(6)',
    says: 'One spare set of fuses, or three spare fuses of each kind required, accessible in flight',
    asks: [['spare-fuses', 1]],
    also: 'P743',
  },
];

const IFR: readonly Row[] = [
  {
    paragraph: '(d)(2)',
    says: 'Two-way radio communication and navigation equipment suitable for the route to be flown',
    asks: [
      ['two-way-radio', 1],
      ['vor-receiver', 1],
    ],
    also: 'P743',
  },
  {
    paragraph: '(d)(3)',
    says: 'Gyroscopic rate-of-turn indicator',
    asks: [['rate-of-turn-indicator', 1]],
    also: 'P743',
  },
  { paragraph: '(d)(4)', says: 'Slip-skid indicator', asks: [['slip-skid-indicator', 1]], also: 'P720' },
  {
    paragraph: '(d)(5)',
    says: 'Sensitive altimeter adjustable for barometric pressure',
    asks: [['altimeter', 1]],
    also: 'P720',
  },
  {
    paragraph: '(d)(6)',
    says: 'Clock displaying hours, minutes, and seconds, sweep-second pointer or digital',
    asks: [['clock', 1]],
    also: 'P720',
  },
  {
    paragraph: '(d)(7)',
    says: 'Generator or alternator of adequate capacity',
    asks: [['generator', 1]],
    also: 'P720',
  },
  {
    paragraph: '(d)(8)',
    says: 'Gyroscopic pitch and bank indicator (artificial horizon)',
    asks: [['attitude-indicator', 1]],
    also: 'P720',
  },
  {
    paragraph: '(d)(9)',
    says: 'Gyroscopic direction indicator (directional gyro or equivalent)',
    asks: [['heading-gyro', 1]],
    also: 'P720',
  },
];

const byVor = { usesVor: known(true) };

describe('14 CFR 91.205 as printed', () => {
  // (c)(1) and (d)(1) say which lists add up.
  it.each([
    ['VFR by day', DAY, useOf()],
    ['VFR by night', [...DAY, ...NIGHT], useOf({ light: 'night' })],
    ['IFR by day', [...DAY, ...IFR], useOf({ rules: 'IFR', ...byVor })],
    ['IFR by night', [...DAY, ...NIGHT, ...IFR], useOf({ rules: 'IFR', light: 'night', ...byVor })],
  ] as const)('%s', (_name, rows, use) => {
    const printed = rows.flatMap(({ paragraph, asks }) =>
      asks.map(([fn, count]) => `${paragraph} ${fn} x ${count}`),
    );
    const coded = demandsOf91205(trainer(), use).map(
      (demand) => `${demand.cite.replace('14cfr91.205', '')} ${demand.function} x ${demand.count}`,
    );
    expect(coded).toEqual(printed);
  });

  it('holds every paragraph of the three lists once', () => {
    const paragraphs = [...DAY, ...NIGHT, ...IFR].map((row) => row.paragraph);
    const numbered = (list: string, from: number, to: number) =>
      Array.from({ length: to - from + 1 }, (_, index) => `(${list})(${from + index})`);
    expect(paragraphs).toEqual([...numbered('b', 1, 17), ...numbered('c', 2, 6), ...numbered('d', 2, 9)]);
  });
});
