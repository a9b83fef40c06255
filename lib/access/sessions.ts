import { randomUUID } from 'node:crypto';
import type { Tx } from '../db/client';
import { noteInOperator } from '../db/scope';
import { log } from '../log';
import type { ActorRef } from './actor';
import { deviceInWords } from './device';

/** A working day. After that one signs in again; forms keep what was typed meanwhile. */
export const SESSION_HOURS = 12;

/** With what, besides the password, somebody signed in. */
export const SECOND_FACTORS = ['none', 'totp', 'passkey', 'recovery'] as const;
export type SecondFactorUsed = (typeof SECOND_FACTORS)[number];

/** A session as the database knows it at this moment. */
export interface LiveSession {
  readonly id: string;
  readonly secondFactor: SecondFactorUsed;
  readonly lastSeenAt: Date;
}

interface Begun {
  readonly userAgent: string | null | undefined;
  readonly secondFactor: SecondFactorUsed;
  readonly now: Date;
}

/** Writes a new session; every sign-in makes its own, so that nobody can be handed one beforehand. Gives its id. */
export async function beginSession(tx: Tx, ref: ActorRef, begun: Begun): Promise<string> {
  const { userAgent, secondFactor, now } = begun;
  const id = randomUUID();
  await tx.session.create({
    data: {
      id,
      operatorId: ref.operatorId,
      personId: ref.personId,
      beganAt: now,
      lastSeenAt: now,
      expiresAt: new Date(now.getTime() + SESSION_HOURS * 3_600_000),
      device: deviceInWords(userAgent),
      secondFactor,
    },
  });
  return id;
}

/** The session when it still counts: this person's, neither ended nor over. */
export async function liveSession(
  tx: Tx,
  ref: ActorRef & { readonly sessionId: string },
  now: Date,
): Promise<LiveSession | null> {
  const { operatorId, personId, sessionId } = ref;
  const row = await tx.session.findUnique({ where: { operatorId_id: { operatorId, id: sessionId } } });
  if (!row || row.personId !== personId || row.endedAt || row.expiresAt <= now) return null;
  const secondFactor = SECOND_FACTORS.find((kind) => kind === row.secondFactor) ?? 'none';
  return { id: row.id, secondFactor, lastSeenAt: row.lastSeenAt };
}

const FIVE_MINUTES = 5 * 60_000;

/**
 * Notes that a session is in use, every five minutes at most and without standing in line: no decision hangs on it, and
 * failing costs nobody their answer.
 */
export async function noteSeen(operatorId: string, session: LiveSession, now: Date): Promise<void> {
  if (now.getTime() - session.lastSeenAt.getTime() < FIVE_MINUTES) return;
  try {
    await noteInOperator(operatorId, (tx) =>
      tx.session.updateMany({
        where: { operatorId, id: session.id, endedAt: null, lastSeenAt: { lt: now } },
        data: { lastSeenAt: now },
      }),
    );
  } catch (error) {
    log.warn('set aside', { about: 'session.seen' }, error);
  }
}

interface Ending {
  readonly operatorId: string;
  readonly personId: string;
  readonly byId: string;
  readonly now: Date;
  /** The one that goes on. */
  readonly except?: string | undefined;
}

/** Ends the sessions of somebody, all or all but one. Gives how many there were. */
export async function endSessions(tx: Tx, ending: Ending): Promise<number> {
  const { operatorId, personId, byId, now, except } = ending;
  const { count } = await tx.session.updateMany({
    where: {
      operatorId,
      personId,
      endedAt: null,
      expiresAt: { gt: now },
      ...(except === undefined ? {} : { id: { not: except } }),
    },
    data: { endedAt: now, endedById: byId },
  });
  return count;
}

/** Signing out: the session ends on the server too, so that a copied cookie is worth nothing from then on. */
export async function endOwnSession(ref: ActorRef, now: Date): Promise<void> {
  const { operatorId, personId, sessionId } = ref;
  if (sessionId === undefined) return;
  await noteInOperator(operatorId, (tx) =>
    tx.session.updateMany({
      where: { operatorId, personId, id: sessionId, endedAt: null },
      data: { endedAt: now, endedById: personId },
    }),
  );
}
