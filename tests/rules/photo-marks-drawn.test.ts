import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  markOfStroke,
  moved,
  ringAround,
  simplified,
  sized,
  type Point,
} from '../../app/ramp/_parts/mark-lines';
import { outlineOf } from '../../app/_ui/marked-photo';

/** Marks on photos (issue 3, "with a mark drawn on them"). Shapes and borders are our design, no source. */
const point = fc.tuple(fc.integer({ min: -50, max: 1050 }), fc.integer({ min: -50, max: 1050 }));
const isOnPicture = ([x, y]: Point) => [x, y].every((at) => Number.isInteger(at) && at >= 0 && at <= 1000);

describe('a stroke', () => {
  it('becomes a ring around all of it', () => {
    const round: Point[] = [
      [300, 200],
      [420, 310],
      [290, 400],
      [180, 320],
    ];
    expect(markOfStroke('ring', round)).toEqual({
      kind: 'ring',
      points: [
        [180, 200],
        [420, 400],
      ],
    });
  });

  it.each([
    ['19 thousandths: a tap puts a ring of the usual size', 19, [390, 390, 610, 610]],
    ['20 thousandths: a small ring', 20, [500, 500, 520, 500]],
    ['21 thousandths: a small ring', 21, [500, 500, 521, 500]],
  ])('%s', (_, length, corners) => {
    const mark = markOfStroke('ring', [
      [500, 500],
      [500 + length, 500],
    ]);
    expect(mark?.points.flat()).toEqual(corners);
  });

  it('too short for a line draws none', () => {
    expect(
      markOfStroke('line', [
        [500, 500],
        [519, 500],
      ]),
    ).toBeNull();
    expect(
      markOfStroke('line', [
        [500, 500],
        [520, 500],
      ]),
    ).not.toBeNull();
    expect(markOfStroke('line', [])).toBeNull();
  });

  it('never leaves the picture, nor has more than 60 points, however it was drawn', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 400 }),
        fc.constantFrom('ring', 'line'),
        (stroke, kind) => {
          const mark = markOfStroke(kind, stroke);
          if (!mark) return;
          expect(mark.points.length).toBeLessThanOrEqual(kind === 'ring' ? 2 : 60);
          expect(mark.points.length).toBeGreaterThanOrEqual(2);
          expect(mark.points.every(isOnPicture)).toBe(true);
        },
      ),
    );
  });

  it('keeps its ends and its corners when it is made simpler', () => {
    const corner = [
      ...Array.from({ length: 100 }, (_, at): Point => [100 + 5 * at, 100]),
      ...Array.from({ length: 100 }, (_, at): Point => [600, 100 + 5 * at]),
    ];
    expect(simplified(corner)).toEqual([
      [100, 100],
      [600, 100],
      [600, 595],
    ]);
  });
});

describe('a mark moved and sized with keys', () => {
  it('stays on the picture and keeps its size when moved', () => {
    const ring = ringAround([500, 500]);
    expect(moved(ring, -1000, 25).points).toEqual([
      [0, 415],
      [220, 635],
    ]);
  });

  it('is put down whole at the edge', () => {
    expect(ringAround([990, 0]).points).toEqual([
      [780, 0],
      [1000, 220],
    ]);
  });

  it('grows and shrinks around its middle, to no less than 40 thousandths across', () => {
    const ring = ringAround([500, 500]);
    expect(sized(ring, 20).points.flat()).toEqual([370, 370, 630, 630]);
    expect(sized(ring, -500).points.flat()).toEqual([480, 480, 520, 520]);
    expect(sized(ring, 5000).points.flat()).toEqual([0, 0, 1000, 1000]);
  });
});

describe('a mark drawn', () => {
  it('fits the picture at any size', () => {
    const ring = {
      kind: 'ring',
      points: [
        [250, 500],
        [750, 1000],
      ],
    } as const;
    expect(outlineOf(ring, 400, 200)).toBe('M100 150a100 50 0 1 0 200 0a100 50 0 1 0 -200 0');
    const line = {
      kind: 'line',
      points: [
        [0, 0],
        [500, 250],
        [1000, 1000],
      ],
    } as const;
    expect(outlineOf(line, 400, 200)).toBe('M0 0L200 50L400 200');
  });

  it('draws nothing out of one point', () => {
    expect(outlineOf({ kind: 'ring', points: [[1, 1]] }, 10, 10)).toBe('');
  });
});
