import { instant } from '../db/dates';
import type { Prisma } from '../db/client';
import type { Instant } from '../rules/facts';

/** Of a certificate, or of a letter of authorization: what is shown of each proof, oldest first. */
export const PROOFS = {
  select: { id: true, fileName: true, addedAt: true },
  orderBy: { addedAt: 'asc' },
} as const satisfies Prisma.ProofFindManyArgs;
type ProofRow = Prisma.ProofGetPayload<typeof PROOFS>;

export interface ProofView {
  readonly id: string;
  readonly fileName: string;
  readonly addedAt: Instant;
}

export const proofViews = (rows: readonly ProofRow[]): ProofView[] =>
  rows.map(({ addedAt, ...proof }) => ({ ...proof, addedAt: instant(addedAt) }));
