import { z } from 'zod';
import { query } from '../access/service';
import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import type { ProposedFlight } from '../rules/operations';
import { doneInWords, meaningInWords, type NoticeKind } from './in-words';

/** Word of something that was done about a write-up or observation of mine, or of a released flight of mine. */
export interface NoticeView {
  readonly id: string;
  readonly what: NoticeKind;
  /** The write-up; of a flight, the one behind it. Null when there is none. */
  readonly discrepancyId: string | null;
  /** The released flight; null for word of a write-up. */
  readonly releaseId: string | null;
  readonly registration: string;
  /** Number of the write-up; null when there is none. */
  readonly number: string | null;
  /** Title of the write-up; of a flight, where it goes ("0X01 to 0X02"). */
  readonly title: string;
  /** Of a flight: when it departs, and the zone to tell that in. */
  readonly departs: { readonly at: string; readonly zone: string } | null;
  /** "Repaired and signed", and what that means for the aircraft. */
  readonly done: string;
  readonly meaning: string;
  readonly byName: string;
  /** In the words of whoever did it. */
  readonly words: string;
  /** ISO instant, and the zone of the aircraft's base to show it in. */
  readonly at: string;
  readonly zone: string;
}

export interface OwnNotices {
  /** Not seen yet, newest first, up to a hundred. */
  readonly unread: readonly NoticeView[];
  /** How many are not seen yet, shown or not. */
  readonly unreadCount: number;
  /** The last ten that were seen, newest first. */
  readonly earlier: readonly NoticeView[];
}

const MOST_UNREAD = 100;
const MOST_EARLIER = 10;

/** The word I was given about what I wrote up or observed, and about flights of mine. */
export const readNotices = query({
  verb: 'own-notices.read',
  input: z.object({}),
  async run({ tx, operatorId, actor }): Promise<OwnNotices> {
    const own = { operatorId, personId: actor.personId };
    const newestFirst = [{ at: 'desc' as const }, { id: 'asc' as const }];
    const include = NOTICE_ROW;
    const unread = await tx.notice.findMany({
      where: { ...own, readAt: null },
      include,
      orderBy: newestFirst,
      take: MOST_UNREAD,
    });
    const unreadCount = await tx.notice.count({ where: { ...own, readAt: null } });
    const earlier = await tx.notice.findMany({
      where: { ...own, readAt: { not: null } },
      include,
      orderBy: newestFirst,
      take: MOST_EARLIER,
    });
    const judged = await tx.determination.findMany({
      where: { operatorId, id: { in: [...unread, ...earlier].map(({ eventId }) => eventId) } },
      select: { id: true, severity: true },
    });
    const severityOf = new Map(judged.map(({ id, severity }) => [id, severity]));
    const view = (row: NoticeRow) => noticeView(row, severityOf.get(row.eventId) ?? null);
    return { unread: unread.map(view), unreadCount, earlier: earlier.map(view) };
  },
});

const AIRCRAFT = { include: { base: { select: { zone: true } } } } as const;
const NOTICE_ROW = {
  discrepancy: { include: { aircraft: AIRCRAFT } },
  release: { include: { aircraft: AIRCRAFT } },
} as const satisfies Prisma.NoticeInclude;
type NoticeRow = Prisma.NoticeGetPayload<{ include: typeof NOTICE_ROW }>;

function noticeView(row: NoticeRow, severity: string | null): NoticeView {
  const { id, discrepancyId, releaseId, byName, words, at, discrepancy, release } = row;
  const what = row.what as NoticeKind;
  const flight = release && (release.flight as unknown as ProposedFlight);
  // The database knows no notice about nothing (notice_is_about_something).
  const aircraft = release?.aircraft ?? discrepancy?.aircraft;
  return {
    id,
    what,
    discrepancyId,
    releaseId,
    registration: aircraft?.registration ?? '',
    number: discrepancy?.number ?? null,
    title: flight ? `${flight.from.ident} to ${flight.to.ident}` : (discrepancy?.title ?? ''),
    departs: release && flight ? { at: instant(release.departAt), zone: flight.from.zone } : null,
    done: doneInWords(what),
    meaning: meaningInWords(what, severity),
    byName,
    words,
    at: instant(at),
    zone: aircraft?.base.zone ?? 'UTC',
  };
}
