import type { Prisma } from '../db/client';
import { marksOf, type PhotoMark } from './marks';

/** What a screen needs to hold a photo's place and draw on it; the picture itself comes from /api/photos. */
export interface PhotoView {
  readonly id: string;
  /** Pixels of the full picture. */
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PhotoMark[];
}

/** The columns of a photo that a view takes. Never its bytes. */
export const PHOTO_VIEW = {
  id: true,
  width: true,
  height: true,
  marks: true,
} as const satisfies Prisma.PhotoSelect;

/** Photos of a finding, in the order in which they arrived. */
export const PHOTOS_IN_ORDER = {
  select: PHOTO_VIEW,
  orderBy: { receivedAt: 'asc' },
} as const satisfies Prisma.Finding$photosArgs;

/** A row as a screen shows it. */
export const photoView = (row: Prisma.PhotoGetPayload<{ select: typeof PHOTO_VIEW }>): PhotoView => ({
  id: row.id,
  width: row.width,
  height: row.height,
  marks: marksOf(row.marks),
});
