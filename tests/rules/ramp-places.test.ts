import { describe, expect, it } from 'vitest';
import {
  isDrawn,
  markedPlaces,
  placeInWords,
  worstOf,
  type MarkedWriteUp,
} from '@/app/ramp/out/drawing/marked';
import { DRAWING, NARROWEST, placeOf, PLACES, TARGET } from '@/app/ramp/out/drawing/places';
import { AREA_KEYS } from '@/lib/rules/walkaround/areas';
import { inEnglish } from '@/lib/words/translate';

/** The drawing's places. Targets of 44 px: issue 3 (WCAG 2.2, 2.5.8 asks for less). The places are our own design. */
const PAIRS = AREA_KEYS.flatMap((one, index) =>
  AREA_KEYS.slice(index + 1).map((other) => [one, other] as const),
);

describe('places on the drawing', () => {
  it('every area has one, and there are 24', () => {
    expect(Object.keys(PLACES).toSorted()).toEqual([...AREA_KEYS].toSorted());
    expect(AREA_KEYS).toHaveLength(24);
    expect(PAIRS).toHaveLength(276);
  });

  // 390 px less the margins; 360 px less the margins; the widest the drawing gets (30rem).
  it.each([358, NARROWEST, 480])(
    'targets of 44 px neither overlap nor leave the drawing at %i px',
    (width) => {
      const scale = width / DRAWING.width;
      const at = (area: (typeof AREA_KEYS)[number]) => ({
        x: PLACES[area].x * scale,
        y: PLACES[area].y * scale,
      });
      const overlapping = PAIRS.filter(([one, other]) => {
        const [a, b] = [at(one), at(other)];
        return Math.abs(a.x - b.x) < TARGET && Math.abs(a.y - b.y) < TARGET;
      });
      expect(overlapping).toEqual([]);
      const outside = AREA_KEYS.filter((area) => {
        const { x, y } = at(area);
        const half = TARGET / 2;
        return x < half || y < half || x > width - half || y > DRAWING.height * scale - half;
      });
      expect(outside).toEqual([]);
    },
  );

  it('left is left and right is right, seen from above with the nose up', () => {
    for (const area of AREA_KEYS) {
      const { x } = PLACES[area];
      if (area.startsWith('left')) expect(x, area).toBeLessThan(DRAWING.width / 2);
      if (area.startsWith('right')) expect(x, area).toBeGreaterThan(DRAWING.width / 2);
    }
    expect(PLACES.propeller.y).toBeLessThan(PLACES.cabin.y);
    expect(PLACES.cabin.y).toBeLessThan(PLACES.tail.y);
  });

  it('a station of an older list has no place and is not drawn', () => {
    expect(placeOf('right-strut')).toBeNull();
    expect(placeOf('toString')).toBeNull();
    expect(placeOf('tail')).toEqual(PLACES.tail);
  });
});

const writeUp = (station: string, change: Partial<MarkedWriteUp> = {}): MarkedWriteUp => ({
  id: station,
  number: 'W-0001',
  title: 'Dent',
  station,
  place: '',
  state: 'open',
  severity: 'watch',
  ...change,
});

const STATIONS = [
  { area: 'cabin', title: 'Cabin' },
  { area: 'tail', title: 'Tail' },
];

describe('what is marked (issue 3: open write-ups and deferrals where they sit)', () => {
  it('stations in walking order first, then whatever else is written up; nothing is left out', () => {
    const places = markedPlaces(inEnglish, STATIONS, [
      writeUp('right-strut'),
      writeUp('tail'),
      writeUp('belly'),
    ]);
    expect(places.map(({ area, order, writeUps }) => [area, order, writeUps.length])).toEqual([
      ['cabin', 1, 0],
      ['tail', 2, 1],
      ['right-strut', null, 1],
      ['belly', null, 1],
    ]);
    expect(places.filter((place) => !isDrawn(place)).map(({ area }) => area)).toEqual(['right-strut']);
  });

  it('what is closed is not marked', () => {
    expect(markedPlaces(inEnglish, STATIONS, [writeUp('tail', { state: 'closed' })])[1]?.writeUps).toEqual(
      [],
    );
  });

  it.each([
    ['nothing', [], null],
    ['deferred', [writeUp('tail', { state: 'deferred', severity: 'limiting' })], 'deferred'],
    ['open and watched', [writeUp('tail', { state: 'deferred' }), writeUp('tail')], 'open'],
    ['open and grounding', [writeUp('tail'), writeUp('tail', { severity: 'grounding' })], 'grounds'],
    ['undecided grounds', [writeUp('tail', { severity: null })], 'grounds'],
    ['deferred, once grounding', [writeUp('tail', { state: 'deferred', severity: 'grounding' })], 'deferred'],
  ])('the worst of a place: %s', (_, writeUps, worst) => {
    expect(worstOf(writeUps)).toBe(worst);
  });

  it('a button is called by its number, its place and how things stand', () => {
    const place = { area: 'tail', title: 'Tail', order: 3, writeUps: [writeUp('tail')] };
    expect(placeInWords(inEnglish, place, 'not-looked-at')).toBe(
      '3, Tail: 1 write-up open, not looked at yet',
    );
    expect(placeInWords(inEnglish, { ...place, writeUps: [] }, null)).toBe('3, Tail: nothing written up');
    expect(placeInWords(inEnglish, { ...place, writeUps: [] }, 'good')).toBe('3, Tail: good');
    const deferred = [writeUp('tail', { state: 'deferred' }), writeUp('tail', { state: 'deferred' })];
    expect(placeInWords(inEnglish, { ...place, order: null, writeUps: deferred }, null)).toBe(
      'Tail: 2 write-ups deferred',
    );
  });
});
