import type { Context } from '../access/service';
import { giveNotices } from './give-notices';
import type { WriteUpNoticeKind } from './in-words';
import { letterSettingsOrNone, type LetterSettings } from './letter-settings';
import { writeLetter } from './write-letter';

/** What happened to a write-up. */
export interface Telling {
  readonly discrepancyId: string;
  readonly what: WriteUpNoticeKind;
  /** The determination, deferral or sign-off; nobody is told of one twice. */
  readonly eventId: string;
  readonly byName: string;
  /** In the words of whoever did it, as they were written. */
  readonly words: string;
}

/**
 * Gives word of an act to everybody whose write-up or observation it is about, in the act's own transaction: told and done,
 * or neither. Not to whoever did it, and not to somebody who left. Where letters are switched on, each notice has its
 * letter beside it, to be sent afterwards.
 */
export async function tellReporters(context: Context, telling: Telling): Promise<void> {
  const { tx, operatorId, actor } = context;
  const { discrepancyId, eventId } = telling;
  const people = await reportersOf(context, discrepancyId);
  const told = await tx.notice.findMany({ where: { operatorId, eventId }, select: { personId: true } });
  const already = new Set([actor.personId, ...told.map(({ personId }) => personId)]);
  const fresh = people.filter(({ id }) => !already.has(id));
  if (fresh.length === 0) return;
  const settings = letterSettingsOrNone();
  const letter = settings && (await letterAbout(context, telling, settings));
  await giveNotices(context, fresh, { ...telling, releaseId: null }, letter);
}

/** Who wrote it up, and who observed it without a write-up of their own. Each once; nobody who left. */
async function reportersOf({ tx, operatorId }: Context, discrepancyId: string) {
  const findings = await tx.finding.findMany({
    where: {
      operatorId,
      OR: [{ discrepancy: { id: discrepancyId } }, { relatedId: discrepancyId, discrepancy: null }],
    },
    select: { personId: true },
  });
  return tx.person.findMany({
    where: { operatorId, id: { in: findings.map(({ personId }) => personId) }, leftOn: null },
    select: { id: true, email: true },
    orderBy: { id: 'asc' },
  });
}

async function letterAbout(context: Context, telling: Telling, settings: LetterSettings) {
  const { tx, operatorId, now } = context;
  const { discrepancyId, eventId, what, byName, words } = telling;
  const writeUp = await tx.discrepancy.findUniqueOrThrow({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    include: { aircraft: { include: { base: { select: { zone: true } } } } },
  });
  const operator = await tx.operator.findUniqueOrThrow({
    where: { id: operatorId },
    select: { name: true },
  });
  const judged =
    what === 'judged' ? await tx.determination.findFirst({ where: { operatorId, id: eventId } }) : null;
  return writeLetter({
    what,
    severity: judged?.severity ?? null,
    registration: writeUp.aircraft.registration,
    number: writeUp.number,
    title: writeUp.title,
    byName,
    words,
    at: now.toISOString(),
    zone: writeUp.aircraft.base.zone,
    operatorName: operator.name,
    link: new URL(`/ramp/write-up/${discrepancyId}`, settings.address).href,
  });
}
