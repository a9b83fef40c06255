import { airportByIdent } from '../airports/find-airport';
import { fieldRefusal } from '../problems';
import { zoneFits } from '../rules/zone-fits';
import type { BaseFactsInput } from './schema';
import { filled, said } from '../words/said';

const known = (said: 'yes' | 'no' | 'not-said'): boolean | null =>
  said === 'not-said' ? null : said === 'yes';

/** What was typed, as columns. */
export const baseColumns = (input: BaseFactsInput) => ({
  name: input.name,
  latitudeDeg: Number(input.latitudeDeg),
  longitudeDeg: Number(input.longitudeDeg),
  zone: input.zone,
  repairAvailable: known(input.repairAvailable),
  transponderAirspace: known(input.transponderAirspace),
  adsbAirspace: known(input.adsbAirspace),
  controlledAirspace: known(input.controlledAirspace),
});
export type BaseColumns = ReturnType<typeof baseColumns>;

/**
 * Refuses a zone nobody looked at, and one whose clocks cannot be those of the longitude: the commonest slip is a minus left
 * out, and it would put the night at noon.
 */
export function requireFittingZone(
  columns: BaseColumns,
  { zoneConfirmed, now }: { zoneConfirmed: boolean; now: Date },
): void {
  if (!zoneConfirmed)
    throw fieldRefusal('zoneConfirmed', said('Look at the time there and tick that it is right.'));
  if (!zoneFits(columns.zone, columns.longitudeDeg, now.toISOString())) {
    throw fieldRefusal(
      'longitudeDeg',
      filled(
        said(
          'The clocks of {zone} are more than four hours from the sun at this longitude. West is minus; or choose another zone.',
        ),
        { zone: columns.zone },
      ),
    );
  }
}

/** Where position and zone come from: the airport of the file when they are still its own, else `typed`. */
export function sourceOf(columns: BaseColumns, airportIdent: string): string {
  const airport = airportIdent === '' ? null : airportByIdent(airportIdent);
  const same =
    airport !== null &&
    airport.latitudeDeg === columns.latitudeDeg &&
    airport.longitudeDeg === columns.longitudeDeg &&
    airport.zone === columns.zone;
  return same ? `airport ${airport.ident}` : 'typed';
}
