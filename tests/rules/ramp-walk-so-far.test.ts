import { describe, expect, it } from 'vitest';
import { staysInShell, whichView } from '@/app/ramp/out/which-view';
import { findingPath } from '@/app/ramp/out/finding-path';
import { nextOpen, placardsToCheck, stationFor, walkSoFar, type Answered } from '@/app/ramp/out/walk/so-far';
import { NO_ANSWER, type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { type WalkaroundList } from '@/lib/rules/walkaround/plan';
import { type PackWriteUp } from '@/lib/walkarounds/pack';

/** How far a walk is, for the screen. Source: issue 3 ("not looked at" is never good); the rest is our own design. */
const LIST: WalkaroundList = {
  stations: [
    {
      area: 'cabin',
      title: 'Cabin',
      items: [
        { kind: 'look', key: 'belts', title: 'Belts', lookFor: 'Whole.' },
        { kind: 'look', key: 'seats', title: 'Seats', lookFor: 'Lock.' },
      ],
    },
    {
      area: 'nose-right',
      title: 'Nose, right side',
      items: [
        {
          kind: 'number',
          key: 'oil',
          title: 'Oil',
          lookFor: 'Dipstick.',
          measurement: 'oil-quantity',
          limit: { min: 45, max: 80, source: 'Handbook, section 2' },
          findingKey: 'oil-low',
        },
        { kind: 'sample', key: 'strainer', title: 'Strainer', lookFor: 'Clear.', drain: 'N1' },
      ],
    },
  ],
};

const AT = '2026-11-25T10:00:00Z';
const good: ItemAnswer = { ...NO_ANSWER, looked: 'good' };
const read = (value: number, struck = false): ItemAnswer => ({
  ...NO_ANSWER,
  readings: [{ value, at: AT, struck }],
});
const walk = (change: Partial<Answered> = {}): Answered => ({
  items: {},
  placards: {},
  findings: [],
  ...change,
});
const soFar = (change: Partial<Answered>, writeUps: readonly PackWriteUp[] = []) =>
  walkSoFar(LIST, walk(change), [], writeUps);

const deferred = (change: Partial<PackWriteUp> = {}): PackWriteUp => ({
  id: 'w1',
  number: 'W-0007',
  title: 'Landing light out',
  station: 'left-leading-edge',
  place: '',
  words: 'Dark.',
  jasc: '3340',
  kind: 'inoperative',
  findingKey: null,
  state: 'deferred',
  severity: 'limiting',
  openedAt: AT,
  closedAt: null,
  closedHow: null,
  reportedBy: 'Pia Ottersby',
  photos: 0,
  observations: 0,
  placards: [{ id: 'p1', wording: 'INOPERATIVE', location: 'Beside the switch', placed: true }],
  ...change,
});

describe('how far a walk is', () => {
  it('nothing answered is nothing looked at', () => {
    const { stations, done, toRaise } = soFar({});
    expect(stations.map(({ looked }) => looked)).toEqual(['not-looked-at', 'not-looked-at']);
    expect([done, toRaise]).toEqual([0, []]);
  });

  it('a station is good only when each of its items is', () => {
    expect(soFar({ items: { belts: good } }).stations[0]?.looked).toBe('begun');
    const both = soFar({ items: { belts: good, seats: good } });
    expect([both.stations[0]?.looked, both.done]).toEqual(['good', 1]);
  });

  // Limit 4.5 to 8.0 qt: just under, exactly on, just over.
  it.each([
    [44, 1],
    [45, 0],
    [46, 0],
    [79, 0],
    [80, 0],
    [81, 1],
  ])('oil of %i tenths of a quart raises %i finding by itself', (value, raised) => {
    expect(soFar({ items: { oil: read(value) } }).toRaise).toHaveLength(raised);
  });

  it('what was taken back as mistyped counts no more: not looked at again', () => {
    const { stations, toRaise } = soFar({ items: { oil: read(10, true) } });
    expect([stations[1]?.looked, toRaise]).toEqual(['not-looked-at', []]);
  });

  it('what was written up on the way is not raised twice', () => {
    const findings = [{ station: 'nose-right', itemKey: 'oil', id: 'f1' }];
    const { toRaise, stations } = soFar({ items: { oil: read(10) }, findings });
    expect(toRaise).toEqual([]);
    expect(stations[1]?.looked).toBe('finding');
  });

  it('a finding written for something to look at is an answer to it; one for the place alone answers no item', () => {
    const forItem = soFar({ findings: [{ station: 'cabin', itemKey: 'belts', id: 'f1' }] });
    expect(forItem.stations[0]?.open.map(({ item }) => item.key)).toEqual(['seats']);
    const forPlace = soFar({ findings: [{ station: 'cabin', itemKey: null, id: 'f1' }] });
    expect(forPlace.stations[0]?.open).toHaveLength(2);
    expect([forPlace.stations[0]?.looked, forPlace.done]).toEqual(['finding', 0]);
  });

  it('goes on to the next station with something open, round to the first, and then to none', () => {
    const { stations } = soFar({ items: { belts: good, seats: good } });
    expect(nextOpen(stations, -1)?.station.area).toBe('nose-right');
    expect(nextOpen(stations, 1)?.station.area).toBe('nose-right');
    expect(nextOpen([], -1)).toBeNull();
  });
});

describe('placards (14 CFR 91.213(d)(3)(ii))', () => {
  it('one that was put up for a live deferral is checked in the cabin', () => {
    expect(placardsToCheck(LIST, [deferred()]).map(({ id, area }) => [id, area])).toEqual([['p1', 'cabin']]);
  });

  it('one still owed, or of something open, is not asked for', () => {
    const owed = deferred({ placards: [{ id: 'p1', wording: 'X', location: 'Y', placed: false }] });
    expect(placardsToCheck(LIST, [owed, deferred({ state: 'open' })])).toEqual([]);
  });

  it('a missing one is raised, once it is written up no more', () => {
    const missing = soFar({ placards: { p1: 'missing' } }, [deferred()]);
    expect(missing.toRaise.map(({ findingKey, station }) => [findingKey, station])).toEqual([
      ['placard-missing', 'cabin'],
    ]);
    const key = missing.toRaise[0]?.itemKey ?? '';
    const findings = [{ station: 'cabin', itemKey: key, id: 'f1' }];
    expect(soFar({ placards: { p1: 'missing' }, findings }, [deferred()]).toRaise).toEqual([]);
    expect(soFar({ placards: { p1: 'there' } }, [deferred()]).toRaise).toEqual([]);
  });
});

describe('the station where one meets what is stored', () => {
  const list = (...areas: WalkaroundList['stations'][number]['area'][]): WalkaroundList => ({
    stations: areas.map((area) => ({ area, title: area, items: [] })),
  });
  it.each([
    ['itself', list('cabin', 'left-tip'), 'left-tip', 'left-tip'],
    ['the coarser one', list('cabin', 'left-wing-and-gear'), 'left-tip', 'left-wing-and-gear'],
    ['a finer one', list('cabin', 'left-main-gear'), 'left-wing-and-gear', 'left-main-gear'],
    ['the first', list('cabin', 'tail'), 'right-strut', 'cabin'],
    ['none in an empty list', list(), 'tail', null],
  ])('%s', (_, from, stored, met) => {
    expect(stationFor(from, stored)).toBe(met);
  });
});

describe('which screen an address means', () => {
  const ID = '36c434f0-c256-5b92-89a2-ecf1da4f4f54';
  it.each([
    ['/ramp', 'fleet'],
    ['/ramp/', 'fleet'],
    ['/ramp/out', 'sent'],
    [`/ramp/${ID}`, 'aircraft'],
    [`/ramp/${ID}/walk`, 'walk'],
    [`/ramp/${ID}/finding`, 'finding'],
    [`/ramp/${ID}/meters`, 'meters'],
    ['/ramp/mine', 'elsewhere'],
    [`/ramp/write-up/${ID}`, 'elsewhere'],
    [`/ramp/${ID}/walk/more`, 'elsewhere'],
    ['/desk', 'elsewhere'],
    ['/', 'elsewhere'],
  ])('%s is %s', (path, kind) => {
    expect(whichView(path).kind).toBe(kind);
  });

  it('the list and one aircraft are the server’s while it answers; the walk never is', () => {
    expect([staysInShell('/ramp', true), staysInShell('/ramp', false)]).toEqual([false, true]);
    expect([staysInShell(`/ramp/${ID}`, true), staysInShell(`/ramp/${ID}`, false)]).toEqual([false, true]);
    expect([staysInShell(`/ramp/${ID}/walk`, true), staysInShell('/desk', false)]).toEqual([true, false]);
  });

  it('the finding form is told by its address, nothing that is empty', () => {
    expect(findingPath('A', {})).toBe('/ramp/A/finding');
    expect(
      findingPath('A', { station: 'tail', words: '', measured: { key: 'oil-quantity', text: '3.5' } }),
    ).toBe('/ramp/A/finding?station=tail&measured=oil-quantity%3A3.5');
  });
});
