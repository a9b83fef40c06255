import { z } from 'zod';
import { filled, said } from '../words/said';

/** Most marks on one photo: more hide what they point at. */
export const MARKS_PER_PHOTO = 12;
/** Most points of one mark. */
export const POINTS_PER_MARK = 60;

/** One mark drawn on a photo, in thousandths of its width and height, so that it fits at any size. */
export interface PhotoMark {
  readonly kind: 'ring' | 'line';
  /** A ring: its corner and the opposite one. A line: its points in order. At most 60. */
  readonly points: readonly (readonly [x: number, y: number])[];
}

const thousandth = z.int().min(0).max(1000);

const photoMark = z
  .object({
    kind: z.enum(['ring', 'line']),
    points: z
      .array(z.tuple([thousandth, thousandth]))
      .min(1)
      .max(POINTS_PER_MARK),
  })
  .refine((mark) => mark.kind === 'line' || mark.points.length === 2, {
    error: said('A ring has two corners.'),
    path: ['points'],
  });

/** What was drawn on a photo. The marks are kept beside the picture and never in it. */
export const photoMarks = z.array(photoMark).max(MARKS_PER_PHOTO, {
  error: filled(said('A photo takes {marks_per_photo} marks at most.'), { marks_per_photo: MARKS_PER_PHOTO }),
});

/** Marks as they stand in a row; none where the row holds none, or nothing that can be drawn. */
export function marksOf(stored: unknown): readonly PhotoMark[] {
  const parsed = photoMarks.safeParse(stored);
  return parsed.success ? parsed.data : [];
}
