/** Days, months and miles for the facts of the library: plain arithmetic of its own, so that nothing of the core is called. */
const DAY_MS = 86_400_000;
const dayNumber = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;
const dateOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

export const addDays = (date: string, days: number): string => dateOf((dayNumber(date) + days) * DAY_MS);

export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** The last day of the month that is `months` after the month of `date`. */
export const endOfMonthAfter = (date: string, months: number): string =>
  dateOf(Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) + months, 0));

interface Point {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Great circle, by the spherical law of cosines for short arcs (haversine); mean radius of the earth. */
export function miles(from: Point, to: Point): number {
  const rad = (deg: number) => (deg * Math.PI) / 180;
  const [a, b] = [rad(from.latitudeDeg), rad(to.latitudeDeg)];
  const h =
    Math.sin((b - a) / 2) ** 2 +
    Math.cos(a) * Math.cos(b) * Math.sin(rad(to.longitudeDeg - from.longitudeDeg) / 2) ** 2;
  return (2 * 6371.0088 * Math.asin(Math.sqrt(h))) / 1.852;
}
