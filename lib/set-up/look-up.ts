import { proposedZone, searchAirports } from '../airports/find-airport';
import type { FoundPlace } from '../airports/read-airports';
import { fieldRefusal, type Result } from '../problems';
import { withOpenToken } from './open-token';
import { said } from '../words/said';

const MOST = 8;

/** What the set-up page asks before anybody is signed in. The token is asked each time; the airports are no secret. */
export const checkToken = (token: string): Promise<Result<true>> => withOpenToken(token, () => true);

/** Airports of the shipped file that answer to what is typed. */
export const findAirportsToSetUp = (token: string, text: string): Promise<Result<readonly FoundPlace[]>> =>
  withOpenToken(token, () =>
    searchAirports(text.slice(0, 100), MOST).map(({ municipality, country, ...airport }) => ({
      kind: 'airport' as const,
      ...airport,
      where: [municipality, country].filter(Boolean).join(', '),
    })),
  );

/** The zone a typed point seems to lie in; somebody looks at the time there before it counts. */
export const proposeZoneToSetUp = (
  token: string,
  { latitudeDeg, longitudeDeg }: { latitudeDeg: number; longitudeDeg: number },
): Promise<Result<{ zone: string }>> =>
  withOpenToken(token, () => {
    if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)) {
      throw fieldRefusal('latitudeDeg', said('Look at latitude and longitude.'));
    }
    return { zone: proposedZone({ latitudeDeg, longitudeDeg }) };
  });
