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
import { addPhoto } from '@/lib/findings/add-photo';
import { finishWalkaround } from '@/lib/findings/finish-walkaround';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { readPhoto } from '@/lib/findings/read-photo';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { startWalkaround } from '@/lib/findings/start-walkaround';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readBoard } from '@/lib/fleet/read-board';
import { answerFlight } from '@/lib/releases/answer-flight';
import { readReleases } from '@/lib/releases/read-desk';
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
  'finding.report': about(reportFinding, ({ school }) => nickedPropeller(school)),
  'photo.add': about(
    (ref, raw) => addPhoto(ref, raw as Parameters<typeof addPhoto>[1]),
    ({ findingId }) => ({ ...own(), findingId, bytes: PIXEL }),
  ),
  'servicing.record': about(recordServicing, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    words: 'Oil added.',
  })),
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
};

/** Gives a school one of everything that acts can be about. */
export async function furnish(school: School): Promise<Things> {
  const now = { now: NOW };
  const { renter, powerplant, airframe } = school.people;
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
  return {
    school,
    writeUpId: nick.discrepancyId,
    findingId: nick.findingId,
    placardId,
    workId,
    walkaroundId,
    photoId: valueOf(photo).photoId,
  };
}
