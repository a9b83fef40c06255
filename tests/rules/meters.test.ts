import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LAW } from '@/lib/rules/law';
import {
  hoursBetween,
  judgeReading,
  mostTenths,
  neighbours,
  timeInService,
  type LastOnRecord,
  type MeterReading,
  type ReadingContext,
  type ReadingField,
  type TtisMeter,
  type TypedReading,
} from '@/lib/rules/meters';

/**
 * Sources: issue 3, "sanity checks (never backwards, not more than the clock allows), and feed hours and inspections". The
 * figures of the checks (a tenth between marks, ten per cent for the tachometer, five minutes for a phone's clock) are our
 * own design. 14 CFR 1.1 for time in service; that meters stand in for it is common practice, no source.
 */

/** A mistyped reading must not stand in the way for ever. */
const DESK = 'If that is mistyped, the desk can correct it.';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DEPARTED = Date.parse('2026-11-25T16:00:00Z');
const iso = (ms: number) => new Date(ms).toISOString();

const before: LastOnRecord & MeterReading = { hobbsTenths: 21234, tachTenths: 19876, at: iso(DEPARTED) };
const alone: ReadingContext = {
  moment: 'out',
  now: iso(DEPARTED + 100 * HOUR),
  departure: null,
  back: null,
  next: null,
};
const afterFlight: ReadingContext = { ...alone, moment: 'in', departure: before };

/** A reading so many tenths above the one before, so many milliseconds after it. */
const later = (elapsedMs: number, hobbs: number, tach: number): MeterReading => ({
  hobbsTenths: before.hobbsTenths + hobbs,
  tachTenths: before.tachTenths + tach,
  at: iso(DEPARTED + elapsedMs),
});

const refusedAt = (
  reading: TypedReading,
  last: LastOnRecord | null,
  context: ReadingContext,
): ReadingField[] => judgeReading(reading, last, context).refusals.map(({ field }) => field);

describe('never backwards (issue 3)', () => {
  test.each<[string, number, number, ReadingField[]]>([
    ['Hobbs a tenth under', -1, 0, ['hobbsTenths']],
    ['both as they were', 0, 0, []],
    ['Hobbs a tenth over', 1, 0, []],
    ['Tach a tenth under', 0, -1, ['tachTenths']],
    ['Tach a tenth over', 0, 1, []],
    ['both under: each is told', -1, -1, ['hobbsTenths', 'tachTenths']],
    ['one under does not hide behind the other over', 5, -1, ['tachTenths']],
  ])('%s', (_, hobbs, tach, fields) => {
    expect(refusedAt(later(HOUR, hobbs, tach), before, alone)).toEqual(fields);
  });

  test('a return is held against its departure in words', () => {
    const { refusals } = judgeReading(later(HOUR, -1, 0), before, afterFlight);
    expect(refusals).toEqual([
      {
        field: 'hobbsTenths',
        because: `Hobbs cannot run back: at departure it was 2123.4 h. ${DESK}`,
      },
    ]);
  });

  test('a late reading may not stand above one that was taken after it: just under, on, just over', () => {
    const next = later(3 * HOUR, 20, 20);
    const context = { ...alone, next };
    expect(refusedAt(later(2 * HOUR, 19, 19), before, context)).toEqual([]);
    expect(refusedAt(later(2 * HOUR, 20, 20), before, context)).toEqual([]);
    expect(refusedAt(later(2 * HOUR, 21, 20), before, context)).toEqual(['hobbsTenths']);
    expect(refusedAt(later(2 * HOUR, 20, 21), before, context)).toEqual(['tachTenths']);
  });
});

describe('not more than the clock allows (issue 3; the allowance is our design)', () => {
  test.each<[string, number, number, ReadingField[]]>([
    // One hour is ten tenths, one more for reading between marks.
    ['an hour, 1.0 h', HOUR, 10, []],
    ['an hour, 1.1 h', HOUR, 11, []],
    ['an hour, 1.2 h', HOUR, 12, ['hobbsTenths']],
    // Rounded up to a tenth: a millisecond over the hour opens the next tenth.
    ['a millisecond over the hour, 1.2 h', HOUR + 1, 12, []],
    ['a millisecond over the hour, 1.3 h', HOUR + 1, 13, ['hobbsTenths']],
    ['a millisecond short of the hour, 1.1 h', HOUR - 1, 11, []],
    // 54 minutes are nine tenths.
    ['54 minutes, 1.0 h', 54 * MINUTE, 10, []],
    ['54 minutes, 1.1 h', 54 * MINUTE, 11, ['hobbsTenths']],
    // No time at all: only what lies between two marks.
    ['the same instant, 0.1 h', 0, 1, []],
    ['the same instant, 0.2 h', 0, 2, ['hobbsTenths']],
  ])('Hobbs: %s', (_, elapsed, hobbs, fields) => {
    expect(refusedAt(later(elapsed, hobbs, 0), before, afterFlight)).toEqual(fields);
  });

  test.each<[string, number, number, ReadingField[]]>([
    // Ten hours and ten per cent are eleven hours; one tenth more between marks. Common practice, no source: the recorder
    // counts turns and keeps step with the clock only at its rated speed.
    ['ten hours, 11.0 h', 10 * HOUR, 110, []],
    ['ten hours, 11.1 h', 10 * HOUR, 111, []],
    ['ten hours, 11.2 h', 10 * HOUR, 112, ['tachTenths']],
    // One hour and ten per cent are 66 minutes, eleven tenths exactly: no floating point may make twelve of it.
    ['an hour, 1.2 h', HOUR, 12, []],
    ['an hour, 1.3 h', HOUR, 13, ['tachTenths']],
  ])('Tach: %s', (_, elapsed, tach, fields) => {
    expect(refusedAt(later(elapsed, 0, tach), before, afterFlight)).toEqual(fields);
  });

  test('the refusal says what it would have run and what the clock allows', () => {
    expect(judgeReading(later(HOUR, 12, 0), before, afterFlight).refusals[0]?.because).toBe(
      `Hobbs would have run 1.2 h since the reading before it, 2123.4 h. The clock allows 1.1 h. ${DESK}`,
    );
  });

  test('a late reading leaves the clock room up to the next one: just under, on, just over', () => {
    // One hour before the next reading, which stands 2.0 h above the one before: at most 1.1 h may still have to run.
    const context = { ...alone, next: later(20 * HOUR, 20, 20) };
    expect(refusedAt(later(19 * HOUR, 10, 20), before, context)).toEqual([]);
    expect(refusedAt(later(19 * HOUR, 9, 20), before, context)).toEqual([]);
    expect(refusedAt(later(19 * HOUR, 8, 20), before, context)).toEqual(['hobbsTenths']);
    expect(refusedAt(later(19 * HOUR, 20, 8), before, context)).toEqual([]);
    expect(refusedAt(later(19 * HOUR, 20, 7), before, context)).toEqual(['tachTenths']);
  });

  test('figures of which nobody knows when they were read set no clock, but a floor', () => {
    const undated = { ...before, at: null };
    expect(refusedAt(later(0, 9000, 9000), undated, alone)).toEqual([]);
    expect(refusedAt(later(0, -1, 0), undated, alone)).toEqual(['hobbsTenths']);
  });

  test('in milliseconds from none to a month the allowance never falls (our design)', () => {
    const ms = fc.integer({ min: 0, max: 31 * 24 * HOUR });
    fc.assert(
      fc.property(ms, ms, (a, b) => {
        const [short, long] = a < b ? [a, b] : [b, a];
        expect(mostTenths('hobbsTenths', short)).toBeLessThanOrEqual(mostTenths('hobbsTenths', long));
        expect(mostTenths('hobbsTenths', short)).toBeLessThanOrEqual(mostTenths('tachTenths', short));
      }),
    );
  });
});

describe('the time of reading', () => {
  const good = later(HOUR, 5, 5);
  test.each<[string, Partial<ReadingContext>, ReadingField[]]>([
    // Five minutes for a phone whose clock runs ahead: our design.
    ['4:59.999 ahead of our clock', { now: iso(DEPARTED + HOUR - 5 * MINUTE + 1) }, []],
    ['5:00 ahead', { now: iso(DEPARTED + HOUR - 5 * MINUTE) }, []],
    ['5:00.001 ahead', { now: iso(DEPARTED + HOUR - 5 * MINUTE - 1) }, ['readAt']],
    ['a return after its departure', { moment: 'in', departure: later(HOUR - 1, 5, 5) }, []],
    ['a return at its departure', { moment: 'in', departure: later(HOUR, 5, 5) }, []],
    ['a return before its departure', { moment: 'in', departure: later(HOUR + 1, 5, 5) }, ['readAt']],
    ['a departure before its return', { back: later(HOUR + 1, 5, 5) }, []],
    ['a departure at its return', { back: later(HOUR, 5, 5) }, []],
    ['a departure after its return', { back: later(HOUR - 1, 5, 5) }, ['readAt']],
  ])('%s', (_, context, fields) => {
    expect(refusedAt(good, before, { ...alone, ...context })).toEqual(fields);
  });

  test('neighbours in the wrong order are refused at the time: just under, on, just over', () => {
    const at = (ms: number) => later(ms, 0, 0);
    expect(refusedAt(at(-1), before, alone)).toEqual(['readAt']);
    expect(refusedAt(at(0), before, alone)).toEqual([]);
    expect(refusedAt(at(1), before, alone)).toEqual([]);
    const next = at(HOUR);
    expect(refusedAt(at(HOUR - 1), before, { ...alone, next })).toEqual([]);
    expect(refusedAt(at(HOUR), before, { ...alone, next })).toEqual([]);
    expect(refusedAt(at(HOUR + 1), before, { ...alone, next })).toEqual(['readAt']);
  });

  test('what is no time is asked for again', () => {
    expect(refusedAt({ ...good, at: 'yesterday, about five' }, before, alone)).toEqual(['readAt']);
  });

  test('a meter that is not typed yet is not judged', () => {
    expect(refusedAt({ ...later(HOUR, 0, -1), hobbsTenths: null }, before, alone)).toEqual(['tachTenths']);
    expect(judgeReading({ hobbsTenths: null, tachTenths: null, at: iso(DEPARTED) }, null, alone)).toEqual({
      refusals: [],
      notes: [],
    });
  });
});

describe('what is told of a reading that is taken', () => {
  const kinds = (reading: MeterReading, last: LastOnRecord | null, context: ReadingContext) =>
    judgeReading(reading, last, context).notes.map(({ kind, field }) => `${kind} ${field ?? ''}`.trim());

  test('a departure above the last reading is a gap with its size: none, a tenth', () => {
    expect(kinds(later(HOUR, 0, 0), before, alone)).toEqual([]);
    expect(kinds(later(HOUR, 1, 0), before, alone)).toEqual(['gap hobbsTenths']);
    expect(judgeReading(later(2 * HOUR, 0, 14), before, alone).notes[0]?.because).toBe(
      'Tach stands 1.4 h above the last reading: hours that nobody wrote down. They count.',
    );
  });

  test('hours of the flight itself are no gap', () => {
    expect(kinds(later(HOUR, 9, 8), before, afterFlight)).toEqual([]);
  });

  test('a return without departure says what stands for it', () => {
    const { notes } = judgeReading(later(HOUR, 9, 8), before, { ...afterFlight, departure: null });
    expect(notes.map(({ because }) => because)).toEqual([
      'Nobody read the meters at departure. The last reading stands for it: Hobbs 2123.4 h, Tach 1987.6 h.',
    ]);
  });

  test('a first reading is taken as it is, each meter for itself', () => {
    expect(kinds(later(0, 0, 0), null, alone)).toEqual(['first hobbsTenths', 'first tachTenths']);
    expect(kinds(later(HOUR, 0, 0), { ...before, hobbsTenths: null }, alone)).toEqual(['first hobbsTenths']);
  });

  test('a late reading says by which the hours go', () => {
    expect(kinds(later(HOUR, 0, 0), before, { ...alone, next: later(2 * HOUR, 3, 3) })).toEqual(['late']);
  });
});

describe('time in service (14 CFR 1.1)', () => {
  const total = (meter: TtisMeter, last: LastOnRecord | null, moment: 'out' | 'in' = 'in') =>
    timeInService(40000, last, later(2 * HOUR, 12, 9), meter, moment);

  test('by the meter of the aircraft', () => {
    expect(total('hobbs', before)).toEqual({ ttisTenths: 40012, note: null });
    expect(total('tach', before)).toEqual({ ttisTenths: 40009, note: null });
  });

  test('nobody said which: the larger gain, and it is said with its paragraph', () => {
    const { ttisTenths, note } = total(null, before);
    expect(ttisTenths).toBe(40012);
    expect(note?.because).toContain('Strict reading: the larger gain counts, 1.2 h.');
    expect(note?.cite && note.cite in LAW).toBe(true);
    expect(timeInService(40000, before, later(HOUR, 9, 9), null, 'in')).toEqual({
      ttisTenths: 40009,
      note: null,
    });
  });

  test('unknown stays unknown', () => {
    expect(timeInService(null, before, later(HOUR, 9, 9), 'hobbs', 'in').ttisTenths).toBeNull();
  });

  test('an earlier figure that is missing: a departure begins anew, after a flight the total is not known', () => {
    expect(total('hobbs', null, 'out')).toEqual({ ttisTenths: 40000, note: null });
    expect(total('hobbs', null, 'in').ttisTenths).toBeNull();
    expect(total('hobbs', null, 'in').note?.kind).toBe('time-not-known');
    // The other meter's gap is not asked for.
    expect(total('hobbs', { ...before, tachTenths: null }).ttisTenths).toBe(40012);
    expect(total('tach', { ...before, tachTenths: null }).ttisTenths).toBeNull();
    // Without a meter named, both have to be known to tell the larger.
    expect(total(null, { ...before, tachTenths: null }).ttisTenths).toBeNull();
    expect(total(null, { ...before, tachTenths: null }, 'out').ttisTenths).toBe(40012);
  });
});

test('neighbours by time, not by arrival: one of the same instant is before', () => {
  const at = (ms: number) => later(ms, 0, 0);
  const [first, second, third] = [at(0), at(HOUR), at(2 * HOUR)] as const;
  const readings = [third, first, second];
  expect(neighbours(readings, iso(DEPARTED - 1))).toEqual({ before: null, next: first });
  expect(neighbours(readings, iso(DEPARTED + HOUR - 1))).toEqual({ before: first, next: second });
  expect(neighbours(readings, iso(DEPARTED + HOUR))).toEqual({ before: second, next: third });
  expect(neighbours(readings, iso(DEPARTED + 3 * HOUR))).toEqual({ before: third, next: null });
});

test('hours never fall, and the gains add up to last minus first (issue 3: they feed hours and inspections)', () => {
  const step = fc.record({
    elapsed: fc.integer({ min: 0, max: 50 * HOUR }),
    hobbs: fc.integer({ min: -20, max: 520 }),
    tach: fc.integer({ min: -20, max: 560 }),
  });
  const meters = fc.constantFrom<TtisMeter>('hobbs', 'tach', null);
  let taken = 0;
  fc.assert(
    fc.property(fc.array(step, { maxLength: 30 }), meters, (steps, meter) => {
      let last: MeterReading = before;
      let ttis = 40000;
      const gains = { hobbs: 0, tach: 0, ttis: 0 };
      for (const { elapsed, hobbs, tach } of steps) {
        const reading = {
          hobbsTenths: last.hobbsTenths + hobbs,
          tachTenths: last.tachTenths + tach,
          at: iso(Date.parse(last.at) + elapsed),
        };
        const context = { ...alone, now: reading.at };
        if (judgeReading(reading, last, context).refusals.length > 0) continue;
        const { ttisTenths } = timeInService(ttis, last, reading, meter, 'out');
        if (ttisTenths === null) throw new Error('all was known');
        expect(reading.hobbsTenths).toBeGreaterThanOrEqual(last.hobbsTenths);
        expect(reading.tachTenths).toBeGreaterThanOrEqual(last.tachTenths);
        expect(ttisTenths).toBeGreaterThanOrEqual(ttis);
        const ran = hoursBetween(last, reading);
        gains.hobbs += ran.hobbsTenths ?? Number.NaN;
        gains.tach += ran.tachTenths ?? Number.NaN;
        gains.ttis += ttisTenths - ttis;
        [last, ttis] = [reading, ttisTenths];
        taken += 1;
      }
      expect(gains.hobbs).toBe(last.hobbsTenths - before.hobbsTenths);
      expect(gains.tach).toBe(last.tachTenths - before.tachTenths);
      expect(gains.ttis).toBe(ttis - 40000);
      if (meter === 'hobbs') expect(gains.ttis).toBe(gains.hobbs);
      if (meter === 'tach') expect(gains.ttis).toBe(gains.tach);
      if (meter === null) expect(gains.ttis).toBeGreaterThanOrEqual(Math.max(gains.hobbs, gains.tach));
    }),
  );
  expect(taken).toBeGreaterThan(50);
});
