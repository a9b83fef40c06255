/**
 * Airports of the shipped file (lib/airports/README.md: where it comes from, what is left out, how far to trust it). It is
 * read once, when somebody first asks, on the server only.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import zoneAt from '@photostructure/tz-lookup';
import type { AirportRow } from './airport-row';

export interface Airport {
  readonly ident: string;
  readonly name: string;
  /** Empty where the source has none. */
  readonly municipality: string;
  /** ISO 3166-1 alpha-2. */
  readonly country: string;
  /** North positive. */
  readonly latitudeDeg: number;
  /** East positive. */
  readonly longitudeDeg: number;
  readonly elevationFt: number | null;
  /** IANA name, worked out from position and country when the file was made. */
  readonly zone: string;
}

/** What a row is found by, upper case and without accents. */
interface Entry {
  readonly row: AirportRow;
  readonly codes: readonly string[];
  readonly words: string;
}

let rows: readonly AirportRow[] | undefined;
let byIdent: ReadonlyMap<string, AirportRow> | undefined;
let entries: readonly Entry[] | undefined;

/** Every row of the file, as it stands in it. */
export function airportRows(): readonly AirportRow[] {
  const file = path.join(process.cwd(), 'lib', 'airports', 'airports.json');
  return (rows ??= JSON.parse(readFileSync(file, 'utf8')) as AirportRow[]);
}

/** The airport with this ident (case and spaces around it do not matter), or null. */
export function airportByIdent(ident: string): Airport | null {
  byIdent ??= new Map(airportRows().map((row) => [row[0], row]));
  const row = byIdent.get(ident.trim().toUpperCase());
  return row ? airportOf(row) : null;
}

/**
 * Airports that answer to `text`, at most `limit`: the ones with that very code first, then codes that begin with it,
 * then names and towns that hold every word of it. Within each, by ident. Empty text finds nothing.
 */
export function searchAirports(text: string, limit: number): readonly Airport[] {
  const asked = forSearch(text);
  if (asked === '') return [];
  entries ??= airportRows().map((row) => ({
    row,
    codes: row.slice(0, 3).filter((code) => code !== '') as string[],
    words: forSearch(`${row[3]} ${row[4]}`),
  }));
  const words = asked.split(' ');
  const ranked: AirportRow[][] = [[], [], [], []];
  for (const entry of entries) ranked[rankOf(entry, asked, words)]?.push(entry.row);
  return ranked.slice(0, 3).flat().slice(0, limit).map(airportOf);
}

function rankOf({ codes, words }: Entry, asked: string, askedWords: readonly string[]): 0 | 1 | 2 | 3 {
  if (codes.includes(asked)) return 0;
  if (codes.some((code) => code.startsWith(asked))) return 1;
  return askedWords.every((word) => words.includes(word)) ? 2 : 3;
}

/**
 * A proposal for the zone at a typed point. The map behind it is coarse: within some tens of kilometres of a line it can
 * name the neighbour's zone, so somebody has to look at it before it counts.
 */
export const proposedZone = (point: { latitudeDeg: number; longitudeDeg: number }): string =>
  zoneAt(point.latitudeDeg, point.longitudeDeg);

function airportOf(row: AirportRow): Airport {
  const [ident, , , name, municipality, country, latitudeDeg, longitudeDeg, elevationFt, zone] = row;
  return { ident, name, municipality, country, latitudeDeg, longitudeDeg, elevationFt, zone };
}

/** "São  Paulo" -> "SAO PAULO": nobody types the accents of a place at the desk. */
export const forSearch = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').toUpperCase().replace(/\s+/g, ' ').trim();
