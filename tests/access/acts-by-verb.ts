/** For every verb of the policy: the service that carries it, and an input about somebody's things that gets past the form. */
import { randomUUID } from 'node:crypto';
import type { ActorRef } from '@/lib/access/actor';
import type { Verb } from '@/lib/access/policy';
import type { CallOptions } from '@/lib/access/service';
import type { Result } from '@/lib/problems';
import { addWebhook } from '@/lib/feeds/add-webhook';
import { endKey } from '@/lib/feeds/end-key';
import { endWebhook } from '@/lib/feeds/end-webhook';
import { readExportPage } from '@/lib/feeds/export/read-set';
import { issueKey } from '@/lib/feeds/issue-key';
import { readFeeds } from '@/lib/feeds/read-feeds';
import { sendAgain } from '@/lib/feeds/send-again';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { extendInterval } from '@/lib/determinations/extend-interval';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { addObservation } from '@/lib/findings/add-observation';
import { addPhoto } from '@/lib/photos/add-photo';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { markNoticesRead } from '@/lib/notices/mark-read';
import { readNotices } from '@/lib/notices/read-notices';
import { readPhoto } from '@/lib/photos/read-photo';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { readLists } from '@/lib/walkarounds/read-lists';
import { readRecords } from '@/lib/records/read-records';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { writeList } from '@/lib/walkarounds/write-list';
import { STARTING_LIST } from '@/lib/rules/walkaround/starting-list';
import { readAirports } from '@/lib/airports/read-airports';
import { addBase } from '@/lib/bases/add-base';
import { changeBase } from '@/lib/bases/change-base';
import { readBases } from '@/lib/bases/read-bases';
import { checkImport } from '@/lib/flights/import/check-import';
import { importPlans } from '@/lib/flights/import/import-plans';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { changeVisit } from '@/lib/visits/change-visit';
import { closeVisit } from '@/lib/visits/close-visit';
import { openVisit } from '@/lib/visits/open-visit';
import { readVisit } from '@/lib/visits/read-visit';
import { readDue } from '@/lib/due/read-due';
import { readInsight } from '@/lib/insight/read-insight';
import { addRequirement } from '@/lib/fleet/add-requirement';
import { endRequirement } from '@/lib/fleet/end-requirement';
import { renewPaper } from '@/lib/fleet/renew-paper';
import { readTrends } from '@/lib/trends/read-trends';
import { readInOperator } from '@/lib/db/scope';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readDay } from '@/lib/fleet/read-day';
import { readBoard } from '@/lib/fleet/read-board';
import { answerFlight } from '@/lib/releases/answer-flight';
import { correctMeters } from '@/lib/releases/correct-meters';
import { readReleases } from '@/lib/releases/read-desk';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { acceptRelease } from '@/lib/releases/accept-release';
import { logFlight } from '@/lib/releases/log-flight';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { releaseFlight } from '@/lib/releases/release-flight';
import { readDeferralList } from '@/lib/papers/read-deferrals';
import { inspectForPermit } from '@/lib/permits/inspect-for-permit';
import { readPermit } from '@/lib/permits/read-permit';
import { recordPermit } from '@/lib/permits/record-permit';
import { beginInspection } from '@/lib/inspections/begin-inspection';
import { disposeDeferral } from '@/lib/inspections/dispose-deferral';
import { enterInspection } from '@/lib/inspections/enter-inspection';
import { giveUpInspection } from '@/lib/inspections/give-up-inspection';
import { readInspection } from '@/lib/inspections/read-inspection';
import { recordEltUse } from '@/lib/inspections/record-elt-use';
import { recordRequirement } from '@/lib/inspections/record-requirement';
import { recordVorCheck } from '@/lib/inspections/record-vor-check';
import { signInspection } from '@/lib/inspections/sign-inspection';
import { signList } from '@/lib/inspections/sign-list';
import { startRequirementWork } from '@/lib/inspections/start-requirement-work';
import { abandonWork } from '@/lib/work/abandon-work';
import { correctWork } from '@/lib/work/correct-work';
import { enterWork } from '@/lib/work/enter-work';
import { logCheckFlight } from '@/lib/work/log-check-flight';
import { readBench } from '@/lib/work/read-bench';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  dayLesson,
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  permitOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import { BASE, trainer } from '../fixtures/aircraft';
import {
  beginOf,
  disposalOf,
  inspectionEntryOf,
  listOf,
  paperRecordOf,
  requirementsOf,
  vorCheckOf,
} from '../fixtures/inspections';
import { NOW, PASSWORD, type School } from '../fixtures/school';

export type Call = (ref: ActorRef | null, raw: unknown, options?: CallOptions) => Promise<Result<unknown>>;

/** Things of one school that acts are about. */
export interface Things {
  readonly school: School;
  readonly writeUpId: string;
  readonly findingId: string;
  readonly placardId: string;
  readonly workId: string;
  readonly walkaroundId: string;
  readonly photoId: string;
  /** Released with the renter as pilot in command. */
  readonly releaseId: string;
  /** The reading at departure of that release. */
  readonly readingId: string;
  readonly noticeId: string;
  readonly keyId: string;
  readonly webhookId: string;
  /** A delivery to it that waits. */
  readonly deliveryId: string;
  readonly deferralId: string;
  /** A special flight permit that asks for an inspection. */
  readonly permitId: string;
  /** A directive, which a person may end. */
  readonly directiveId: string;
  readonly paperId: string;
  readonly visitId: string;
  readonly plannedFlightId: string;
  /** Begun and given up, so that no act on it depends on what the meters say meanwhile. */
  readonly inspectionId: string;
  /** What recurs, by kind. */
  readonly due: ReadonlyMap<string, string>;
}

interface Act {
  readonly call: Call;
  readonly input: (things: Things) => unknown;
  /** False for lists, which are about nothing in particular. */
  readonly aboutThings: boolean;
}

/** One pixel, PNG (invented for the test). */
const PIXEL = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
);

const about = (call: Call, input: Act['input']): Act => ({ call, input, aboutThings: true });
const list = (call: Call): Act => ({ call, input: () => ({}), aboutThings: false });
const own = () => ({ requestId: randomUUID() });

export const ACTS: Readonly<Record<Verb, Act>> = {
  'fleet.read': list(readBoard),
  'feeds.read': list(readFeeds),
  'export.read': { call: readExportPage, input: () => ({ set: 'aircraft' }), aboutThings: false },
  'key.issue': { call: issueKey, input: () => keyOf('Wall screen'), aboutThings: false },
  'key.end': about(endKey, ({ keyId }) => ({ ...own(), keyId })),
  'webhook.add': {
    call: addWebhook,
    input: () => webhookOf('https://hooks.invented.example/'),
    aboutThings: false,
  },
  'webhook.end': about(endWebhook, ({ webhookId }) => ({ ...own(), webhookId })),
  'webhook.send-again': about(sendAgain, ({ deliveryId }) => ({ ...own(), deliveryId })),
  'own-findings.read': list(readOwnFindings),
  'own-notices.read': list(readNotices),
  'walkaround-list.read': list(readLists),
  'bench.read': list(readBench),
  'release.read': list(readReleases),
  'aircraft.read': about(readAircraftFile, ({ school }) => ({ aircraftId: school.aircraftId })),
  'day.read': about(readDay, ({ school }) => ({ aircraftId: school.aircraftId })),
  'write-up.read': about(readWriteUp, ({ writeUpId }) => ({ discrepancyId: writeUpId })),
  'photo.read': about(readPhoto, ({ photoId }) => ({ photoId })),
  'flight.answer': about(answerFlight, ({ school }) => dayLesson(school)),
  'walkaround.start': about(startWalkaround, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    startedAt: NOW.toISOString(),
  })),
  'walkaround.finish': about(finishWalkaround, ({ walkaroundId }) => ({
    ...own(),
    walkaroundId,
    stations: { tail: 'good' },
  })),
  'walkaround-list.write': about(writeList, ({ school }) => ({
    ...own(),
    typeId: school.typeId,
    fromVersion: 0,
    list: STARTING_LIST,
    why: 'Fitted to the type.',
  })),
  'finding.report': about(reportFinding, ({ school }) => nickedPropeller(school)),
  'observation.add': about(addObservation, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    walkaroundId: null,
    station: 'propeller',
    itemKey: null,
    words: 'Still there.',
    measurements: {},
    foundAt: NOW.toISOString(),
    phase: 'before-flight',
  })),
  'photo.add': about(
    (ref, raw) => addPhoto(ref, raw as Parameters<typeof addPhoto>[1]),
    ({ findingId }) => ({ ...own(), findingId, bytes: PIXEL }),
  ),
  'servicing.record': about(recordServicing, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    words: 'Oil added.',
  })),
  'notice.mark-read': about(markNoticesRead, ({ noticeId }) => ({ ...own(), noticeIds: [noticeId] })),
  'severity.judge': about(judgeSeverity, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    kind: 'damage',
    jasc: '6111',
    equipmentId: null,
    inoperativeCount: null,
    severity: 'grounding',
    statement: 'Sharp.',
    password: PASSWORD,
  })),
  'within-limits.find': about(findWithinLimits, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    measured: '0.010 in',
    limitText: '0.031 in',
    limitSource: 'Invented manual',
    statement: 'Within.',
    password: PASSWORD,
  })),
  'deferral.begin': about(beginDeferral, ({ writeUpId }) => deferralOf(writeUpId)),
  'deferral.extend': about(extendInterval, ({ deferralId }) => ({
    ...own(),
    deferralId,
    until: '2026-12-10',
    reason: 'Bulb on order.',
    password: PASSWORD,
  })),
  'records.read': about(readRecords, ({ school }) => ({ aircraftId: school.aircraftId })),
  'paper.read': about(readDeferralList, ({ school }) => ({ aircraftId: school.aircraftId })),
  'permit.record': about(recordPermit, ({ school, writeUpId }) => permitOf(school, [writeUpId])),
  'permit.inspect': about(inspectForPermit, ({ permitId }) => ({
    ...own(),
    permitId,
    safe: true,
    statement: 'Looked at the blade.',
    password: PASSWORD,
  })),
  'permit.read': about(readPermit, ({ permitId }) => ({ permitId })),
  'placard.place': about(placePlacard, ({ placardId }) => ({ ...own(), placardId })),
  'work.start': about(startWork, ({ writeUpId }) => startOf(writeUpId)),
  'work.enter': about(enterWork, ({ workId }) => entryOf(workId, 'Somebody')),
  'work.sign': about(signWork, ({ workId }) => signatureOf(workId, '0'.repeat(64))),
  'work.abandon': about(abandonWork, ({ workId }) => ({ ...own(), workId, words: 'Wrong aircraft.' })),
  'work.correct': about(correctWork, ({ workId }) => ({ ...own(), workId, why: 'Wrong part number.' })),
  'check-flight.log': about(logCheckFlight, ({ workId }) => ({
    ...own(),
    workId,
    words: 'Flew it.',
    flownOn: '2026-11-25',
    password: PASSWORD,
  })),
  'planned-flights.read': list(readPlannedFlights),
  'flight.plan': about(planFlight, ({ school }) => planOf(school)),
  'airport.find': { call: readAirports, input: () => ({ text: 'KORD' }), aboutThings: false },
  'base.read': list(readBases),
  'base.add': {
    call: addBase,
    input: () => ({ ...own(), ...BASE_FACTS, ident: randomUUID().slice(0, 7), airportIdent: '' }),
    aboutThings: false,
  },
  'base.change': about(changeBase, ({ school }) => ({ ...own(), ...BASE_FACTS, baseId: school.baseId })),
  'plan.check-import': { call: checkImport, input: () => PLAN_FILE, aboutThings: false },
  'plan.import': { call: importPlans, input: () => ({ ...own(), ...PLAN_FILE }), aboutThings: false },
  'flight.cancel-plan': about(cancelPlannedFlight, ({ plannedFlightId }) => ({ ...own(), plannedFlightId })),
  'visit.read': about(readVisit, ({ visitId }) => ({ visitId })),
  'visit.open': about(openVisit, ({ school, writeUpId }) => visitOf(school, writeUpId)),
  'visit.change': about(changeVisit, ({ visitId }) => ({
    ...own(),
    visitId,
    title: 'Propeller, another day',
    words: '',
    plannedOn: null,
    addDiscrepancyIds: [],
    addRequirementIds: [],
    removeItemIds: [],
  })),
  'visit.close': about(closeVisit, ({ visitId }) => ({ ...own(), visitId })),
  'due.read': list(readDue),
  'insight.read': about(readInsight, ({ school }) => ({ aircraftId: school.aircraftId })),
  'trends.read': about(readTrends, ({ school }) => ({ aircraftId: school.aircraftId })),
  'requirement.add': about(addRequirement, ({ school }) => directiveOf(school)),
  'requirement.end': about(endRequirement, ({ directiveId }) => ({
    ...own(),
    requirementId: directiveId,
    why: 'Superseded.',
    reference: 'Invented directive 10',
    password: PASSWORD,
  })),
  'inspection.read': about(readInspection, ({ inspectionId }) => ({ inspectionId })),
  'inspection.begin': about(beginInspection, ({ school, due }) =>
    beginOf(school, 'annual', [due.get('annual') ?? '']),
  ),
  'inspection.enter': about(enterInspection, ({ inspectionId }) => inspectionEntryOf(inspectionId, '4512.3')),
  'inspection.list': about(signList, ({ inspectionId }) => listOf(inspectionId)),
  'inspection.sign': about(signInspection, ({ inspectionId }) => ({
    ...own(),
    inspectionId,
    part: 'airframe',
    airworthy: true,
    madeByMe: true,
    entryHash: '0'.repeat(64),
    password: PASSWORD,
  })),
  'inspection.give-up': about(giveUpInspection, ({ inspectionId }) => ({
    ...own(),
    inspectionId,
    words: 'Wrong aircraft.',
  })),
  'deferral.dispose': about(disposeDeferral, ({ deferralId, inspectionId }) =>
    disposalOf(deferralId, { inspectionId }),
  ),
  'requirement.start-work': about(startRequirementWork, ({ due }) => ({
    ...own(),
    requirementId: due.get('transponder'),
    title: 'Transponder test',
    workKind: null,
    preventiveItem: null,
    jasc: null,
    swapOnly: null,
  })),
  'requirement.record': about(recordRequirement, ({ due }) =>
    paperRecordOf(due.get('elt-inspection') ?? '', '2026-11-20', '4500.0'),
  ),
  'vor-check.record': about(recordVorCheck, ({ due }) => vorCheckOf(due.get('vor-check') ?? '')),
  'elt-use.record': about(recordEltUse, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    usedOn: '2026-11-25',
    minutes: 1,
    words: 'Test.',
  })),
  'paper.renew': about(renewPaper, ({ paperId }) => ({
    ...own(),
    paperId,
    validThrough: null,
    expires: false,
    reference: 'Second edition',
    issuedOn: null,
    aboard: true,
  })),
  'flight.release': about(releaseFlight, ({ school }) => ({
    ...dayLesson(school),
    ...own(),
    factsVersion: 1,
    limitsPassedOn: true,
  })),
  // The release of the furnished school went void with the nick that was written up after it; the renter is its pilot.
  'flight.accept': about(acceptRelease, ({ releaseId }) => ({
    ...own(),
    releaseId,
    answerHash: '0'.repeat(64),
    limitsRead: true,
    statementConfirmed: true,
    password: PASSWORD,
  })),
  'flight.log': about(logFlight, ({ releaseId }) => ({
    ...own(),
    releaseId,
    what: 'closed',
    at: 'now',
    words: 'Not flown.',
  })),
  'flight.withdraw': about(withdrawRelease, ({ releaseId }) => ({
    ...own(),
    releaseId,
    words: 'Another aircraft.',
  })),
  'meters.read-out': about(readMetersOut, ({ releaseId }) => metersOf(releaseId, 'out')),
  'meters.read-in': about(readMetersIn, ({ releaseId }) => metersOf(releaseId, 'in')),
  'meters.correct': about(correctMeters, ({ readingId }) => ({
    ...own(),
    readingId,
    hobbsTenths: 21235,
    tachTenths: 19876,
    back: null,
    why: 'Read between two marks.',
  })),
};

const keyOf = (name: string) => ({ ...own(), name, scopes: ['fleet:read'], lastDay: '', password: PASSWORD });

const webhookOf = (url: string) => ({ ...own(), name: 'Receiver', url, events: ['write-up.opened'] });

const directiveOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  kind: 'directive',
  name: 'Heat valve',
  reference: 'Invented directive 1',
  binding: null,
  intervalMonths: '12',
  intervalDays: '',
  intervalHours: '100',
  fixedExpiry: '',
});

/** The fixtures' base as it is, so that nothing about it changes. */
const BASE_FACTS = {
  name: 'Home',
  latitudeDeg: String(BASE.latitudeDeg),
  longitudeDeg: String(BASE.longitudeDeg),
  zone: BASE.zone,
  zoneConfirmed: true,
  repairAvailable: 'yes',
  transponderAirspace: 'no',
  adsbAirspace: 'no',
  controlledAirspace: 'yes',
};

/** One flight of the fixtures' trainer, on a day no other act is about. */
const PLAN_FILE = {
  kind: 'csv',
  fileName: 'plan.csv',
  text: `aircraft,depart,arrive,id\r\n${trainer().registration},2026-12-20 10:00,2026-12-20 11:00,1\r\n`,
};

const planOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  pilotId: null,
  departLocal: '2026-11-26T10:00',
  arriveLocal: '2026-11-26T11:00',
  plannedHours: '',
  words: '',
});

const visitOf = (school: School, writeUpId: string) => ({
  ...own(),
  aircraftId: school.aircraftId,
  title: 'Propeller',
  words: '',
  plannedOn: null,
  discrepancyIds: [writeUpId],
  requirementIds: [],
});

/** The same figures whoever asks: the second to send them is told that they stand there already, or were corrected. */
const metersOf = (releaseId: string, moment: 'out' | 'in') => ({
  ...own(),
  releaseId,
  moment,
  // The return leaves room for the correction of the departure.
  hobbsTenths: moment === 'out' ? 21234 : 21235,
  tachTenths: 19876,
  readAt: NOW.toISOString(),
});

/** Gives a school one of everything that acts can be about. */
export async function furnish(school: School): Promise<Things> {
  const now = { now: NOW };
  const { renter, powerplant, airframe, dispatcher } = school.people;
  // Before anything is written up: a grounded aircraft is not released.
  const released = await releaseFlight(
    dispatcher,
    { ...dayLesson(school), ...own(), factsVersion: 1, limitsPassedOn: false },
    now,
  );
  const { walkaroundId } = valueOf(
    await startWalkaround(
      renter,
      { ...own(), aircraftId: school.aircraftId, startedAt: NOW.toISOString() },
      now,
    ),
  );
  // Signing secrets of webhooks are sealed with it.
  process.env['NEXTAUTH_SECRET'] ??= 'a secret for tests only, of enough characters';
  const { manager } = school.people;
  const { keyId } = valueOf(await issueKey(manager, keyOf('Door'), now));
  const { webhookId } = valueOf(await addWebhook(manager, webhookOf('https://told.invented.example/'), now));
  const light = valueOf(await reportFinding(renter, deadLandingLight(school), now));
  const { placardId, deferralId } = valueOf(
    await beginDeferral(airframe, deferralOf(light.discrepancyId), now),
  );
  const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now));
  const photo = await addPhoto(renter, { ...own(), findingId: nick.findingId, bytes: PIXEL });
  const { workId } = valueOf(await startWork(powerplant, startOf(nick.discrepancyId), now));
  const { permitId } = valueOf(
    await recordPermit(school.people.manager, permitOf(school, [nick.discrepancyId]), now),
  );
  const { releaseId } = valueOf(released);
  const departure = metersOf(releaseId, 'out');
  valueOf(await readMetersOut(renter, departure, now));
  const { requirementId: directiveId } = valueOf(await addRequirement(airframe, directiveOf(school), now));
  const manual = await readInOperator(school.operatorId, (tx) =>
    tx.paper.findFirstOrThrow({ where: { aircraftId: school.aircraftId, kind: 'flight-manual' } }),
  );
  const { visitId } = valueOf(await openVisit(airframe, visitOf(school, nick.discrepancyId), now));
  const { plannedFlightId } = valueOf(await planFlight(dispatcher, planOf(school), now));
  const due = await requirementsOf(school);
  const { inspectionId } = valueOf(
    await beginInspection(airframe, beginOf(school, 'hundred-hour', [due.get('hundred-hour') ?? '']), now),
  );
  valueOf(await giveUpInspection(airframe, { ...own(), inspectionId, words: 'Wrong aircraft.' }, now));
  return {
    school,
    writeUpId: nick.discrepancyId,
    findingId: nick.findingId,
    placardId,
    deferralId,
    permitId,
    workId,
    directiveId,
    paperId: manual.id,
    visitId,
    plannedFlightId,
    inspectionId,
    due,
    walkaroundId,
    photoId: valueOf(photo).photoId,
    releaseId,
    // A reading has the number of the request that wrote it.
    readingId: departure.requestId,
    // The deferral was told to whoever wrote the light up.
    noticeId: valueOf(await readNotices(renter, {}, now)).unread[0]?.id ?? '',
    keyId,
    webhookId,
    deliveryId: valueOf(await readFeeds(manager, {}, now)).webhooks[0]?.deliveries[0]?.id ?? '',
  };
}
