/**
 * Preventive maintenance: part 43 Appendix A(c) item by item, and 43.3(g), which lets a pilot do it. Sources: eCFR of 24 August and
 * 3 September 2026. In which chapters of the JASC table an item can lie is our own grouping, no source; the words beside each row are
 * the paragraph's.
 */
import { describe, expect, it } from 'vitest';
import { PARTS_OF_AIRCRAFT } from '@/lib/rules/jasc';
import { pilotPerforms43_3g } from '@/lib/rules/part-43/43-3-who-may-perform';
import {
  PREVENTIVE_ITEMS,
  systemsOfItem,
  whyItemDoesNotFit,
} from '@/lib/rules/part-43/43-appendix-a-preventive-maintenance';
import type { SignerFacts } from '@/lib/rules/people';
import type { WorkToSign } from '@/lib/rules/work-to-sign';
import { pilot, work } from '../fixtures/signers';

describe('the systems an item can lie in', () => {
  it.each([
    [1, 'landing gear tires', ['32']],
    [2, 'shock absorber cords on landing gear', ['32']],
    [3, 'landing gear shock struts', ['32']],
    [4, 'landing gear wheel bearings', ['32']],
    [5, 'safety wiring, cotter keys', null],
    [6, 'lubrication', null],
    [7, 'fabric patches: structure, fuselage, nacelles, stabilizers, wings', ['51', '53', '54', '55', '57']],
    [8, 'hydraulic fluid, in the reservoir of the brakes too', ['29', '32']],
    // (9) names landing gear and cowlings as well. The grouping leaves them out: stricter, it can only refuse.
    [
      9,
      'refinishing of fuselage, wings, tail, fairings, cabin, cockpit',
      ['25', '51', '52', '53', '54', '55', '57'],
    ],
    [10, 'preservative or protective material', null],
    [11, 'upholstery and furnishings', ['25']],
    [
      12,
      'fairings, cover plates, cowlings: of the gear and the engine too',
      ['32', '51', '52', '53', '54', '55', '57', '71'],
    ],
    [13, 'side windows', ['56']],
    [14, 'safety belts', ['25']],
    [15, 'seats', ['25']],
    [16, 'landing light wiring', ['33']],
    [17, 'bulbs of position and landing lights', ['33']],
    [18, 'wheels and skis', ['32']],
    [19, 'cowling', ['71']],
    [20, 'spark plugs', ['74']],
    // Hydraulic hoses, 29 and 32, are excepted by the paragraph.
    [21, 'hose connections: cabin heat, fuel, engine, oil', ['21', '28', '71', '73', '75', '79']],
    [22, 'prefabricated fuel lines', ['28', '73']],
    [23, 'fuel and oil strainers, filters', ['28', '73', '79']],
    [24, 'batteries', ['24']],
    [25, 'balloon burner nozzles', null],
    [26, 'nonstructural fasteners', null],
    [27, 'balloon baskets and burners', null],
    [28, 'anti-misfueling devices in tank openings', ['28']],
    [29, 'magnetic chip detectors', ['79']],
    [30, 'primary category programme', null],
    [31, 'tray-mounted navigation and communication devices', null],
  ])('(%i) %s', (item, _words, chapters) => {
    expect(systemsOfItem(item)).toEqual(chapters);
  });

  it('never flight controls, propellers or the inside of an engine: the list does not reach them', () => {
    for (const { item } of PREVENTIVE_ITEMS) {
      const chapters = systemsOfItem(item) ?? [];
      for (const chapter of ['27', '61', '72', '76', '80', '81', '85'])
        expect(chapters, `item ${item}`).not.toContain(chapter);
    }
  });
});

describe('whether an item can describe the work at all (strict reading of the list)', () => {
  const fits = (item: number, change: Partial<WorkToSign>) => {
    const entry = PREVENTIVE_ITEMS.find((one) => one.item === item);
    if (!entry) throw new Error(`No item ${item}`);
    return whyItemDoesNotFit(entry, work({ kind: 'preventive', preventiveItem: item, ...change })) === null;
  };
  const onParts = (item: number, change: Partial<WorkToSign> = {}) =>
    PARTS_OF_AIRCRAFT.filter((part) => fits(item, { part, ...change }));

  it.each(PREVENTIVE_ITEMS.filter(({ item, onlyFor }) => onlyFor === null && item !== 31))(
    '($item): airframe and engine, unit swap or not',
    ({ item }) => {
      expect(onParts(item)).toEqual(['airframe', 'powerplant']);
      expect(onParts(item, { swapOnly: true })).toEqual(['airframe', 'powerplant']);
    },
  );
  it('(31): a radio, and only out and in', () => {
    expect(onParts(31)).toEqual([]);
    expect(onParts(31, { swapOnly: true })).toEqual(['avionics']);
  });
  it.each([25, 27])('(%i): balloons only', (item) => {
    for (const aircraftCategory of ['airplane', 'rotorcraft', 'glider', 'powered-parachute'] as const)
      expect(onParts(item, { aircraftCategory })).toEqual([]);
    expect(onParts(item, { aircraftCategory: 'lighter-than-air' })).toEqual(['airframe', 'powerplant']);
  });
  it('(30): primary category, which is not held here', () => {
    expect(onParts(30)).toEqual([]);
    expect(onParts(30, { swapOnly: true })).toEqual([]);
  });
});

describe('43.3(g): preventive maintenance by a pilot', () => {
  const lines = (signer: SignerFacts, change: Partial<WorkToSign>) =>
    pilotPerforms43_3g(signer, work({ kind: 'preventive', preventiveItem: 17, ...change })).map(
      ({ effect, cite }) => `${effect} ${cite}`,
    );
  const named = pilot('private');

  it.each([
    ['an item of the list', named, {}, ['supports 14cfr43appA(c)(17)']],
    ['an item that does not fit', named, { part: 'propeller' }, ['bars 14cfr43appA(c)(17)']],
    ['no item', named, { preventiveItem: null }, ['bars 14cfr43appA(c)']],
    // Not preventive: nothing else needs to be said.
    ['a minor repair', named, { kind: 'minor' }, ['bars 14cfr43.3(g)']],
    ['a major repair', named, { kind: 'major' }, ['bars 14cfr43.3(g)']],
    ['an annual', named, { kind: 'annual' }, ['bars 14cfr43.3(g)']],
    // "Owned or operated by that pilot": we ask for the operator's naming in writing (strict reading).
    ['not named', pilot('private', false), {}, ['supports 14cfr43appA(c)(17)', 'bars 14cfr43.3(g)']],
    [
      'done by another',
      named,
      { performedBySigner: false },
      ['supports 14cfr43appA(c)(17)', 'bars 14cfr43.3(g)'],
    ],
    [
      'every reason against is given',
      pilot('private', false),
      { preventiveItem: 32, performedBySigner: false },
      ['bars 14cfr43appA(c)', 'bars 14cfr43.3(g)', 'bars 14cfr43.3(g)'],
    ],
  ] as const)('%s', (_words, signer, change, expected) => {
    expect(lines(signer, change)).toEqual(expected);
  });
});
