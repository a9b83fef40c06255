import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import type { SampleResult, WalkAnswers } from '../rules/walkaround/answers';
import { listOf } from './newest-list';
import type { PackAircraft } from './pack';

type LastSamples = NonNullable<PackAircraft['lastSamples']>;

/**
 * For each aircraft the drains that did not run clean at once on its last finished walkaround. An aircraft where all ran
 * clean, or whose last walkaround asked about no drain, is left out.
 */
export async function lastSamples(tx: Tx, operatorId: string): Promise<ReadonlyMap<string, LastSamples>> {
  const last = await tx.walkaround.groupBy({
    by: ['aircraftId'],
    where: { operatorId, finishedAt: { not: null }, planId: { not: null } },
    _max: { finishedAt: true },
  });
  if (last.length === 0) return new Map();
  const walks = await tx.walkaround.findMany({
    where: {
      operatorId,
      planId: { not: null },
      OR: last.map(({ aircraftId, _max }) => ({ aircraftId, finishedAt: _max.finishedAt })),
    },
    include: { plan: { select: { content: true } } },
  });
  const names = await namesOf(
    tx,
    walks.map((walk) => walk.personId),
  );
  const found = new Map<string, LastSamples>();
  for (const { aircraftId, finishedAt, personId, answers, plan } of walks) {
    const drains = notCleanAtOnce(answers as unknown as WalkAnswers | null, plan?.content);
    if (finishedAt && Object.keys(drains).length > 0) {
      found.set(aircraftId, { at: instant(finishedAt), by: nameIn(names, personId), drains });
    }
  }
  return found;
}

/** By what the drain is called: everything sampled there, where one of the samples was not clean. */
function notCleanAtOnce(answers: WalkAnswers | null, content: unknown): Record<string, SampleResult[]> {
  if (!answers || !content) return {};
  return Object.fromEntries(
    listOf(content).stations.flatMap(({ items }) =>
      items.flatMap((item): [string, SampleResult[]][] => {
        if (item.kind !== 'sample') return [];
        const results = (answers.items[item.key]?.samples ?? []).map(({ result }) => result);
        return results.some((result) => result !== 'clean') ? [[item.drain, results]] : [];
      }),
    ),
  );
}
