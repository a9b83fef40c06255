import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import { nameIn } from '../people/names';
import { PHOTOS_IN_ORDER, photoView, type PhotoView } from '../photos/view';

/** Findings that are observations: about a write-up, without one of their own. */
export const ARE_OBSERVATIONS = { discrepancy: { is: null } } as const satisfies Prisma.FindingWhereInput;

/** A write-up's observations, and the write-ups that were opened because of it. */
export const SEEN_AGAIN = {
  include: {
    photos: PHOTOS_IN_ORDER,
    discrepancy: { select: { id: true, number: true, title: true, state: true, openedAt: true } },
  },
  orderBy: [{ foundAt: 'asc' }, { receivedAt: 'asc' }, { id: 'asc' }],
} as const satisfies Prisma.Discrepancy$observationsArgs;

/** The write-up a finding names as the earlier one. */
export const EARLIER = {
  select: { id: true, number: true, title: true, state: true, closedAt: true },
} as const satisfies Prisma.Finding$relatedArgs;

export type SeenAgainRow = Prisma.FindingGetPayload<{ include: typeof SEEN_AGAIN.include }>;

/** Somebody has seen the same. */
export interface ObservationView {
  readonly id: string;
  readonly by: string;
  readonly byId: string;
  /** When it was seen, as the phone says. */
  readonly foundAt: string;
  readonly phase: string | null;
  readonly station: string;
  readonly words: string;
  /** Whole numbers of the smallest unit by measurement key. */
  readonly measurements: Readonly<Record<string, number>>;
  readonly photos: readonly PhotoView[];
}

/** Another write-up about the same thing. */
export interface RelatedWriteUp {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly state: string;
  /** How the later one stands to the earlier one. */
  readonly how: 'worse' | 'back';
}

/** The observations among the rows, oldest first as they come. */
export const observationViews = (
  rows: readonly SeenAgainRow[],
  names: ReadonlyMap<string, string>,
): readonly ObservationView[] =>
  rows
    .filter((row) => row.discrepancy === null)
    .map((row) => ({
      id: row.id,
      by: nameIn(names, row.personId),
      byId: row.personId,
      foundAt: instant(row.foundAt),
      phase: row.phase,
      station: row.station,
      words: row.words,
      measurements: row.measurements as Record<string, number>,
      photos: row.photos.map(photoView),
    }));

/** The write-ups that were opened because of this one, oldest first as they come. */
export const laterWriteUps = (
  rows: readonly SeenAgainRow[],
  closedAt: Date | null,
): readonly RelatedWriteUp[] =>
  rows.flatMap(({ discrepancy }) =>
    discrepancy ? [related(discrepancy, howRelated(closedAt, discrepancy.openedAt))] : [],
  );

/** The write-up this one was opened because of. */
export const earlierWriteUp = (
  earlier: Prisma.DiscrepancyGetPayload<typeof EARLIER> | null,
  openedAt: Date,
): RelatedWriteUp | null => earlier && related(earlier, howRelated(earlier.closedAt, openedAt));

const related = (
  { id, number, title, state }: Pick<RelatedWriteUp, 'id' | 'number' | 'title' | 'state'>,
  how: RelatedWriteUp['how'],
): RelatedWriteUp => ({ id, number, title, state, how });

/** Opened after the earlier one was closed it is back; opened beside it, it is the same, only worse. */
const howRelated = (earlierClosedAt: Date | null, laterOpenedAt: Date): RelatedWriteUp['how'] =>
  earlierClosedAt !== null && earlierClosedAt <= laterOpenedAt ? 'back' : 'worse';
