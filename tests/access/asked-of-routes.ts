/** For every route that asks for a session: an address, or a message, about somebody's things that gets past the form. */
import { randomUUID } from 'node:crypto';
import { addProof } from '@/lib/people/add-proof';
import { addPhoto } from '@/lib/photos/add-photo';
import { readInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import { FROM_HERE, type Asked } from '../fixtures/asking';
import type { FreshDatabase } from '../fixtures/database';
import { NOW, type School } from '../fixtures/school';
import { signEverything, type SignedThings } from '../fixtures/signed-school';

export interface RouteThings extends SignedThings {
  readonly school: School;
  readonly writeUpId: string;
  readonly findingId: string;
  readonly photoId: string;
  readonly proofId: string;
  readonly certificateId: string;
  readonly walkaroundId: string;
}

/** One pixel, PNG (invented for the test). */
export const PIXEL = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
);
const own = () => ({ requestId: randomUUID() });

export async function thingsOfRoutes(school: School, database: FreshDatabase): Promise<RouteThings> {
  const now = { now: NOW };
  const { renter, manager } = school.people;
  const signed = await signEverything(school, database);
  const nick = valueOf(
    await reportFinding(renter, { ...nickedPropeller(school), ...own(), words: 'A nick.' }, now),
  );
  const photo = valueOf(await addPhoto(renter, { ...own(), findingId: nick.findingId, bytes: PIXEL }));
  const certificate = await readInOperator(school.operatorId, (tx) =>
    tx.certificate.findFirstOrThrow({ where: { personId: renter.personId } }),
  );
  const about = { about: 'certificate', aboutId: certificate.id } as const;
  const proof = valueOf(await addProof(manager, { ...own(), ...about, bytes: PIXEL }, now));
  const begun = { ...own(), aircraftId: school.aircraftId, startedAt: NOW.toISOString() };
  const { walkaroundId } = valueOf(await startWalkaround(renter, begun, now));
  return {
    ...signed,
    school,
    writeUpId: nick.discrepancyId,
    findingId: nick.findingId,
    photoId: photo.photoId,
    proofId: proof.proofId,
    certificateId: certificate.id,
    walkaroundId,
  };
}

export interface RouteAct {
  /** Address and what else is sent. */
  readonly ask: (things: RouteThings) => readonly [where: string, asked: Asked];
  /** Answers to whoever may, about one's own; 200 unless said. */
  readonly own?: readonly number[];
  /** Answers to whoever may, about another school's; 404 unless said. Left out of lists, which are about nothing. */
  readonly foreign?: readonly number[] | null;
}

const get = (where: (things: RouteThings) => string, params?: (things: RouteThings) => Asked['params']) =>
  ((things) => [
    where(things),
    { ...(params && { params: params(things) ?? {} }) },
  ]) satisfies RouteAct['ask'];
const message =
  (where: string, content: (things: RouteThings) => object): RouteAct['ask'] =>
  (things) => [
    where,
    {
      method: 'POST',
      headers: { ...FROM_HERE, 'content-type': 'application/json' },
      body: JSON.stringify({ version: 2, ...own(), ...content(things) }),
    },
  ];
const bytes = (
  where: (things: RouteThings) => string,
  headers: (things: RouteThings) => Record<string, string>,
) =>
  ((things) => [
    where(things),
    { method: 'POST', headers: { ...FROM_HERE, ...headers(things) }, body: PIXEL },
  ]) satisfies RouteAct['ask'];

export const ASKED: Readonly<Record<string, RouteAct>> = {
  'GET /api/live': { ask: get(() => '/api/live'), foreign: null },
  'GET /desk/contact': { ask: get(() => '/desk/contact'), own: [204], foreign: null },
  'GET /desk/alarms': { ask: get(() => '/desk/alarms'), foreign: null },
  'GET /api/ramp/pack': { ask: get(() => '/api/ramp/pack'), foreign: null },
  'GET /api/export/[file]': {
    ask: get(
      () => '/api/export/write-ups.csv',
      () => ({ file: 'write-ups.csv' }),
    ),
    foreign: null,
  },
  'GET /api/insight/[figure]': {
    ask: get(
      ({ school }) => `/api/insight/availability?aircraft=${school.aircraftId}`,
      () => ({ figure: 'availability' }),
    ),
  },
  'GET /api/papers/deferrals': { ask: get((t) => `/api/papers/deferrals?aircraft=${t.school.aircraftId}`) },
  'GET /api/papers/placards': { ask: get((t) => `/api/papers/placards?aircraft=${t.school.aircraftId}`) },
  'GET /api/papers/entry': { ask: get((t) => `/api/papers/entry?work=${t.workId}`) },
  'GET /api/papers/inspection': { ask: get((t) => `/api/papers/inspection?id=${t.inspectionId}`) },
  'GET /api/papers/list': { ask: get((t) => `/api/papers/list?id=${t.listId}`) },
  'GET /api/papers/malfunction': { ask: get((t) => `/api/papers/malfunction?writeUp=${t.writeUpId}`) },
  // Of somebody else only for a manager, whoever they are.
  'GET /api/personal-data': {
    ask: get(({ school }) => `/api/personal-data?person=${school.people.renter.personId}`),
    foreign: [403, 404],
  },
  'GET /api/photos/[id]': {
    ask: get(
      (t) => `/api/photos/${t.photoId}`,
      (t) => ({ id: t.photoId }),
    ),
  },
  'GET /api/proofs/[id]': {
    ask: get(
      (t) => `/api/proofs/${t.proofId}`,
      (t) => ({ id: t.proofId }),
    ),
  },
  'POST /api/proofs': {
    ask: bytes(
      (t) => `/api/proofs?about=certificate&id=${t.certificateId}&request=${randomUUID()}`,
      () => ({ 'content-type': 'image/png' }),
    ),
  },
  'POST /api/sync/findings': {
    ask: message('/api/sync/findings', ({ school }) => ({ ...nickedPropeller(school), version: 1 })),
  },
  'POST /api/sync/observations': {
    ask: message('/api/sync/observations', (t) => ({
      discrepancyId: t.writeUpId,
      walkaroundId: null,
      station: 'propeller',
      itemKey: null,
      words: 'Still there.',
      measurements: {},
      foundAt: NOW.toISOString(),
      phase: 'before-flight',
    })),
  },
  'POST /api/sync/walkarounds': {
    ask: message('/api/sync/walkarounds', ({ school }) => ({
      aircraftId: school.aircraftId,
      startedAt: NOW.toISOString(),
      planId: null,
    })),
  },
  // Ended once; the next is told that it has been.
  'POST /api/sync/walkarounds/finish': {
    ask: message('/api/sync/walkarounds/finish', (t) => ({
      version: 1,
      walkaroundId: t.walkaroundId,
      stations: { tail: 'good' },
    })),
    own: [200, 409],
  },
  // Read once; the next is told that they stand there.
  'POST /api/sync/meters': {
    ask: message('/api/sync/meters', (t) => ({
      releaseId: t.releaseId,
      moment: 'out',
      hobbsTenths: 21234,
      tachTenths: 19876,
      readAt: NOW.toISOString(),
    })),
    own: [200, 409],
  },
  'POST /api/sync/photos': {
    ask: bytes(
      () => '/api/sync/photos',
      (t) => ({ 'x-request-id': randomUUID(), 'x-finding-id': t.findingId, 'content-type': 'image/png' }),
    ),
  },
};
