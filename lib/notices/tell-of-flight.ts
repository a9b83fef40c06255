import type { Context } from '../access/service';
import { instant } from '../db/dates';
import type { ProposedFlight } from '../rules/operations';
import { giveNotices, type LetterText } from './give-notices';
import type { FlightNoticeKind } from './in-words';
import { letterSettingsOrNone, type LetterSettings } from './letter-settings';
import { writeFlightLetter } from './write-letter';

/** What happened to a released flight. */
export interface FlightTelling {
  readonly releaseId: string;
  readonly what: FlightNoticeKind;
  /** The release itself, or the row of what happened to it; nobody is told of one twice. */
  readonly eventId: string;
  /** The write-up behind it, where it was one. */
  readonly discrepancyId: string | null;
  readonly words: string;
}

type Teller = Pick<Context, 'tx' | 'operatorId' | 'actor' | 'now'>;

/**
 * Gives word of a released flight to these people, in the act's own transaction. Each once, and nobody who left. Whether
 * somebody is told of their own act is the caller's to say: of a release gone void they are.
 */
export async function tellOfFlight(
  context: Teller,
  personIds: readonly (string | null)[],
  telling: FlightTelling,
): Promise<void> {
  const { tx, operatorId, actor } = context;
  const wanted = personIds.filter((id) => id !== null);
  const told = await tx.notice.findMany({
    where: { operatorId, eventId: telling.eventId },
    select: { personId: true },
  });
  const people = await tx.person.findMany({
    where: { operatorId, id: { in: wanted, notIn: told.map(({ personId }) => personId) }, leftOn: null },
    select: { id: true, email: true },
    orderBy: { id: 'asc' },
  });
  if (people.length === 0) return;
  const settings = letterSettingsOrNone();
  const letter = settings && (await letterAbout(context, telling, settings));
  await giveNotices(context, people, { ...telling, byName: actor.name }, letter);
}

async function letterAbout(
  { tx, operatorId, actor, now }: Teller,
  telling: FlightTelling,
  settings: LetterSettings,
): Promise<LetterText> {
  const { releaseId, discrepancyId, what, words } = telling;
  const release = await tx.release.findUniqueOrThrow({
    where: { operatorId_id: { operatorId, id: releaseId } },
    include: { aircraft: { include: { base: { select: { zone: true } } } } },
  });
  const operator = await tx.operator.findUniqueOrThrow({
    where: { id: operatorId },
    select: { name: true },
  });
  const writeUp = discrepancyId
    ? await tx.discrepancy.findUnique({ where: { operatorId_id: { operatorId, id: discrepancyId } } })
    : null;
  const flight = release.flight as unknown as ProposedFlight;
  return writeFlightLetter({
    what,
    registration: release.aircraft.registration,
    fromIdent: flight.from.ident,
    toIdent: flight.to.ident,
    departAt: instant(release.departAt),
    departZone: flight.from.zone,
    writeUp: writeUp && { number: writeUp.number, title: writeUp.title },
    byName: actor.name,
    words,
    at: instant(now),
    zone: release.aircraft.base.zone,
    operatorName: operator.name,
    link: new URL(`/ramp/flight/${releaseId}`, settings.address).href,
  });
}
