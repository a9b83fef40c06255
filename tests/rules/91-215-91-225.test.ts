/**
 * 14 CFR 91.215(b), (d) and 91.225(a), (b), (d), (g). Source: the eCFR of 24 August and 3 September 2026 in the stored
 * copy github.com/Lyutenant/FAR-AIM.
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import { demandsOf91215 } from '../../lib/rules/part-91/91-215-transponder';
import { demandsOf91225 } from '../../lib/rules/part-91/91-225-ads-b-out';
import { trainer, useOf, withBroken, withoutEquipment } from '../fixtures/aircraft';

const inside = { transponderAirspace: known(true), adsbAirspace: known(true) };

describe('91.215 transponder', () => {
  it('asks for transponder and altitude reporting in that airspace only', () => {
    expect(demandsOf91215(trainer(), useOf(inside))).toMatchObject([
      { function: 'transponder', count: 1, cite: '14cfr91.215(b)', relief: null },
      { function: 'altitude-reporting', count: 1, cite: '14cfr91.215(b)', relief: null },
    ]);
    expect(demandsOf91215(trainer(), useOf())).toEqual([]);
  });
  it('is unknown when the airspace is', () => {
    const use = useOf({ transponderAirspace: unknown('whether the route enters it') });
    expect(demandsOf91215(trainer(), use).map(({ applies }) => applies)).toEqual([
      unknown('whether the route enters it'),
      unknown('whether the route enters it'),
    ]);
  });
  it.each(['not-asked', 'refused'] as const)('stands when air traffic control was %s', (atcTransponder) => {
    const demands = demandsOf91215(trainer(), useOf({ ...inside, atcTransponder }));
    expect(demands.map(({ relief }) => relief)).toEqual([null, null]);
  });
  it.each([
    ['encoder out', withBroken(trainer(), 'altitude-reporting'), ['(d)(2)', '(d)(1)']],
    ['transponder out', withBroken(trainer(), 'transponder'), ['(d)(2)', '(d)(2)']],
    ['none installed', withoutEquipment(trainer(), 'transponder'), ['(d)(3)', '(d)(3)']],
  ])('granted, %s', (_why, aircraft, cites) => {
    const demands = demandsOf91215(aircraft, useOf({ ...inside, atcTransponder: 'granted' }));
    expect(demands.map(({ relief }) => relief?.cite)).toEqual(cites.map((cite) => `14cfr91.215${cite}`));
  });
  it('is not relieved by an authorization for ADS-B', () => {
    const demands = demandsOf91215(trainer(), useOf({ ...inside, atcAdsb: 'granted' }));
    expect(demands.map(({ relief }) => relief)).toEqual([null, null]);
  });
});

describe('91.225 ADS-B Out', () => {
  it('is asked for in that airspace only', () => {
    expect(demandsOf91225(trainer(), useOf(inside))).toMatchObject([
      { function: 'adsb-out', count: 1, cite: '14cfr91.225', relief: null },
    ]);
    expect(demandsOf91225(trainer(), useOf())).toEqual([]);
  });
  it('is unknown when the airspace is', () => {
    const [demand] = demandsOf91225(trainer(), useOf({ adsbAirspace: unknown('the airspace') }));
    expect(demand?.applies).toEqual(unknown('the airspace'));
  });
  it.each([
    ['not-asked', trainer(), null],
    ['refused', trainer(), null],
    ['granted', withBroken(trainer(), 'adsb-out'), '14cfr91.225(g)(1)'],
    ['granted', withoutEquipment(trainer(), 'adsb-out'), '14cfr91.225(g)(2)'],
  ] as const)('%s', (atcAdsb, aircraft, cite) => {
    const [demand] = demandsOf91225(aircraft, useOf({ ...inside, atcAdsb }));
    expect(demand?.relief?.cite ?? null).toBe(cite);
  });
});
