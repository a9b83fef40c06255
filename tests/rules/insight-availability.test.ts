/**
 * Availability and what held an aircraft. No outside source defines it: the definition is our own and stands in
 * AVAILABILITY_DEFINITION; what grounds is 91.7(a), 91.213(a), 91.405(a) and (c), 91.407(a)(1), 91.409(a). Sums by hand.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { availabilityFigure, availabilityOf } from '@/lib/rules/insight/availability';
import { heldByRequirement, heldByWriteUp } from '@/lib/rules/insight/held';
import type { Judged, WriteUpHistory } from '@/lib/rules/insight/history';
import { minuteOf, minutesIn, union, without } from '@/lib/rules/insight/spans';
import { aircraftHistory, annualHistory, deferralHistory, writeUpHistory } from '../fixtures/histories';

/** 1 to 10 November 2026 at the base, ten days of 24 hours but for the first, on which clocks go back: 25 hours. */
const NOVEMBER = { from: '2026-11-01T05:00:00Z', until: '2026-11-11T06:00:00Z' };
const NOVEMBER_MINUTES = 9 * 1440 + 1500;

const at = (text: string) => `2026-11-${text}:00Z`;
const held = (writeUp: WriteUpHistory) =>
  heldByWriteUp(writeUp).map(({ from, until }) => [toText(from), toText(until)]);
const toText = (minute: number) =>
  minute === Infinity ? 'open' : new Date(minute * 60_000).toISOString().slice(8, 16);

const judged = (when: string, rest: Partial<Judged>): Judged => ({
  at: when,
  by: 'person',
  kind: 'inoperative',
  severity: 'limiting',
  withinLimits: false,
  ...rest,
});
const opening = (when: string, rest: Partial<Judged> = {}): Judged => ({
  ...judged(when, rest),
  by: 'opening',
});

describe('spans', () => {
  test('a minute belongs to the span that begins with it, not to the one that ends with it', () => {
    expect(minuteOf('1970-01-01T00:01:00Z')).toBe(1);
    expect(minuteOf('1970-01-01T00:01:59.999Z')).toBe(1);
    expect(union([{ from: 5, until: 5 }])).toEqual([]);
  });

  test.each([
    { second: { from: 19, until: 30 }, minutes: 20 },
    { second: { from: 20, until: 30 }, minutes: 20 },
    { second: { from: 21, until: 30 }, minutes: 19 },
  ])('10 to 20 and $second.from to 30 are $minutes minutes', ({ second, minutes }) => {
    expect(minutesIn([{ from: 10, until: 20 }, second])).toBe(minutes);
  });

  test('without leaves what lies between, before and after', () => {
    expect(
      without({ from: 0, until: 100 }, [
        { from: 40, until: 60 },
        { from: 10, until: 20 },
      ]),
    ).toEqual([
      { from: 0, until: 10 },
      { from: 20, until: 40 },
      { from: 60, until: 100 },
    ]);
    expect(without({ from: 0, until: 10 }, [{ from: -5, until: 99 }])).toEqual([]);
  });
});

describe('what a write-up held', () => {
  test('inoperative and not deferred: from the opening until closed (91.213(a))', () => {
    expect(held(writeUpHistory(at('02T10:00'), at('03T12:30')))).toEqual([['02T10:00', '03T12:30']]);
    expect(held(writeUpHistory(at('02T10:00')))).toEqual([['02T10:00', 'open']]);
  });

  test('deferred: until the last step, not until the deferral was begun (91.213(d)(3))', () => {
    const deferred = (effectiveAt: string | null) =>
      writeUpHistory(at('02T10:00'), null, { deferrals: [deferralHistory(at('02T11:00'), { effectiveAt })] });
    expect(held(deferred(at('02T11:50')))).toEqual([['02T10:00', '02T11:50']]);
    expect(held(deferred(null))).toEqual([['02T10:00', 'open']]);
  });

  test('a deferral that lapsed holds again, one that ended with the repair does not', () => {
    const deferral = (rest: object) =>
      writeUpHistory(at('02T10:00'), at('09T10:00'), {
        deferrals: [deferralHistory(at('02T11:00'), { endedAt: at('09T10:00'), ...rest })],
      });
    expect(held(deferral({}))).toEqual([['02T10:00', '02T11:00']]);
    expect(held(deferral({ lapsesAt: at('06T06:00') }))).toEqual([
      ['02T10:00', '02T11:00'],
      ['06T06:00', '09T10:00'],
    ]);
    // 91.405(c): an inspection passed without a word on it, said a day later.
    expect(held(deferral({ unspoken: [{ from: at('04T10:00'), until: at('05T10:00') }] }))).toEqual([
      ['02T10:00', '02T11:00'],
      ['04T10:00', '05T10:00'],
    ]);
  });

  test('undecided and grounding hold even what is deferred (91.7(a))', () => {
    for (const severity of [null, 'grounding'] as const) {
      const writeUp = writeUpHistory(at('02T10:00'), null, {
        judged: [opening(at('02T10:00'), { severity })],
        deferrals: [deferralHistory(at('02T10:30'))],
      });
      expect(held(writeUp)).toEqual([['02T10:00', 'open']]);
    }
  });

  test('damage holds until found within limits, and again once judged anew (91.405(a))', () => {
    const writeUp = writeUpHistory(at('02T10:00'), at('05T10:00'), {
      judged: [
        opening(at('02T10:00'), { kind: 'damage', severity: null }),
        judged(at('02T15:00'), { kind: 'damage', severity: 'watch', withinLimits: true }),
        judged(at('04T08:00'), { kind: 'damage', severity: 'grounding' }),
      ],
    });
    expect(held(writeUp)).toEqual([
      ['02T10:00', '02T15:00'],
      ['04T08:00', '05T10:00'],
    ]);
  });

  test('what is cosmetic and noted holds nothing; servicing holds until it is closed', () => {
    const looks = [opening(at('02T10:00'), { kind: 'cosmetic', severity: 'note' })];
    expect(held(writeUpHistory(at('02T10:00'), null, { judged: looks }))).toEqual([]);
    const oil = [opening(at('02T10:00'), { kind: 'servicing', severity: 'limiting' })];
    expect(held(writeUpHistory(at('02T10:00'), at('02T10:15'), { judged: oil }))).toEqual([
      ['02T10:00', '02T10:15'],
    ]);
  });

  test('work begun holds until it is signed, whatever the write-up says (91.407(a)(1))', () => {
    const writeUp = writeUpHistory(at('02T10:00'), at('05T14:00'), {
      deferrals: [deferralHistory(at('02T10:00'), { endedAt: at('05T14:00') })],
      work: [{ from: at('05T12:00'), until: at('05T14:00') }],
    });
    expect(held(writeUp)).toEqual([['05T12:00', '05T14:00']]);
  });
});

describe('an annual that ran out (91.409(a): through the last day of the twelfth month)', () => {
  const overdue = (rest: Parameters<typeof annualHistory>[0] = {}, window = JULY) => {
    const aircraft = aircraftHistory({ requirements: [annualHistory(rest)] });
    return availabilityOf(aircraft, window).heldMinutes;
  };
  const JULY = { from: '2026-06-30T05:00:00Z', until: '2026-07-04T05:00:00Z' };

  test.each([
    // Good through 30 June 2026; midnight at the base is 05:00 in UTC.
    { until: '2026-07-01T04:59:00Z', minutes: 0 },
    { until: '2026-07-01T05:00:00Z', minutes: 0 },
    { until: '2026-07-01T05:01:00Z', minutes: 1 },
  ])('looked at until $until: $minutes minutes over', ({ until, minutes }) => {
    expect(overdue({}, { ...JULY, until })).toBe(minutes);
  });

  test('until the compliance counts; of a day entered later the whole day is held', () => {
    const first = annualHistory().done;
    const done = (countsFrom: string) => ({
      done: [...first, { on: '2026-07-02', countsFrom, authorised: true, newExpiry: null }],
    });
    // 1 July whole, and 2 July until noon: 24 h + 12 h.
    expect(overdue(done('2026-07-02T17:00:00Z'))).toBe(36 * 60);
    expect(overdue(done('2026-07-03T05:00:00Z'))).toBe(48 * 60);
  });

  test('an approval that does not count holds from its moment on; one never recorded since it is asked for', () => {
    const [only] = annualHistory().done;
    expect(overdue({ done: [{ ...only!, authorised: false }] })).toBe(4 * 1440);
    expect(overdue({ done: [] })).toBe(4 * 1440);
    expect(overdue({ done: [], addedAt: '2026-07-03T05:00:00Z' })).toBe(1440);
  });

  test('one that was ended holds no more from that day; hours are not looked at', () => {
    expect(overdue({ done: [], endedOn: '2026-07-02' })).toBe(2 * 1440);
    const byHours = { kind: 'directive' as const, intervalMonths: null, intervalTenths: 100 };
    expect(overdue(byHours)).toBe(0);
  });

  test('a fixed expiry needs no record; a new date on the part moves it', () => {
    const part = { kind: 'life-limit' as const, intervalMonths: null, fixedExpiry: '2026-07-01', done: [] };
    // 2 and 3 July.
    expect(overdue(part)).toBe(2 * 1440);
    const renewed = { on: '2026-07-02', countsFrom: '2026-07-02T17:00:00Z', authorised: true };
    expect(
      overdue({ ...part, done: [{ ...renewed, newExpiry: '2028-07-01' }], addedAt: '2020-01-01T00:00:00Z' }),
    ).toBe(12 * 60);
    expect(
      heldByRequirement(annualHistory({ ...part, fixedExpiry: null, done: [] }), aircraftHistory()).length,
    ).toBe(1);
  });
});

describe('availability', () => {
  test('worked by hand: 30 h of a window of 241 h', () => {
    // The first day has 25 hours: (9 × 24 + 25) h = 241 h = 14460 min.
    expect(NOVEMBER_MINUTES).toBe(14_460);
    const aircraft = aircraftHistory({
      writeUps: [
        // 24 h, and 12 h of which 6 h overlap: 30 h = 1800 min. 12660 / 14460 = 0.87551...
        writeUpHistory(at('02T10:00'), at('03T10:00')),
        writeUpHistory(at('03T04:00'), at('03T16:00')),
      ],
    });
    expect(availabilityOf(aircraft, NOVEMBER)).toEqual({
      aircraftId: 'a1',
      registration: 'N01',
      minutes: 14_460,
      heldMinutes: 1800,
      permille: 875,
      heldBy: { writeUps: 1800, work: 0, requirements: 0 },
      writeUps: 2,
    });
  });

  test('a day of 23 hours held from midnight to midnight is all of it', () => {
    // 8 March 2026: clocks go forward at the base.
    const march = { from: '2026-03-08T06:00:00Z', until: '2026-03-09T05:00:00Z' };
    const aircraft = aircraftHistory({ writeUps: [writeUpHistory(march.from, march.until)] });
    expect(availabilityOf(aircraft, march)).toMatchObject({ minutes: 23 * 60, permille: 0 });
    expect(availabilityOf(aircraftHistory(), march)).toMatchObject({ heldMinutes: 0, permille: 1000 });
  });

  test('one minute held is never rounded up to all of it', () => {
    const aircraft = aircraftHistory({ writeUps: [writeUpHistory(at('02T10:00'), at('02T10:01'))] });
    expect(availabilityOf(aircraft, NOVEMBER).permille).toBe(999);
  });

  test('work on no write-up and requirements are named apart, and overlap once', () => {
    const aircraft = aircraftHistory({
      otherWork: [{ from: at('02T06:00'), until: at('03T06:00') }],
      // Over since midnight that begins 2 November, done at noon of the 3rd: 36 h, of which 24 h under work.
      requirements: [
        annualHistory({
          kind: 'life-limit',
          intervalMonths: null,
          fixedExpiry: '2026-11-01',
          addedAt: '2020-01-01T00:00:00Z',
          done: [{ on: '2026-11-03', countsFrom: at('03T18:00'), authorised: true, newExpiry: '2027-11-01' }],
        }),
      ],
    });
    expect(availabilityOf(aircraft, NOVEMBER)).toMatchObject({
      heldMinutes: 36 * 60,
      heldBy: { writeUps: 0, work: 24 * 60, requirements: 36 * 60 },
    });
  });

  test('counts from the first record and until it left; without a record nothing is said', () => {
    const came = aircraftHistory({ knownFrom: at('09T06:00'), retiredFrom: at('10T06:00') });
    expect(availabilityOf(came, NOVEMBER)).toMatchObject({ minutes: 1440, permille: 1000 });
    const unknown = aircraftHistory({ knownFrom: null });
    expect(availabilityOf(unknown, NOVEMBER)).toMatchObject({ minutes: 0, permille: null });
    const later = aircraftHistory({ knownFrom: at('20T06:00') });
    expect(availabilityOf(later, NOVEMBER)).toMatchObject({ minutes: 0, permille: null });
  });

  test('the fleet: minutes over minutes, in order of registration, with how many it stands on', () => {
    const whole = aircraftHistory({ id: 'b', registration: 'N02' });
    const half = aircraftHistory({
      knownFrom: at('09T06:00'),
      writeUps: [writeUpHistory(at('10T06:00'))],
    });
    const none = aircraftHistory({ id: 'c', registration: 'N00', knownFrom: null });
    const figure = availabilityFigure([whole, half, none], () => NOVEMBER);
    expect(figure.rows.map(({ registration, permille }) => [registration, permille])).toEqual([
      ['N00', null],
      ['N01', 500],
      ['N02', 1000],
    ]);
    // 1440 held of 14460 + 2880 = 17340: 0.91695...
    expect(figure.permille).toBe(916);
    expect(figure.counts).toEqual({ aircraft: 2, writeUps: 1 });
    expect(figure.definition).toContain('Not seen: weather');
  });
});

describe('what must hold for every history', () => {
  const BASE_MINUTE = minuteOf(NOVEMBER.from);
  const instant = fc
    .integer({ min: -3000, max: NOVEMBER_MINUTES + 3000 })
    .map((minute) => new Date((BASE_MINUTE + minute) * 60_000).toISOString());
  const stretch = fc
    .tuple(instant, fc.option(instant))
    .map(([a, b]) => (b === null ? { from: a, until: null } : { from: a < b ? a : b, until: a < b ? b : a }));
  const writeUp: fc.Arbitrary<WriteUpHistory> = fc
    .record({
      open: stretch,
      kind: fc.constantFrom('inoperative', 'damage', 'cosmetic', 'servicing'),
      severity: fc.constantFrom(null, 'grounding', 'limiting', 'watch', 'note'),
      within: fc.boolean(),
      deferral: fc.option(stretch),
      work: fc.array(stretch, { maxLength: 2 }),
    })
    .map(({ open, kind, severity, within, deferral, work }) =>
      writeUpHistory(open.from, open.until, {
        judged: [
          opening(open.from, {
            kind: kind as Judged['kind'],
            severity: severity as Judged['severity'],
            withinLimits: within,
          }),
        ],
        deferrals: deferral ? [deferralHistory(deferral.from, { endedAt: deferral.until })] : [],
        work,
      }),
    );
  const aircraft = fc
    .record({
      writeUps: fc.array(writeUp, { maxLength: 4 }),
      otherWork: fc.array(stretch, { maxLength: 2 }),
      knownFrom: fc.option(instant),
    })
    .map((rest) => aircraftHistory({ ...rest, requirements: [annualHistory()] }));

  test('between 0 and 100 %, and no more held than there is', () => {
    fc.assert(
      fc.property(aircraft, (one) => {
        const { minutes, heldMinutes, permille } = availabilityOf(one, NOVEMBER);
        expect(heldMinutes).toBeGreaterThanOrEqual(0);
        expect(heldMinutes).toBeLessThanOrEqual(minutes);
        if (minutes === 0) expect(permille).toBeNull();
        else expect(permille).toBeGreaterThanOrEqual(0);
        expect(permille ?? 0).toBeLessThanOrEqual(1000);
      }),
    );
  });

  test('one more grounding write-up never raises it', () => {
    fc.assert(
      fc.property(aircraft, stretch, (one, open) => {
        const grounding = writeUpHistory(open.from, open.until, {
          judged: [opening(open.from, { severity: 'grounding' })],
        });
        const more = { ...one, writeUps: [...one.writeUps, grounding] };
        expect(availabilityOf(more, NOVEMBER).heldMinutes).toBeGreaterThanOrEqual(
          availabilityOf(one, NOVEMBER).heldMinutes,
        );
      }),
    );
  });

  test('two windows that meet add up to the whole', () => {
    fc.assert(
      fc.property(aircraft, fc.integer({ min: 1, max: NOVEMBER_MINUTES - 1 }), (one, cut) => {
        const middle = new Date((BASE_MINUTE + cut) * 60_000).toISOString();
        const first = availabilityOf(one, { ...NOVEMBER, until: middle });
        const second = availabilityOf(one, { ...NOVEMBER, from: middle });
        const whole = availabilityOf(one, NOVEMBER);
        expect(first.minutes + second.minutes).toBe(whole.minutes);
        expect(first.heldMinutes + second.heldMinutes).toBe(whole.heldMinutes);
      }),
    );
  });
});
