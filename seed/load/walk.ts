import { readInOperator } from '../../lib/db/scope';
import { NO_ANSWER, type ItemAnswer } from '../../lib/rules/walkaround/answers';
import type { ListItem } from '../../lib/rules/walkaround/plan';
import { finishWalkaround } from '../../lib/walkarounds/finish-walkaround';
import { newestLists } from '../../lib/walkarounds/newest-list';
import { startWalkaround } from '../../lib/walkarounds/start-walkaround';
import { writeList } from '../../lib/walkarounds/write-list';
import type { ListPlan, WalkPlan } from '../walkarounds';
import { instantAt, minutesLater } from './calendar';
import * as ids from './ids';
import { granted, type Happening, type Stage } from './stage';

/** The manager writes the next version of a type's list. */
export function listHappening(stage: Stage, plan: ListPlan, lists: readonly ListPlan[]): Happening {
  const { operator } = stage;
  const zone = operator.bases[0]?.zone ?? 'UTC';
  const at = instantAt(stage.now, zone, plan.daysAgo, '10:40');
  const what = `${plan.type}: walkaround list`;
  const fromVersion = lists.filter(({ type }) => type === plan.type).indexOf(plan);
  return {
    at,
    what,
    async play() {
      const input = {
        requestId: ids.demoId(`${operator.key}/list/${plan.type}/${fromVersion + 1}`),
        typeId: ids.typeId(operator.key, plan.type),
        fromVersion,
        list: plan.list,
        why: plan.why,
      };
      granted(await writeList(stage.person(operator.enteredBy), input, { now: at }), what);
    },
  };
}

/** A whole walkaround by the newest list of its day. */
export function walkHappening(stage: Stage, plan: WalkPlan): Happening {
  const { operator, operatorId } = stage;
  const begun = instantAt(stage.now, stage.baseOf(plan.aircraft).zone, plan.daysAgo, plan.at);
  const ended = minutesLater(begun, plan.minutes);
  const what = `${plan.aircraft}: walkaround by ${plan.by}`;
  const typeId = ids.typeId(operator.key, stage.aircraft(plan.aircraft).type);
  const walkaroundId = ids.demoId(`${operator.key}/walk/${plan.aircraft}/${plan.daysAgo}`);
  return {
    at: ended,
    what,
    async play() {
      const ref = stage.person(plan.by);
      const lists = await readInOperator(operatorId, (tx) => newestLists(tx, operatorId));
      const newest = lists.get(typeId);
      if (!newest) throw new Error(`The demo walks ${plan.aircraft} without a list.`);
      const start = {
        requestId: walkaroundId,
        aircraftId: ids.aircraftId(operator.key, plan.aircraft),
        startedAt: begun.toISOString(),
        planId: newest.id,
      };
      granted(await startWalkaround(ref, start, { now: begun }), what);
      const items = newest.list.stations.flatMap((station) => station.items);
      const finish = {
        requestId: ids.demoId(`${operator.key}/walk/${plan.aircraft}/${plan.daysAgo}/done`),
        walkaroundId,
        answers: {
          items: Object.fromEntries(items.map((item) => [item.key, answered(item, plan, ended)])),
          placards: {},
        },
        finishedAt: ended.toISOString(),
      };
      const { raised } = granted(await finishWalkaround(ref, finish, { now: ended }), what);
      if (raised.length > 0) throw new Error(`The demo's walkaround raised what no story tells of: ${what}.`);
    },
  };
}

function answered(item: ListItem, plan: WalkPlan, ended: Date): ItemAnswer {
  const at = minutesLater(ended, -2).toISOString();
  switch (item.kind) {
    case 'look':
      return { ...NO_ANSWER, looked: 'good' };
    case 'number': {
      const values = plan.numbers[item.measurement];
      if (!values)
        throw new Error(`The demo's walkaround of ${plan.aircraft} has no number for ${item.title}.`);
      return { ...NO_ANSWER, readings: values.map((value) => ({ value, at, struck: false })) };
    }
    case 'sample':
      return {
        ...NO_ANSWER,
        samples: (plan.samples[item.drain] ?? ['clean']).map((result) => ({ result, at })),
      };
  }
}
