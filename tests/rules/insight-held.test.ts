/**
 * What held an aircraft, kind by kind. Sources: 91.7(a), 91.213(a), 91.405(a) and (c), 91.407(a)(1), 91.409(a), 39.7, 91.403(c), as the
 * answer applies them; as spans of time they are our own definition.
 */
import { describe, expect, test } from 'vitest';
import { heldByRequirement, heldByWriteUp } from '@/lib/rules/insight/held';
import type { Judged, RequirementHistory, WriteUpHistory } from '@/lib/rules/insight/history';
import type { Span } from '@/lib/rules/insight/spans';
import { aircraftHistory, annualHistory, deferralHistory, writeUpHistory } from '../fixtures/histories';

const at = (text: string) => `2026-11-${text}:00Z`;
const text = (minute: number): string =>
  Number.isFinite(minute) ? new Date(minute * 60_000).toISOString().slice(0, 16) : String(minute);
const spans = (held: readonly Span[]) => held.map(({ from, until }) => [text(from), text(until)]);
const WHOLE = [['2026-11-02T10:00', '2026-11-03T10:00']];

const writeUp = (judged: Partial<Judged>, with_: Partial<WriteUpHistory> = {}) =>
  writeUpHistory(at('02T10:00'), at('03T10:00'), {
    judged: [
      {
        at: at('02T10:00'),
        by: 'opening',
        kind: 'inoperative',
        severity: 'limiting',
        withinLimits: false,
        ...judged,
      },
    ],
    ...with_,
  });

describe('a write-up, by its kind', () => {
  // 91.405(a): repaired, unless found within limits.
  test.each(['damage', 'wear', 'leak', 'contamination', 'fastener', 'document'] as const)(
    '%s holds unless it is found within limits',
    (kind) => {
      expect(spans(heldByWriteUp(writeUp({ kind })))).toEqual(WHOLE);
      expect(heldByWriteUp(writeUp({ kind, withinLimits: true }))).toEqual([]);
      // 91.7(a): undecided or grounding, whatever was measured.
      expect(spans(heldByWriteUp(writeUp({ kind, withinLimits: true, severity: null })))).toEqual(WHOLE);
      expect(spans(heldByWriteUp(writeUp({ kind, withinLimits: true, severity: 'grounding' })))).toEqual(
        WHOLE,
      );
    },
  );
  test.each([true, false])(
    'servicing holds until it is done, cosmetic never: within limits %s',
    (withinLimits) => {
      expect(spans(heldByWriteUp(writeUp({ kind: 'servicing', withinLimits })))).toEqual(WHOLE);
      expect(heldByWriteUp(writeUp({ kind: 'cosmetic', withinLimits }))).toEqual([]);
      expect(
        spans(heldByWriteUp(writeUp({ kind: 'cosmetic', severity: 'grounding', withinLimits }))),
      ).toEqual(WHOLE);
    },
  );
  test('only what is inoperative can be deferred (91.213(a))', () => {
    const deferrals = [deferralHistory(at('02T12:00'))];
    expect(spans(heldByWriteUp(writeUp({ kind: 'inoperative' }, { deferrals })))).toEqual([
      ['2026-11-02T10:00', '2026-11-02T12:00'],
    ]);
    expect(spans(heldByWriteUp(writeUp({ kind: 'leak' }, { deferrals })))).toEqual(WHOLE);
  });
});

describe('a deferral counts until it ended or lapsed, whichever comes first', () => {
  const held = (rest: Parameters<typeof deferralHistory>[1]) =>
    spans(heldByWriteUp(writeUp({}, { deferrals: [deferralHistory(at('02T10:00'), rest)] }))).map(
      ([from]) => from,
    );
  test.each([
    [null, null, []],
    [at('02T18:00'), null, ['2026-11-02T18:00']],
    [null, at('02T20:00'), ['2026-11-02T20:00']],
    [at('02T18:00'), at('02T20:00'), ['2026-11-02T18:00']],
    [at('02T20:00'), at('02T18:00'), ['2026-11-02T18:00']],
  ])('ended %s, lapses %s', (endedAt, lapsesAt, expected) => {
    expect(held({ endedAt, lapsesAt })).toEqual(expected);
  });
  test('one whose steps were never done counts for nothing', () => {
    expect(held({ effectiveAt: null })).toEqual(['2026-11-02T10:00']);
  });
});

describe('a requirement', () => {
  const held = (with_: Partial<RequirementHistory>, knownFrom: string | null = '2020-01-01T00:00:00Z') =>
    spans(heldByRequirement(annualHistory(with_), aircraftHistory({ knownFrom })));
  const done = (on: string, authorised = true, newExpiry: string | null = null) => ({
    on,
    countsFrom: `${on}T17:00:00Z`,
    authorised,
    newExpiry,
  });
  // An annual of 15 June 2025 is good through 30 June 2026 (91.409(a)); midnight at the base is 05:00 in UTC in summer.
  const OVER = ['2026-07-01T05:00', 'Infinity'];

  test('that ran out holds from midnight after its last day', () => {
    expect(held({})).toEqual([OVER]);
  });
  test('never recorded: since it is asked for, else since the aircraft is known, else nothing is said', () => {
    expect(held({ done: [] })).toEqual([['2020-01-01T00:00', 'Infinity']]);
    expect(held({ done: [] }, null)).toEqual([]);
    expect(held({ done: [], addedAt: '2026-02-01T00:00:00Z' })).toEqual([['2026-02-01T00:00', 'Infinity']]);
    expect(held({ done: [], addedAt: '2026-02-01T00:00:00Z' }, null)).toEqual([
      ['2026-02-01T00:00', 'Infinity'],
    ]);
  });
  test('asked for before it was first done: held until then; older than the question: not', () => {
    expect(held({ addedAt: '2025-06-01T00:00:00Z' })).toEqual([
      ['2025-06-01T00:00', '2025-06-15T17:00'],
      OVER,
    ]);
    expect(held({ addedAt: null })).toEqual([OVER]);
  });
  test('done again in time holds never, done again late until that moment', () => {
    expect(held({ done: [done('2025-06-15'), done('2026-06-30')] })).toEqual([
      ['2027-07-01T05:00', 'Infinity'],
    ]);
    expect(held({ done: [done('2025-06-15'), done('2026-07-03')] })).toEqual([
      ['2026-07-01T05:00', '2026-07-03T17:00'],
      ['2027-08-01T05:00', 'Infinity'],
    ]);
  });
  test('approved by somebody who could not holds at once', () => {
    expect(held({ done: [done('2025-06-15'), done('2026-06-20', false)] })).toEqual([
      ['2026-06-20T17:00', 'Infinity'],
    ]);
  });
  test('ended: no more from the start of that day at the base', () => {
    expect(held({ endedOn: '2026-07-03' })).toEqual([['2026-07-01T05:00', '2026-07-03T05:00']]);
    expect(held({ endedOn: '2026-07-01' })).toEqual([]);
  });
  test('done once for good, and by hours alone: never over by the calendar', () => {
    expect(held({ kind: 'directive', intervalMonths: null })).toEqual([]);
    expect(held({ kind: 'directive', intervalMonths: null, intervalTenths: 1 })).toEqual([]);
    expect(held({ kind: 'directive', intervalMonths: null, intervalTenths: 1, done: [] })).toHaveLength(1);
  });
  test('a date on the part: the new one after a compliance that names one, else the one it had', () => {
    const part = { kind: 'life-limit', intervalMonths: null, fixedExpiry: '2026-07-01' } as const;
    expect(held({ ...part, done: [done('2026-06-01')] })).toEqual([['2026-07-02T05:00', 'Infinity']]);
    expect(held({ ...part, done: [done('2026-06-01', true, '2026-08-01')] })).toEqual([
      ['2026-08-02T05:00', 'Infinity'],
    ]);
  });
});
