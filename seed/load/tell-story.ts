import { beginDeferral } from '../../lib/determinations/begin-deferral';
import { findWithinLimits } from '../../lib/determinations/find-within-limits';
import { judgeSeverity } from '../../lib/determinations/judge-severity';
import { placePlacard } from '../../lib/determinations/place-placard';
import { readInOperator, writeInOperator } from '../../lib/db/scope';
import { finishWalkaround } from '../../lib/walkarounds/finish-walkaround';
import { recordServicing } from '../../lib/findings/record-servicing';
import { reportFinding } from '../../lib/findings/report-finding';
import { startWalkaround } from '../../lib/walkarounds/start-walkaround';
import { formatTenths, tenthsFromMinutes } from '../../lib/rules/hours';
import { MAJOR_QUESTIONS } from '../../lib/rules/part-43/43-appendix-a-major';
import { STATION_KEYS } from '../../lib/rules/findings/stations';
import { enterWork } from '../../lib/work/enter-work';
import { logCheckFlight } from '../../lib/work/log-check-flight';
import { signWork } from '../../lib/work/sign-work';
import { startWork } from '../../lib/work/start-work';
import type { DeferStep, RepairStep, Step, Story, WithinLimitsStep } from '../stories';
import { dayOf, instantAt, minutesLater } from './calendar';
import * as ids from './ids';
import { hoursPast, readMeters, ttisAt } from './meters';
import { granted, refused, type Happening, type Stage } from './stage';

/** What one story knows of itself while it is told. */
interface Told {
  discrepancyId: string;
  placardId: string | null;
  deferred: boolean;
}

/** The happenings of one write-up, each through the service that a person's tap would go through. */
export function tellStory(stage: Stage, story: Story): Happening[] {
  const { when } = story;
  const zone = stage.baseOf(story.aircraft).zone;
  const at =
    'minutesAgo' in when
      ? minutesLater(stage.now, -when.minutesAgo)
      : instantAt(stage.now, zone, when.daysAgo, when.at);
  const name = `${stage.operator.key}/story/${story.aircraft}/${JSON.stringify(when)}`;
  const told: Told = { discrepancyId: '', placardId: null, deferred: false };
  const what = `${story.aircraft}, ${story.finding ?? story.words}`;
  const scene: Scene = { stage, story, zone, name, told, what };
  return [
    { at, what, play: () => report(scene, at) },
    ...story.then.flatMap((step, index) => playStep(scene, step, at, index)),
  ];
}

interface Scene {
  readonly stage: Stage;
  readonly story: Story;
  readonly zone: string;
  readonly name: string;
  readonly told: Told;
  readonly what: string;
}

/** The meters are read, the walk is walked where there was one, and the finding goes in. */
async function report({ stage, story, zone, name, told, what }: Scene, at: Date): Promise<void> {
  const ref = stage.person(story.by);
  const aircraftId = ids.aircraftId(stage.operator.key, story.aircraft);
  const plan = stage.aircraft(story.aircraft);
  await writeInOperator(stage.operatorId, (tx) =>
    readMeters(tx, { key: stage.operator.key, id: stage.operatorId }, [
      { plan, at, ttisTenths: ttisAt(hoursPast(plan, stage.now, zone), at), readById: ref.personId },
    ]),
  );
  const startedAt = minutesLater(at, -14);
  const walkaroundId = story.walk ? ids.demoId(`${name}/walk`) : null;
  if (walkaroundId) {
    const input = { requestId: walkaroundId, aircraftId, startedAt: startedAt.toISOString() };
    granted(await startWalkaround(ref, input, { now: at }), `${what}: walkaround`);
  }
  const item = story.equipment && plan.equipment.find((one) => one.function === story.equipment);
  const reported = await reportFinding(
    ref,
    {
      requestId: ids.demoId(`${name}/finding`),
      aircraftId,
      walkaroundId,
      station: story.station,
      findingKey: story.finding,
      kind: story.kind ?? null,
      jasc: story.jasc ?? null,
      equipmentId: item ? ids.equipmentId(stage.operator.key, story.aircraft, item.name) : null,
      inoperativeCount: story.inoperative ?? null,
      place: story.place,
      words: story.words,
      measurements: story.measured ?? {},
      foundAt: minutesLater(at, -3).toISOString(),
    },
    { now: at },
  );
  told.discrepancyId = granted(reported, what).discrepancyId;
  if (walkaroundId) {
    const stations = Object.fromEntries(
      STATION_KEYS.map((key) => [key, key === story.station ? 'finding' : 'good'] as const),
    );
    const input = { requestId: ids.demoId(`${name}/walk-done`), walkaroundId, stations };
    granted(await finishWalkaround(ref, input, { now: at }), `${what}: walkaround done`);
  }
}

function playStep(scene: Scene, step: Step, reportedAt: Date, index: number): Happening[] {
  const { stage, told, what } = scene;
  const at = minutesLater(reportedAt, step.after);
  const requestId = ids.demoId(`${scene.name}/step/${index}`);
  const ref = stage.person(step.by);
  const { password } = stage;
  const happening = (play: () => Promise<void>): Happening[] => [
    { at, what: `${what}: ${step.do} by ${step.by}`, play },
  ];
  const saying = `${what}: ${step.do} by ${step.by}`;
  switch (step.do) {
    case 'service':
      return happening(async () => {
        const oil = step.oilAddedTenths === undefined ? {} : { oilAddedTenths: step.oilAddedTenths };
        const input = { requestId, discrepancyId: told.discrepancyId, words: step.words, ...oil };
        granted(await recordServicing(ref, input, { now: at }), saying);
      });
    case 'judge':
      return happening(async () => {
        const { kind, jasc, severity, statement } = step;
        const input = {
          requestId,
          discrepancyId: told.discrepancyId,
          kind,
          jasc,
          severity,
          statement,
          equipmentId: null,
          inoperativeCount: null,
          password,
        };
        granted(await judgeSeverity(ref, input, { now: at }), saying);
      });
    case 'within-limits':
      return happening(async () => {
        const { measured, limitText, limitSource, statement } = step;
        const input = {
          requestId,
          discrepancyId: told.discrepancyId,
          measured,
          limitText,
          limitSource,
          ...(await readingsOf(scene, step)),
          statement,
          password,
        };
        granted(await findWithinLimits(ref, input, { now: at }), saying);
      });
    case 'defer':
      return happening(() => defer(scene, step, requestId, at));
    case 'placard':
      return happening(async () => {
        if (!told.placardId) throw new Error(`${saying}: nothing was deferred yet`);
        granted(await placePlacard(ref, { requestId, placardId: told.placardId }, { now: at }), saying);
      });
    case 'repair':
      return repair(scene, step, requestId, at);
  }
}

async function defer(scene: Scene, step: DeferStep, requestId: string, at: Date): Promise<void> {
  const { stage, told, zone } = scene;
  const saying = `${scene.what}: defer by ${step.by}`;
  const ref = stage.person(step.by);
  const begun = granted(
    await beginDeferral(
      ref,
      {
        requestId,
        discrepancyId: told.discrepancyId,
        nature: 'equipment',
        method: step.method,
        methodWords: step.methodWords,
        deactivationIsMaintenance: step.maintenance,
        placardWording: step.placard,
        placardLocation: step.location,
        noHazard: true,
        statement: step.statement,
        melProceduresDone: step.melProceduresDone ?? null,
        eltFirstRemovedOn: null,
        eltRecordComplete: null,
        password: stage.password,
      },
      { now: at },
    ),
    saying,
  );
  told.placardId = begun.placardId;
  told.deferred = true;
  if (!step.entry) return;
  const { deferralId } = begun;
  const work = await readInOperator(stage.operatorId, (tx) =>
    tx.maintenanceAction.findFirstOrThrow({ where: { operatorId: stage.operatorId, deferralId } }),
  );
  const done = minutesLater(at, 30);
  const entered = await enterWork(
    ref,
    {
      requestId: ids.demoId(`${requestId}/entry`),
      workId: work.id,
      description: step.entry.description,
      references: step.entry.references,
      majorAnswers: NOTHING_MAJOR,
      tests: NOTHING_TO_TEST,
      completedOn: dayOf(done, zone),
      performedBy: stage.nameOf(step.by),
      checkFlightNeeded: false,
      checkFlightReason: 'Nothing that could change how it flies.',
    },
    { now: done },
  );
  const { entryHash } = granted(entered, `${saying}: entry`);
  const sign = {
    requestId: ids.demoId(`${requestId}/signed`),
    workId: work.id,
    entryHash,
    placardRemoved: null,
    password: stage.password,
  };
  granted(await signWork(ref, sign, { now: minutesLater(done, 3) }), `${saying}: signature`);
}

/** Work begun; then entered and signed at its end; then, where it is owed, the check flight. */
function repair(scene: Scene, step: RepairStep, requestId: string, at: Date): Happening[] {
  const { stage, told, zone, what } = scene;
  const ref = stage.person(step.by);
  const { password } = stage;
  const done = minutesLater(at, step.takes);
  const flown = minutesLater(done, 45);
  const saying = `${what}: ${step.title}`;
  const begin: Happening = {
    at,
    what: saying,
    async play() {
      const input = {
        requestId,
        discrepancyId: told.discrepancyId,
        title: step.title,
        workKind: step.workKind,
        preventiveItem: step.preventiveItem ?? null,
        swapOnly: step.swapOnly ?? false,
      };
      granted(await startWork(ref, input, { now: at }), saying);
    },
  };
  const finish: Happening = {
    at: done,
    what: `${saying}: entry and signature`,
    async play() {
      const entered = await enterWork(
        ref,
        {
          requestId: ids.demoId(`${requestId}/entry`),
          workId: requestId,
          description: step.description,
          references: step.references,
          outcome: step.outcome ?? 'repaired',
          ...(step.lookedFor === undefined ? {} : { lookedFor: step.lookedFor }),
          parts: (step.parts ?? []).map((part) => ({ did: 'fitted', quantity: '1', ...part })),
          laborHours: step.hours ?? formatTenths(tenthsFromMinutes(step.takes)),
          ...majorSaid(step),
          tests: NOTHING_TO_TEST,
          completedOn: dayOf(done, zone),
          performedBy: stage.nameOf(step.by),
          checkFlightNeeded: step.checkFlight !== undefined,
          checkFlightReason: step.checkFlight?.reason ?? 'Nothing that could change how it flies.',
        },
        { now: done },
      );
      const { entryHash } = granted(entered, `${saying}: entry`);
      if (step.leave === 'entered') return;
      const placardRemoved = told.deferred ? true : null;
      const sign = { workId: requestId, entryHash, placardRemoved, password };
      if (step.refusedFirst) {
        const other = stage.person(step.refusedFirst);
        const input = { ...sign, requestId: ids.demoId(`${requestId}/refused`) };
        const tried = await signWork(other, input, { now: minutesLater(done, 2) });
        refused(tried, `${saying}: ${step.refusedFirst}`);
      }
      const input = { ...sign, requestId: ids.demoId(`${requestId}/signed`) };
      granted(await signWork(ref, input, { now: minutesLater(done, 4) }), `${saying}: signature`);
    },
  };
  const { checkFlight } = step;
  if (!checkFlight) return [begin, finish];
  return [
    begin,
    finish,
    {
      at: flown,
      what: `${saying}: check flight`,
      async play() {
        const input = {
          requestId: ids.demoId(`${requestId}/flown`),
          workId: requestId,
          words: checkFlight.words,
          flownOn: dayOf(flown, zone),
          password,
        };
        granted(await logCheckFlight(stage.person(checkFlight.by), input, { now: flown }), saying);
      },
    },
  ];
}

/** What was measured in a story, each number beside the stored limit of its aircraft. Nothing where none is stored. */
async function readingsOf({ stage, story }: Scene, { readings }: WithinLimitsStep) {
  if (!readings) return {};
  const { operatorId } = stage;
  const limits = await readInOperator(operatorId, (tx) =>
    tx.storedLimit.findMany({
      where: {
        operatorId,
        aircraftId: ids.aircraftId(stage.operator.key, story.aircraft),
        measurement: { in: Object.keys(readings) },
      },
      orderBy: { measurement: 'asc' },
    }),
  );
  const [first, ...rest] = limits.map(({ id, measurement }) => ({
    limitId: id,
    measuredValue: readings[measurement],
  }));
  return { ...first, ...(rest.length > 0 && { alsoMeasured: rest }) };
}

/** Every question of Appendix A(b), answered no. */
const NOTHING_MAJOR: Readonly<Record<string, boolean>> = Object.fromEntries(
  MAJOR_QUESTIONS.map(({ key }) => [key, false]),
);

/** No static line was opened, and no altitude could be in error: what whoever did the work in these stories answered. */
const NOTHING_TO_TEST = { staticOpened: false, altitudeError: false, transponderError: false };

/** What the entry of a repair says about Appendix A(b), and of a major one about its papers. */
function majorSaid({ major }: RepairStep) {
  if (!major) return { majorAnswers: NOTHING_MAJOR };
  const { done, form337, approvedData } = major;
  return {
    majorAnswers: { ...NOTHING_MAJOR, ...Object.fromEntries(done.map((key) => [key, true])) },
    majorRecord: 'form-337',
    form337,
    approvedData,
    limitsChanged: false,
    cabinTank: false,
  };
}
