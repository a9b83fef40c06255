import { mayUse, type Role, type Verb } from '../access/policy';
import { MEASURABLE } from '../determinations/find-within-limits';
import type { WorkView, WriteUpView } from '../determinations/read-write-up';

/** What can be done about a write-up itself. */
export type WriteUpAct =
  'place-placard' | 'judge' | 'servicing' | 'within-limits' | 'defer' | 'extend' | 'start';

/** What can be done about one piece of work. */
export type WorkAct = 'enter' | 'sign' | 'give-up' | 'check-flight' | 'start-test' | 'correct';

const WRITE_UP_VERBS: Readonly<Record<WriteUpAct, Verb>> = {
  'place-placard': 'placard.place',
  judge: 'severity.judge',
  servicing: 'servicing.record',
  'within-limits': 'within-limits.find',
  defer: 'deferral.begin',
  extend: 'deferral.extend',
  start: 'work.start',
};

const WORK_VERBS: Readonly<Record<WorkAct, Verb>> = {
  enter: 'work.enter',
  sign: 'work.sign',
  'give-up': 'work.abandon',
  'check-flight': 'check-flight.log',
  'start-test': 'work.start',
  correct: 'work.correct',
};

/** Whether work is begun and not yet at its end. */
const underWay = (work: Pick<WorkView, 'state'>) => work.state === 'started' || work.state === 'entered';

/**
 * The acts a screen offers for a write-up, in the order in which they are usually taken. It only saves knocking at
 * doors that are shut: each service asks again, and whether a certificate covers the act is never asked here.
 */
export function actsOnWriteUp(view: WriteUpView, roles: readonly Role[]): readonly WriteUpAct[] {
  const { summary } = view;
  if (summary.state === 'closed') return [];
  const atWork = view.work.some(underWay);
  const open: Readonly<Record<WriteUpAct, boolean>> = {
    'place-placard': summary.placards.some((placard) => !placard.placed),
    judge: summary.state !== 'deferred',
    servicing:
      summary.kind === 'servicing' &&
      !atWork &&
      !view.determinations.some((entry) => entry.kind === 'severity'),
    'within-limits': MEASURABLE.includes(summary.kind),
    defer:
      (view.deferral === null || view.deferral.doesNotCount.length > 0) &&
      !atWork &&
      summary.severity !== null &&
      view.eligibility?.deferrable === true,
    extend: view.mayExtend !== null && view.deferral?.extension === null,
    start: !atWork,
  };
  return (Object.keys(open) as WriteUpAct[]).filter((act) => open[act] && mayUse(roles, WRITE_UP_VERBS[act]));
}

/** The acts a screen offers for a piece of work, in order. */
export function actsOnWork(work: WorkView, roles: readonly Role[]): readonly WorkAct[] {
  const open: Readonly<Record<WorkAct, boolean>> = {
    enter: underWay(work),
    sign: work.state === 'entered',
    'give-up': work.corrects !== null ? underWay(work) : work.state === 'started' && !work.forDeferral,
    'check-flight': work.owes.checkFlight,
    'start-test': work.owes.tests.length > 0,
    correct: work.mayCorrect,
  };
  return (Object.keys(open) as WorkAct[]).filter((act) => open[act] && mayUse(roles, WORK_VERBS[act]));
}
