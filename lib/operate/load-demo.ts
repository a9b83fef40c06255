import { BRACKEN_HISTORY } from '../../seed/history-bracken';
import { FOXGLOVE_HISTORY } from '../../seed/history-foxglove';
import { SEDGE_HISTORY } from '../../seed/history-sedge';
import { FLIGHTS } from '../../seed/flights';
import { writeBaseRows } from '../../seed/load/base-rows';
import { instantAt } from '../../seed/load/calendar';
import { operatorId } from '../../seed/load/ids';
import { flightMeters } from '../../seed/load/flight-meters';
import { measuredWalk } from '../../seed/load/measured-walk';
import { planAhead } from '../../seed/load/plan-flight';
import { releaseHappening } from '../../seed/load/release-flight';
import { stageFor, type Happening } from '../../seed/load/stage';
import { tellStory } from '../../seed/load/tell-story';
import { listHappening, walkHappening } from '../../seed/load/walk';
import { quietYear } from '../../seed/load/year';
import { MEASURED_STORIES, MEASURED_WALKS } from '../../seed/measured-walks';
import { QUILLBACK } from '../../seed/operators';
import { DEMO_PASSWORD } from '../../seed/people';
import { PLANNED_FLIGHTS, type PlannedFlightPlan } from '../../seed/planned-flights';
import { MARROWFIELD } from '../../seed/second-operator';
import type { OperatorPlan } from '../../seed/shapes';
import type { FlightPlan, Story } from '../../seed/stories';
import { TODAY } from '../../seed/today';
import { LISTS, OTHER_LISTS, WALKS, type ListPlan, type WalkPlan } from '../../seed/walkarounds';
import { hashPassword } from '../access/passwords';
import { closeDatabase } from '../db/client';
import { writeInOperator } from '../db/scope';
import { withClient } from './connection';
import { say } from './say.mjs';

/** Days of invented history. */
const YEAR_DAYS = 380;

/** What is younger than this is still unread news in the demo. */
const FRESH_NEWS_MS = 36 * 60 * 60 * 1000;

const OPERATORS: readonly OperatorPlan[] = [QUILLBACK, MARROWFIELD];

/** Who can sign in to the demo, for printing. Whoever left is not among them. */
export const DEMO_LOGINS: readonly {
  readonly who: string;
  readonly email: string;
  readonly password: string;
  readonly roles: string;
}[] = OPERATORS.flatMap((operator) =>
  operator.people
    .filter((person) => person.leftDaysAgo === undefined)
    .map((person) => ({
      who: person.name,
      email: person.email,
      password: DEMO_PASSWORD,
      roles: `${person.roles.join(', ')} (${person.inWords})`,
    })),
);

/**
 * Loads the demo into a migrated database: the base rows directly, and everything that a person does through the
 * services with the clock set back, so that the history went through the same rules and locks as today's work. All
 * dates hang on `now`. Where the demo is already loaded it says so and does nothing. Throws when a service refuses
 * what the story needs: then rules and story do not fit, and a half-told story is not silently kept as whole.
 *
 * @param adminUrl owner's address: for looking behind row security, and for statistics after so many inserts
 * @param appUrl the web account's address; the services use it
 */
export async function loadDemo(
  adminUrl: string,
  appUrl: string,
  options: { readonly now?: Date } = {},
): Promise<void> {
  if (await isLoaded(adminUrl)) {
    say('The demo is loaded already; nothing was changed.');
    return;
  }
  const now = options.now ?? new Date();
  await closeDatabase();
  process.env.APP_DATABASE_URL = appUrl;
  // A year of history is no reason to write letters.
  for (const name of ['SMTP_URL', 'MAIL_OUTBOX_DIR', 'MAIL_FROM']) process.env[name] = '';
  try {
    const passwordHash = await hashPassword(DEMO_PASSWORD);
    const stories = [
      ...SEDGE_HISTORY,
      ...BRACKEN_HISTORY,
      ...FOXGLOVE_HISTORY,
      ...MEASURED_STORIES,
      ...TODAY,
    ];
    await loadOperator(QUILLBACK, passwordHash, now, {
      stories,
      flights: FLIGHTS,
      lists: LISTS,
      walks: WALKS,
      measured: MEASURED_WALKS,
      planned: PLANNED_FLIGHTS,
    });
    const nothingTold = { stories: [], flights: [], walks: [], measured: [], planned: [] };
    await loadOperator(MARROWFIELD, passwordHash, now, { ...nothingTold, lists: OTHER_LISTS });
  } finally {
    await closeDatabase();
  }
  await withClient(adminUrl, (client) => client.query('ANALYZE'));
}

const isLoaded = (adminUrl: string): Promise<boolean> =>
  withClient(adminUrl, async (client) => {
    const ids = OPERATORS.map((operator) => operatorId(operator.key));
    const { rowCount } = await client.query('SELECT 1 FROM operator WHERE id = ANY($1::uuid[])', [ids]);
    return (rowCount ?? 0) > 0;
  });

/** What people did in the year. */
interface Year {
  readonly stories: readonly Story[];
  readonly flights: readonly FlightPlan[];
  readonly lists: readonly ListPlan[];
  readonly walks: readonly WalkPlan[];
  /** Walks at which the meters were read too. */
  readonly measured: readonly WalkPlan[];
  readonly planned: readonly PlannedFlightPlan[];
}

async function loadOperator(
  operator: OperatorPlan,
  passwordHash: string,
  now: Date,
  { stories, flights, lists, walks, measured, planned }: Year,
): Promise<void> {
  const began = instantAt(now, operator.bases[0]?.zone ?? 'UTC', YEAR_DAYS, '09:00');
  await writeInOperator(operatorId(operator.key), (tx) =>
    writeBaseRows(tx, operator, passwordHash, now, began),
  );
  const stage = stageFor(operator, now, DEMO_PASSWORD);
  const happenings: readonly Happening[] = [
    ...quietYear(stage, began),
    ...stories.flatMap((story) => tellStory(stage, story)),
    ...flights.flatMap((flight) => [releaseHappening(stage, flight), ...flightMeters(stage, flight)]),
    ...lists.map((plan) => listHappening(stage, plan, lists)),
    ...walks.map((plan) => walkHappening(stage, plan)),
    ...measured.flatMap((plan) => measuredWalk(stage, plan)),
  ].toSorted((a, b) => a.at.getTime() - b.at.getTime());
  for (const happening of happenings) {
    if (happening.at > now) throw new Error(`The demo's story runs into the future: ${happening.what}.`);
    await happening.play();
  }
  await planAhead(stage, planned);
  await settleOldNews(stage.operatorId, now);
}

/** What somebody was told before the last days has been seen; of the last days it is still news. */
const settleOldNews = (operator: string, now: Date) =>
  writeInOperator(operator, async (tx) => {
    const before = new Date(now.getTime() - FRESH_NEWS_MS).toISOString();
    await tx.$executeRaw`
      UPDATE notice SET read_at = "at" + interval '6 hours' WHERE read_at IS NULL AND "at" < ${before}::timestamptz`;
  });
