import type { z } from 'zod';
import { command, type Context } from '../access/service';
import { instant } from '../db/dates';
import { openWriteUp, storedLimits } from '../findings/open-write-up';
import { walksCount } from '../fleet/house-facts';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { namedId } from '../records/named-id';
import type { Severity } from '../rules/aircraft';
import { isWrittenUp, type WrittenAtItem } from '../rules/walkaround/already-written';
import type { StationAnswer, WalkAnswers } from '../rules/walkaround/answers';
import type { AreaKey } from '../rules/walkaround/areas';
import {
  answerOf,
  judgeWalk,
  raisedByMissingPlacard,
  type RaisedByWalk,
} from '../rules/walkaround/judge-walk';
import { listOf } from './newest-list';
import { finishWalkaroundInput } from './schema';
import { said } from '../words/said';

/** A write-up that the walk opened by itself. */
export interface RaisedWriteUp {
  readonly itemKey: string;
  readonly station: string;
  readonly discrepancyId: string;
  readonly findingId: string;
  readonly number: string;
  readonly title: string;
  readonly severity: Severity | null;
  readonly words: string;
}

export interface FinishedWalk {
  readonly walkaroundId: string;
  readonly good: number;
  readonly withFinding: number;
  readonly notLookedAt: number;
  readonly raised: readonly RaisedWriteUp[];
}

/**
 * Ends one's own walkaround: judges the answers by the list it was walked by and the limits of the aircraft, and opens a
 * write-up for everything that has none yet from this walk (see `isWrittenUp`). A station nobody answered stays "not looked at": never
 * silently good. From then on it is frozen. Refuses `conflict` when it was ended before.
 */
export const finishWalkaround = command({
  verb: 'walkaround.finish',
  input: finishWalkaroundInput,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const key = { operatorId_id: { operatorId, id: input.walkaroundId } };
    const walk = await tx.walkaround.findUnique({
      where: key,
      include: { plan: true, aircraft: { select: { registration: true, typeId: true } } },
    });
    if (!walk || walk.personId !== actor.personId) throw new Refusal('not_found');
    if (walk.finishedAt) throw new Refusal('conflict', { say: said('This walkaround is already finished.') });
    const judged = await judgeFinished(context, walk, input);
    await tx.walkaround.update({
      where: key,
      data: {
        finishedAt: finishedAt(input.finishedAt, now),
        stations: judged.stations,
        answers: input.answers,
      },
    });
    if (await walksCount(tx, { id: walk.aircraftId, typeId: walk.aircraft.typeId })) {
      await factsChanged(tx, operatorId, walk.aircraftId);
    }
    const answers = Object.values(judged.stations);
    const count = (answer: StationAnswer) => answers.filter((given) => given === answer).length;
    const value: FinishedWalk = {
      walkaroundId: walk.id,
      good: count('good'),
      withFinding: count('finding'),
      notLookedAt: count('not-looked-at'),
      raised: judged.raised,
    };
    const raised = value.raised.map(({ number }) => number);
    const detail = { ...value, raised, aircraft: walk.aircraft.registration };
    return { value, audit: { subjectKind: 'walkaround', subjectId: walk.id, detail } };
  },
});

interface Walk {
  readonly id: string;
  readonly aircraftId: string;
  readonly plan: { readonly content: unknown } | null;
}

interface JudgedFinish {
  readonly stations: Record<string, StationAnswer>;
  readonly raised: RaisedWriteUp[];
}

async function judgeFinished(
  context: Context,
  walk: Walk,
  { stations, answers, finishedAt: foundAt }: z.output<typeof finishWalkaroundInput>,
): Promise<JudgedFinish> {
  if (stations) return { stations, raised: [] };
  if (!answers || !foundAt || !walk.plan) {
    throw new Refusal('invalid', { say: said('This walkaround was begun without a list.') });
  }
  const { tx, operatorId } = context;
  const list = listOf(walk.plan.content);
  const limits = await storedLimits(tx, operatorId, walk.aircraftId);
  const verdict = judgeWalk(list, answers, limits);
  const cabin = list.stations.find(({ area }) => area === 'cabin') ?? list.stations[0];
  const missing = await missingPlacards(context, walk.aircraftId, answers, cabin?.area ?? 'cabin');
  const written = await writtenOn(context, walk.id);
  const toRaise = [...verdict.raised, ...missing];
  const raised: RaisedWriteUp[] = [];
  for (const one of toRaise) {
    if (isWrittenUp(one, answerOf(answers, one.itemKey), written)) continue;
    raised.push(await raise(context, walk, one, foundAt));
  }
  const withFinding = [...toRaise, ...written].map(({ station }) => [station, 'finding'] as const);
  return { stations: { ...verdict.stations, ...Object.fromEntries(withFinding) }, raised };
}

/** What was written on the walk, each with how its write-up stands now. */
async function writtenOn(
  { tx, operatorId }: Context,
  walkaroundId: string,
): Promise<readonly (WrittenAtItem & { readonly station: string })[]> {
  const writeUp = { select: { findingKey: true, state: true, severity: true, closedAt: true } };
  const rows = await tx.finding.findMany({
    where: { operatorId, walkaroundId },
    select: { itemKey: true, station: true, discrepancy: writeUp, related: writeUp },
  });
  return rows.flatMap(({ itemKey, station, discrepancy, related }) => {
    const of = discrepancy ?? related;
    if (!of) return [];
    return {
      itemKey,
      station,
      isOwn: discrepancy !== null,
      findingKey: of.findingKey,
      state: of.state as WrittenAtItem['state'],
      severity: of.severity as Severity | null,
      closedAt: of.closedAt && instant(of.closedAt),
    };
  });
}

async function raise(
  context: Context,
  walk: Walk,
  raised: RaisedByWalk,
  foundAt: string,
): Promise<RaisedWriteUp> {
  const { itemKey, station, findingKey, measurements, words, listLimit } = raised;
  const { discrepancyId, findingId, number, title, severity } = await openWriteUp(
    context,
    walk.aircraftId,
    {
      // Made from the walk and the item, so that whatever happens it is written once.
      findingId: namedId(`walkaround/${walk.id}/${itemKey}`),
      walkaroundId: walk.id,
      station,
      itemKey,
      phase: 'before-flight',
      relatedId: null,
      findingKey,
      kind: null,
      jasc: null,
      equipmentId: null,
      inoperativeCount: null,
      place: '',
      words,
      measurements,
      foundAt,
    },
    listLimit ? [listLimit] : [],
  );
  return { itemKey, station, discrepancyId, findingId, number, title, severity, words };
}

/** Placards of live deferrals of this aircraft that were found missing. One that is not of this aircraft is no placard. */
async function missingPlacards(
  { tx, operatorId }: Context,
  aircraftId: string,
  answers: WalkAnswers,
  cabin: AreaKey,
): Promise<RaisedByWalk[]> {
  const ids = Object.keys(answers.placards).filter((id) => answers.placards[id] === 'missing');
  if (ids.length === 0) return [];
  const rows = await tx.placard.findMany({
    where: {
      operatorId,
      id: { in: ids },
      removedAt: null,
      deferral: { end: null, discrepancy: { aircraftId } },
    },
    select: { id: true, wording: true, location: true },
    orderBy: { id: 'asc' },
  });
  return rows.map((placard) => raisedByMissingPlacard(placard, cabin));
}

/** When it was ended by the phone's clock; never later than now, since a clock that runs ahead is wrong. */
const finishedAt = (said: string | undefined, now: Date): Date =>
  said === undefined ? now : new Date(Math.min(new Date(said).getTime(), now.getTime()));
