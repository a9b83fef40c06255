import { type PhotoMark } from '../_phone/shapes';

/** From what a finger or a key does to a mark on a photo. Pure; points are thousandths of the picture's sides. */
export type Point = readonly [x: number, y: number];

/** The server takes as many; more hide what they point at. */
export const MARKS_PER_PHOTO = 12;
const MOST_POINTS = 60;

/** A stroke shorter than this is a tap. */
const TAP = 20;
/** Half the size of a ring that was put down with a tap or a key; and the bounds for sizing one. */
const HALF_RING = 110;
const LEAST_HALF = 20;
const MOST_HALF = 500;

/** The mark a stroke makes: around it for a ring, along it for a line. Null for a line too short to be seen. */
export function markOfStroke(kind: PhotoMark['kind'], stroke: readonly Point[]): PhotoMark | null {
  const points = stroke.map(onPicture);
  const [first] = points;
  if (!first) return null;
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const corner: Point = [Math.min(...xs), Math.min(...ys)];
  const opposite: Point = [Math.max(...xs), Math.max(...ys)];
  const isTap = opposite[0] - corner[0] < TAP && opposite[1] - corner[1] < TAP;
  if (kind === 'line') return isTap ? null : { kind, points: simplified(points) };
  return isTap ? ringAround(first) : { kind, points: [corner, opposite] };
}

/** A ring of the usual size, moved so that it lies on the picture. */
export function ringAround([x, y]: Point): PhotoMark {
  const centre = (at: number) => Math.min(1000 - HALF_RING, Math.max(HALF_RING, Math.round(at)));
  return {
    kind: 'ring',
    points: [
      [centre(x) - HALF_RING, centre(y) - HALF_RING],
      [centre(x) + HALF_RING, centre(y) + HALF_RING],
    ],
  };
}

/** The mark shifted, but never off the picture. */
export function moved(mark: PhotoMark, dx: number, dy: number): PhotoMark {
  const room = (at: readonly number[], by: number) =>
    Math.min(1000 - Math.max(...at), Math.max(-Math.min(...at), by));
  const right = room(
    mark.points.map(([x]) => x),
    dx,
  );
  const down = room(
    mark.points.map(([, y]) => y),
    dy,
  );
  return { kind: mark.kind, points: mark.points.map(([x, y]) => [x + right, y + down] as const) };
}

/** A ring made larger or smaller around its middle by `by` on each side. Lines keep their size. */
export function sized(mark: PhotoMark, by: number): PhotoMark {
  const [corner, opposite] = mark.points;
  if (mark.kind !== 'ring' || !corner || !opposite) return mark;
  const side = (one: number, other: number): readonly [number, number] => {
    const middle = (one + other) / 2;
    const half = Math.min(MOST_HALF, Math.max(LEAST_HALF, Math.abs(other - one) / 2 + by));
    return [Math.max(0, Math.round(middle - half)), Math.min(1000, Math.round(middle + half))];
  };
  const [left, right] = side(corner[0], opposite[0]);
  const [top, bottom] = side(corner[1], opposite[1]);
  return {
    kind: 'ring',
    points: [
      [left, top],
      [right, bottom],
    ],
  };
}

const onPicture = ([x, y]: Point): Point => [within(x), within(y)];
const within = (at: number): number => Math.min(1000, Math.max(0, Math.round(at)));

/** The line with at most 60 points that strays least from the stroke: points that turn little are left out. */
export function simplified(stroke: readonly Point[]): readonly Point[] {
  let kept = stroke;
  for (let stray = 2; kept.length > MOST_POINTS || stray === 2; stray *= 1.5) kept = turning(stroke, stray);
  return kept;
}

/** Points that lie further than `stray` from the line without them (Ramer 1972, Douglas and Peucker 1973). */
function turning(stroke: readonly Point[], stray: number): readonly Point[] {
  const first = stroke[0];
  const last = stroke.at(-1);
  if (!first || !last || stroke.length < 3) return stroke;
  let furthest = 0;
  let at = 0;
  for (let index = 1; index < stroke.length - 1; index += 1) {
    const distance = fromLine(stroke[index] ?? first, first, last);
    if (distance > furthest) [furthest, at] = [distance, index];
  }
  if (furthest <= stray) return [first, last];
  return [...turning(stroke.slice(0, at + 1), stray), ...turning(stroke.slice(at), stray).slice(1)];
}

/** How far a point lies from the stretch between two others. */
function fromLine([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return Math.hypot(x - ax, y - ay);
  const along = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length ** 2));
  return Math.hypot(x - ax - along * (bx - ax), y - ay - along * (by - ay));
}
