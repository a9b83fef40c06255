/** For every verb of the policy: the service that carries it, and an input about somebody's things that gets past the form. */
import { randomUUID } from 'node:crypto';
import type { ActorRef } from '@/lib/access/actor';
import type { Verb } from '@/lib/access/policy';
import type { CallOptions } from '@/lib/access/service';
import type { Result } from '@/lib/problems';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
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
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { writeList } from '@/lib/walkarounds/write-list';
import { STARTING_LIST } from '@/lib/rules/walkaround/starting-list';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readBoard } from '@/lib/fleet/read-board';
import { answerFlight } from '@/lib/releases/answer-flight';
import { correctMeters } from '@/lib/releases/correct-meters';
import { readReleases } from '@/lib/releases/read-desk';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { abandonWork } from '@/lib/work/abandon-work';
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
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
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
  'own-findings.read': list(readOwnFindings),
  'own-notices.read': list(readNotices),
  'walkaround-list.read': list(readLists),
  'bench.read': list(readBench),
  'release.read': list(readReleases),
  'aircraft.read': about(readAircraftFile, ({ school }) => ({ aircraftId: school.aircraftId })),
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
  'placard.place': about(placePlacard, ({ placardId }) => ({ ...own(), placardId })),
  'work.start': about(startWork, ({ writeUpId }) => startOf(writeUpId)),
  'work.enter': about(enterWork, ({ workId }) => entryOf(workId, 'Somebody')),
  'work.sign': about(signWork, ({ workId }) => signatureOf(workId, '0'.repeat(64))),
  'work.abandon': about(abandonWork, ({ workId }) => ({ ...own(), workId, words: 'Wrong aircraft.' })),
  'check-flight.log': about(logCheckFlight, ({ workId }) => ({
    ...own(),
    workId,
    words: 'Flew it.',
    flownOn: '2026-11-25',
    password: PASSWORD,
  })),
  'flight.release': about(releaseFlight, ({ school }) => ({
    ...dayLesson(school),
    ...own(),
    factsVersion: 1,
    limitsPassedOn: true,
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
  const light = valueOf(await reportFinding(renter, deadLandingLight(school), now));
  const { placardId } = valueOf(await beginDeferral(airframe, deferralOf(light.discrepancyId), now));
  const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now));
  const photo = await addPhoto(renter, { ...own(), findingId: nick.findingId, bytes: PIXEL });
  const { workId } = valueOf(await startWork(powerplant, startOf(nick.discrepancyId), now));
  const { releaseId } = valueOf(released);
  const departure = metersOf(releaseId, 'out');
  valueOf(await readMetersOut(renter, departure, now));
  return {
    school,
    writeUpId: nick.discrepancyId,
    findingId: nick.findingId,
    placardId,
    workId,
    walkaroundId,
    photoId: valueOf(photo).photoId,
    releaseId,
    // A reading has the number of the request that wrote it.
    readingId: departure.requestId,
    // The deferral was told to whoever wrote the light up.
    noticeId: valueOf(await readNotices(renter, {}, now)).unread[0]?.id ?? '',
  };
}
