import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import { nameIn } from '../people/names';
import { markOf, VOUCHED, type CarriedMark } from '../records/carried-mark';
import { ARE_OBSERVATIONS } from './observations';
import { PHOTOS_IN_ORDER, photoView, type PhotoView } from '../photos/view';

/** What a list of write-ups shows of each. */
export const SUMMARY = {
  finding: {
    select: {
      id: true,
      station: true,
      place: true,
      words: true,
      personId: true,
      photos: PHOTOS_IN_ORDER,
    },
  },
  deferrals: { include: { placards: true, end: true, extension: true } },
  vouching: VOUCHED,
  _count: { select: { observations: { where: ARE_OBSERVATIONS } } },
} as const satisfies Prisma.DiscrepancyInclude;

export type SummaryRow = Prisma.DiscrepancyGetPayload<{ include: typeof SUMMARY }>;

export interface WriteUpSummary {
  readonly id: string;
  readonly findingId: string;
  readonly number: string;
  readonly title: string;
  readonly station: string;
  readonly place: string;
  readonly words: string;
  readonly jasc: string;
  readonly kind: string;
  readonly state: string;
  readonly severity: string | null;
  readonly openedAt: string;
  readonly closedAt: string | null;
  readonly closedHow: string | null;
  readonly reportedBy: string;
  readonly reportedById: string;
  /** It stood on paper before: who vouches for that. Null: it was written up here. */
  readonly carried: CarriedMark | null;
  readonly photoIds: readonly string[];
  readonly photos: readonly PhotoView[];
  /** How often others have seen the same since. */
  readonly observations: number;
  /** Placards of the live deferral: owed or in place. */
  readonly placards: readonly {
    readonly id: string;
    readonly wording: string;
    readonly location: string;
    readonly placed: boolean;
  }[];
}

/** One row of a list of write-ups. */
export function summaryOf(row: SummaryRow, names: ReadonlyMap<string, string>): WriteUpSummary {
  const live = row.deferrals.filter((deferral) => !deferral.end);
  return {
    id: row.id,
    findingId: row.finding.id,
    number: row.number,
    title: row.title,
    station: row.finding.station,
    place: row.finding.place,
    words: row.finding.words,
    jasc: row.jasc,
    kind: row.kind,
    state: row.state,
    severity: row.severity,
    openedAt: instant(row.openedAt),
    closedAt: row.closedAt ? instant(row.closedAt) : null,
    closedHow: row.closedHow,
    reportedBy: nameIn(names, row.finding.personId),
    reportedById: row.finding.personId,
    carried: markOf(row.vouching),
    photoIds: row.finding.photos.map((photo) => photo.id),
    photos: row.finding.photos.map(photoView),
    observations: row._count.observations,
    placards: live.flatMap((deferral) =>
      deferral.placards.map(({ id, wording, location, placedAt, removedAt }) => ({
        id,
        wording,
        location,
        placed: placedAt !== null && removedAt === null,
      })),
    ),
  };
}
