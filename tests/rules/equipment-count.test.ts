/** How many of an item still work, write-ups counted. 14 CFR 91.213(a), 91.205(a); strict readings are said in lib/rules/equipment-count.ts. */
import { describe, expect, it, test } from 'vitest';
import type { DiscrepancyFacts, EquipmentFacts } from '@/lib/rules/aircraft';
import { inoperativeWriteUps, operativeCount, writeUpsOfRow } from '@/lib/rules/equipment-count';
import { known, unknown } from '@/lib/rules/facts';
import { deferralOf, discrepancyOf, equipmentRow, trainer } from '../fixtures/aircraft';

const row = (id: string, installed: number, change: Partial<EquipmentFacts> = {}) =>
  equipmentRow('landing-light', `Light ${id}`, '3340', { id, installed, ...change });
const out = (id: string, equipmentId: string | null, change: Partial<DiscrepancyFacts> = {}) =>
  discrepancyOf({ id, number: `W-${id}`, title: 'Light out', equipmentId, jasc: '3340', ...change });
const plane = (equipment: readonly EquipmentFacts[], discrepancies: readonly DiscrepancyFacts[] = []) =>
  trainer({ equipment, discrepancies });
const count = (...given: Parameters<typeof plane>) => operativeCount(plane(...given), 'landing-light');

describe('installed less what is out', () => {
  it.each([
    ['nothing out', [], known(3)],
    ['one out', [out('1', 'a')], known(2)],
    ['deferred does not work either', [out('1', 'a', { deferral: deferralOf() })], known(2)],
    ['two of one row', [out('1', 'a', { inoperativeCount: known(2) })], known(1)],
    ['more than the row has is the whole row', [out('1', 'a', { inoperativeCount: known(9) })], known(1)],
    [
      'two write-ups on one row add up, to the whole row',
      [out('1', 'a'), out('2', 'a'), out('3', 'a')],
      known(1),
    ],
    ['one on each row', [out('1', 'a'), out('2', 'b')], known(1)],
    [
      'how many is not known: the whole row',
      [out('1', 'a', { inoperativeCount: unknown('how many') })],
      known(1),
    ],
    ['none, a part, below none: the whole row', [out('1', 'a', { inoperativeCount: known(0) })], known(1)],
    ['a part', [out('1', 'a', { inoperativeCount: known(0.5) })], known(1)],
    ['damage is not counted here', [out('1', 'a', { kind: 'damage' })], known(3)],
    ['another item', [out('1', 'taxi')], known(3)],
  ] as const)('%s', (_what, writeUps, operative) => {
    const counted = count(
      [row('a', 2), row('b', 1), equipmentRow('taxi-light', 'Taxi', '3341', { id: 'taxi' })],
      writeUps,
    );
    expect(counted.operative).toEqual(operative);
    expect(counted.installed).toBe(3);
    expect(counted.rows.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(counted.unconfirmed).toBeNull();
  });
});

test('a write-up that names no item of the list may be on any row of its code, and on no other', () => {
  const rows = [row('a', 2), row('b', 1, { jasc: '3341' })];
  const asked = 'which item of equipment W-9 (Light out) is about';
  expect(count(rows, [out('9', null)]).operative).toEqual(unknown(asked));
  expect(count(rows, [out('9', null, { jasc: '3341' })]).operative).toEqual(unknown(asked));
  expect(count(rows, [out('9', 'gone')]).operative).toEqual(unknown(asked));
  expect(count(rows, [out('9', null, { jasc: '2312' })]).operative).toEqual(known(3));
  expect(count(rows, [out('9', null, { kind: 'damage' })]).operative).toEqual(known(3));
});

test('a row that nobody confirmed is installed and never counts as present', () => {
  const doubtful = row('b', 1, { confirmed: unknown('who confirmed it') });
  const counted = count([row('a', 2), doubtful]);
  expect(counted).toMatchObject({ installed: 3, operative: known(2), unconfirmed: doubtful });
  expect(count([row('a', 2), row('b', 1)]).unconfirmed).toBeNull();
});

test('nothing on the list is none', () => {
  expect(count([])).toMatchObject({ installed: 0, operative: known(0), rows: [], unconfirmed: null });
});

test('the write-ups of a function, in their order, and of one row', () => {
  const of = (rows: readonly EquipmentFacts[]) => {
    const aircraft = plane(rows, [
      out('1', 'b'),
      out('2', 'a'),
      out('3', 'a', { kind: 'wear' }),
      out('4', null),
      out('5', 'taxi'),
      out('6', 'b'),
    ]);
    return [inoperativeWriteUps(aircraft, 'landing-light'), writeUpsOfRow(aircraft, 'b')].map((some) =>
      some.map(({ id }) => id),
    );
  };
  expect(of([row('a', 1), row('b', 1)])).toEqual([
    ['1', '2', '6'],
    ['1', '6'],
  ]);
  expect(of([row('a', 1)])).toEqual([['2'], []]);
  expect(of([])).toEqual([[], []]);
});
