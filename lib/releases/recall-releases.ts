import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { aside } from '../db/savepoint';
import type { WrittenAct } from '../feeds/queue-deliveries';
import { bookedFlights } from '../fleet/booked-flights';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { placeOfIdent } from '../fleet/place-of';
import { tellOfFlight } from '../notices/tell-of-flight';
import { changedSince, permitFacts, readPermitRow } from '../permits/permit-facts';
import { appendAudit } from '../records/audit';
import { toPlain } from '../records/canonical';
import type { AircraftFacts } from '../rules/aircraft';
import { answerForFlight } from '../rules/answer';
import type { Place, ProposedFlight, SpecialFlightPermit } from '../rules/operations';
import { recallInWords, recallOf, writeUpBehind, type Recall } from '../rules/recall';
import type { BookedFlight } from '../rules/spent-hours';
import type { Answer, Line } from '../rules/verdict';
import { countRecalls, inSpan } from '../telemetry/spans';
import { whereActive } from './active-releases';
import { linesOfEvent, stateOf, WITH_HISTORY, type HistoryRow } from './history';
import { withHoursAhead } from './hours-ahead';

const ROW = {
  ...WITH_HISTORY,
  aircraft: { select: { registration: true } },
} as const satisfies Prisma.ReleaseInclude;
type Row = Prisma.ReleaseGetPayload<{ include: typeof ROW }>;

/** A release with what became of it. */
export type ReleaseToJudge = HistoryRow;

/** The facts of an aircraft as they are now, and what is booked on it. */
export interface FactsNow {
  readonly facts: AircraftFacts;
  readonly booked: readonly BookedFlight[];
}

/**
 * Asks again about every release of these aircraft whose flight has not ended, with the facts as they are now and at the
 * flight's own times. What is no go now is void; what is worse, or in the air, is warned about; its pilot in command and
 * the dispatcher who gave it are told, in the transaction of the write that changed the facts. One that cannot be judged
 * counts as no go. Gives the audit rows it wrote. No query more than one when there is no such release.
 *
 * Each release by itself: what goes wrong with one undoes what was written about that one, stands in the log, and leaves
 * the others be. So a release may stay as it was although the facts say otherwise; that is why its acceptance asks again.
 */
export async function recallReleases(
  context: Context,
  aircraftIds: readonly string[],
): Promise<WrittenAct[]> {
  const { tx, operatorId, now } = context;
  const rows = await tx.release.findMany({
    where: { operatorId, aircraftId: { in: [...aircraftIds] }, ...whereActive(now) },
    include: ROW,
    orderBy: [{ departAt: 'asc' }, { id: 'asc' }],
  });
  const acts: WrittenAct[] = [];
  const known = new Map<string, FactsNow | null>();
  for (const row of rows) {
    if (!known.has(row.aircraftId)) known.set(row.aircraftId, await factsNow(context, row.aircraftId));
    const facts = known.get(row.aircraftId) ?? null;
    const recalled = await aside(tx, 'recall', async () => {
      const recall = await recallNow(context, row, facts);
      return recall && { recall, act: await recordOrBare(context, row, recall, facts) };
    });
    if (!recalled.done || !recalled.value) continue;
    const { recall, act } = recalled.value;
    acts.push(act);
    // Hours of a void release are free again: a later one is judged without them.
    if (recall.what === 'void' && facts) known.set(row.aircraftId, await bookedAnew(context, row, facts));
  }
  countRecalls(acts.length);
  return acts;
}

/** What a release and its history, and the aircraft's facts of now, come to: the one judgement of a recall and an acceptance. */
export async function recallNow(
  context: Pick<Context, 'tx' | 'operatorId'>,
  row: ReleaseToJudge,
  facts: FactsNow | null,
): Promise<Recall | null> {
  const { name } = stateOf(row);
  const answer = facts && (await answerNow(context, row, facts));
  return recallOf(name, linesKnown(row), answer);
}

/** The facts of an aircraft as they are now, and what is booked on it; null when they cannot be read. */
export async function factsNow(context: Reader, aircraftId: string): Promise<FactsNow | null> {
  const { tx, operatorId } = context;
  const read = await aside(tx, 'recall', async () => {
    const row = await readAircraft(tx, operatorId, aircraftId);
    return row && { facts: aircraftFacts(row), booked: await bookedNow(context, aircraftId) };
  });
  return read.done ? read.value : null;
}

type Reader = Pick<Context, 'tx' | 'operatorId' | 'now'>;

const bookedNow = async ({ tx, operatorId, now }: Reader, aircraftId: string) =>
  (await bookedFlights(tx, operatorId, now, [aircraftId])).get(aircraftId) ?? [];

async function bookedAnew(context: Reader, row: Row, { facts }: FactsNow): Promise<FactsNow | null> {
  const read = await aside(context.tx, 'recall', () => bookedNow(context, row.aircraftId));
  return read.done ? { facts, booked: read.value } : null;
}

/** The answer with the facts of now at the flight's own times; null when it cannot be worked out. */
async function answerNow(
  context: Pick<Context, 'tx' | 'operatorId'>,
  row: ReleaseToJudge,
  { facts, booked }: FactsNow,
): Promise<Answer | null> {
  const answered = await aside(context.tx, 'recall', async () => {
    const kept = row.flight as unknown as ProposedFlight;
    const flight: ProposedFlight = {
      ...kept,
      from: await placeNow(context, kept.from),
      to: await placeNow(context, kept.to),
      specialFlightPermit: await permitNow(context.tx, row),
    };
    const others = booked.filter(({ id }) => id !== row.id);
    const spent = withHoursAhead(facts, others, instant(row.departAt)).facts;
    return inSpan('rules', {}, () => answerForFlight(spent, flight)).answer;
  });
  return answered.done ? answered.value : null;
}

/** A base may have been put right since. A place nobody knows any more stays as it was kept. */
const placeNow = async (
  { tx, operatorId }: Pick<Context, 'tx' | 'operatorId'>,
  kept: Place,
): Promise<Place> => (await placeOfIdent(tx, operatorId, kept.ident)) ?? kept;

/** The permit as it is now. That a flight was released under it is this very flight. */
async function permitNow(
  tx: Tx,
  { operatorId, permitId }: ReleaseToJudge,
): Promise<SpecialFlightPermit | null> {
  if (permitId === null) return null;
  const permit = await readPermitRow(tx, operatorId, permitId);
  return permit && { ...permitFacts(permit, await changedSince(tx, operatorId, permit)), used: false };
}

/** What was known at release, and what its people were told since. */
const linesKnown = (row: ReleaseToJudge): readonly Line[] => [
  ...(row.answer as unknown as Answer).lines,
  ...row.events.flatMap(linesOfEvent),
];

/** That a release is void must not be lost for the sake of what is said about it. */
async function recordOrBare(
  context: Context,
  row: Row,
  recall: Recall,
  now: FactsNow | null,
): Promise<WrittenAct> {
  if (recall.what !== 'void') return record(context, row, recall, now);
  const whole = await aside(context.tx, 'recall', () => record(context, row, recall, now));
  return whole.done ? whole.value : record(context, row, { what: 'void', lines: [] }, null);
}

async function record(context: Context, row: Row, recall: Recall, now: FactsNow | null): Promise<WrittenAct> {
  const { tx, operatorId, actor, requestId } = context;
  const { what, lines } = recall;
  const eventId = randomUUID();
  const words = recallInWords(recall, stateOf(row).name === 'airborne');
  const discrepancyId = now && writeUpBehind(lines, now.facts, row.facts as unknown as AircraftFacts);
  await tx.flightEvent.create({
    data: {
      id: eventId,
      operatorId,
      releaseId: row.id,
      what,
      at: context.now,
      words,
      discrepancyId,
      lines: toPlain(lines) as unknown as object,
      recordedById: actor.personId,
      recordedAt: context.now,
    },
  });
  const act = {
    verb: 'flight.recall',
    subjectKind: 'release',
    subjectId: row.id,
    detail: { aircraft: row.aircraft.registration, what, eventId, discrepancyId, words },
  };
  const seq = await appendAudit(tx, operatorId, {
    at: context.now,
    personId: actor.personId,
    requestId,
    ...act,
  });
  await aside(tx, 'recall', () =>
    // Whoever changed the facts is told as well: that they know of the trouble does not say they know of the release.
    tellOfFlight(context, [row.pilotId, row.dispatcherId], {
      releaseId: row.id,
      what: what === 'void' ? 'release-void' : 'release-warned',
      eventId,
      discrepancyId,
      words,
    }),
  );
  return { operatorId, ...act, seq, at: context.now };
}
