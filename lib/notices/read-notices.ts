import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { doneInWords, meaningInWords, type NoticeKind } from './in-words';

/** Word of something that was done about a write-up or observation of mine. */
export interface NoticeView {
  readonly id: string;
  readonly discrepancyId: string;
  readonly registration: string;
  readonly number: string;
  readonly title: string;
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

/** The word I was given about what I wrote up or observed. */
export const readNotices = query({
  verb: 'own-notices.read',
  input: z.object({}),
  async run({ tx, operatorId, actor }): Promise<OwnNotices> {
    const own = { operatorId, personId: actor.personId };
    const newestFirst = [{ at: 'desc' as const }, { id: 'asc' as const }];
    const include = {
      discrepancy: { include: { aircraft: { include: { base: { select: { zone: true } } } } } },
    };
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
    const view = (row: (typeof unread)[number]): NoticeView => {
      const { id, eventId, discrepancyId, byName, words, at, discrepancy } = row;
      const what = row.what as NoticeKind;
      const { number, title, aircraft } = discrepancy;
      return {
        id,
        discrepancyId,
        registration: aircraft.registration,
        number,
        title,
        done: doneInWords(what),
        meaning: meaningInWords(what, severityOf.get(eventId) ?? null),
        byName,
        words,
        at: instant(at),
        zone: aircraft.base.zone,
      };
    };
    return { unread: unread.map(view), unreadCount, earlier: earlier.map(view) };
  },
});
