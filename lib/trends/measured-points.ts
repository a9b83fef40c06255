import { instant } from '../db/dates';
import type { Tx } from '../db/client';
import { timeInServiceAt, type MeasuredPoint, type TimeAt } from '../rules/trend';
import type { WalkAnswers } from '../rules/walkaround/answers';
import { listOf, NOT_FITTED_YET } from '../walkarounds/newest-list';

/** A measured value and where it was written down. */
export interface SourcedPoint extends MeasuredPoint {
  readonly from: 'walkaround' | 'finding';
}

/** Everything measured on an aircraft since an instant, by measurement, oldest first. Struck readings count nowhere. */
export async function measuredPoints(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  since: Date,
  times: readonly TimeAt[],
): Promise<ReadonlyMap<string, readonly SourcedPoint[]>> {
  const walks = await tx.walkaround.findMany({
    where: { operatorId, aircraftId, finishedAt: { gte: since } },
    select: { answers: true, plan: { select: { content: true } } },
  });
  const findings = await tx.finding.findMany({
    where: { operatorId, aircraftId, foundAt: { gte: since } },
    select: { measurements: true, foundAt: true },
  });
  const found = new Map<string, SourcedPoint[]>();
  const add = (key: string, at: string, value: number, from: SourcedPoint['from']) => {
    const points = found.get(key) ?? [];
    // What a walk measured and wrote up by itself is one measurement, not two.
    if (from === 'finding' && points.some((one) => one.value === value && isSameWalk(one.at, at))) return;
    points.push({ at, value, ttisTenths: timeInServiceAt(at, times), from });
    found.set(key, points);
  };
  for (const { answers, plan } of walks) {
    const list = plan ? listOf(plan.content) : NOT_FITTED_YET.list;
    for (const { key, at, value } of readingsIn(answers as unknown as WalkAnswers | null, list)) {
      add(key, at, value, 'walkaround');
    }
  }
  for (const { measurements, foundAt } of findings) {
    for (const [key, value] of Object.entries(measurements as Record<string, number>)) {
      add(key, instant(foundAt), value, 'finding');
    }
  }
  return new Map(
    [...found].map(([key, points]) => [key, points.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at))]),
  );
}

function* readingsIn(answers: WalkAnswers | null, list: ReturnType<typeof listOf>) {
  for (const item of list.stations.flatMap(({ items }) => items)) {
    if (item.kind !== 'number') continue;
    for (const { at, value, struck } of answers?.items[item.key]?.readings ?? []) {
      if (!struck) yield { key: item.measurement, at: new Date(at).toISOString(), value };
    }
  }
}

const A_WALK_MS = 60 * 60_000;
const isSameWalk = (one: string, other: string): boolean =>
  Math.abs(Date.parse(one) - Date.parse(other)) <= A_WALK_MS;
