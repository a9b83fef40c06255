/**
 * Wall-clock times of a zone as `datetime-local` fields write them, without a calendar library: the ramp's phone has no
 * room for one. Held against lib/fleet/zone.ts in tests/rules/wall-clock.test.ts.
 */
const A_DAY = 86_400_000;
const LOCAL = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/;

/**
 * `2026-11-25T14:05` in an IANA zone as an instant in UTC. Null for what is no time there: also on the days clocks change,
 * for a time that does not exist or exists twice. Which was meant is for the person to say.
 */
export function instantOfWallClock(local: string, zone: string): string | null {
  const asUtc = LOCAL.test(local) ? Date.parse(`${local}:00Z`) : Number.NaN;
  // Date.parse makes 2 March of 30 February.
  if (Number.isNaN(asUtc) || !new Date(asUtc).toISOString().startsWith(local)) return null;
  // The zone's offsets a day before and after are the only two it can have had at that time.
  const offsets = new Set([offsetAt(asUtc - A_DAY, zone), offsetAt(asUtc + A_DAY, zone)]);
  const found = [...offsets]
    .map((offset) => asUtc - offset)
    .filter((at) => offsetAt(at, zone) === asUtc - at);
  return found.length === 1 ? new Date(found[0] ?? Number.NaN).toISOString() : null;
}

/** An instant as `datetime-local` shows it in the zone, to the minute. */
export function wallClockOf(at: string, zone: string): string {
  const ms = Date.parse(at);
  return new Date(ms + offsetAt(ms, zone)).toISOString().slice(0, 16);
}

/** How far the zone's clocks are ahead of UTC, in milliseconds. */
function offsetAt(ms: number, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'iso8601',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(ms);
  const part = (kind: Intl.DateTimeFormatPartTypes) => Number(parts.find(({ type }) => type === kind)?.value);
  const shown = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return shown - Math.floor(ms / 1000) * 1000;
}
