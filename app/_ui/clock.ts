/** "14:02:11 PST": the time on the wall in `zone` at an instant, with seconds, for the age of what is shown. */
export function clockWithSeconds(at: string, zone: string): string {
  return new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  }).format(new Date(at));
}

/** The same for every zone in `zones`, each once. */
export const clocksWithSeconds = (at: string, zones: readonly string[]): string =>
  [...new Set(zones.map((zone) => clockWithSeconds(at, zone)))].join(' / ');
