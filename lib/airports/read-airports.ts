import { z } from 'zod';
import { query } from '../access/service';
import { airportByIdent, forSearch, proposedZone, searchAirports, type Airport } from './find-airport';

/** What somebody may mean by what they typed: a base of their own, or an airport of the shipped file. */
export interface FoundPlace extends Omit<Airport, 'municipality' | 'country' | 'elevationFt'> {
  readonly kind: 'base' | 'airport';
  /** "Decorah, US"; empty for a base. */
  readonly where: string;
  readonly elevationFt: number | null;
}

const MOST = 8;

/** Up to eight bases and airports that answer to `text`, own bases first. An airport that is a base here comes once. */
export const readAirports = query({
  verb: 'airport.find',
  input: z.object({ text: z.string().trim().max(100) }),
  async run({ tx, operatorId }, { text }): Promise<readonly FoundPlace[]> {
    if (text === '') return [];
    const asked = forSearch(text);
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const own = bases
      .filter(({ ident, name }) => ident.startsWith(asked) || forSearch(name).includes(asked))
      .map(({ ident, name, latitudeDeg, longitudeDeg, zone }) => ({
        kind: 'base' as const,
        ident,
        name,
        where: '',
        latitudeDeg,
        longitudeDeg,
        elevationFt: airportByIdent(ident)?.elevationFt ?? null,
        zone,
      }));
    const idents = new Set(own.map(({ ident }) => ident));
    const airports = searchAirports(text, MOST)
      .filter(({ ident }) => !idents.has(ident))
      .map(({ municipality, country, ...airport }) => ({
        kind: 'airport' as const,
        ...airport,
        where: [municipality, country].filter(Boolean).join(', '),
      }));
    return [...own, ...airports].slice(0, MOST);
  },
});

export interface ZoneProposal {
  readonly zone: string;
  /** The moment it was asked, to show what its clocks say. */
  readonly asOf: string;
}

/** The zone a typed point seems to lie in. A proposal: somebody looks at the time there before it counts. */
export const readZoneProposal = query({
  verb: 'airport.find',
  input: z.object({ latitudeDeg: z.number().min(-90).max(90), longitudeDeg: z.number().min(-180).max(180) }),
  run: ({ now }, point): Promise<ZoneProposal> =>
    Promise.resolve({ zone: proposedZone(point), asOf: now.toISOString() }),
});
