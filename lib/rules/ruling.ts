import type { Line } from './verdict';

/** Whether a person's signature counts for something, with the paragraphs that say so or refuse. */
export interface Ruling {
  readonly allowed: boolean;
  readonly lines: readonly Line[];
}

/** Allowed only when no line bars and at least one supports: silence is a refusal. */
export const rulingOf = (lines: readonly Line[]): Ruling => ({
  allowed: lines.some((line) => line.effect === 'supports') && !lines.some((line) => line.effect === 'bars'),
  lines,
});
