import { canonicalText, contentHash } from './canonical';

/** One column of a signed row beside what was signed for it. */
export interface SignedColumn {
  readonly name: string;
  readonly now: unknown;
  /** What the signed content says; undefined where it says nothing of this column. */
  readonly signed: unknown;
}

/** A signed row as verification sees it. */
export interface SignedRow {
  /** In words: "sign-off", "check flight". */
  readonly table: string;
  readonly id: string;
  readonly aircraftId: string;
  readonly content: unknown;
  readonly hash: string;
  /** Who signed and when, as the row says; the audit chain says it too. Null: an older table has no such column. */
  readonly personId: string | null;
  readonly signedAt: Date;
  readonly columns: readonly SignedColumn[];
}

/** Why a row no longer stands as it was signed, in words; empty when it does. */
export function changesIn(row: SignedRow): readonly string[] {
  // Content that no longer has its hash proves nothing about the columns.
  if (contentHash(row.content) !== row.hash) return ['was changed after it was signed'];
  return row.columns
    .filter(({ now, signed }) => signed !== undefined && !same(now, signed))
    .map(({ name }) => `was changed after it was signed: ${name} is not what was signed`);
}

const same = (a: unknown, b: unknown): boolean => canonicalText(a ?? null) === canonicalText(b ?? null);

/** The value at the first of these paths ("signer.name") that the content has; undefined when it has none of them. */
export function saidIn(content: unknown, ...paths: readonly string[]): unknown {
  for (const path of paths) {
    let value: unknown = content;
    for (const key of path.split('.')) {
      value =
        typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined;
    }
    if (value !== undefined) return value;
  }
  return undefined;
}

/** Compares a column with the first path the content has. */
export const column = (
  name: string,
  now: unknown,
  content: unknown,
  ...paths: readonly string[]
): SignedColumn => ({
  name,
  now,
  signed: saidIn(content, ...paths),
});

/** Compares a column with something that was signed elsewhere or follows from what was signed. */
export const follows = (name: string, now: unknown, signed: unknown): SignedColumn => ({ name, now, signed });

/** Every key of a signed object against the object as the row gives it now, each under its own name. */
export function everyKey(
  prefix: string,
  now: Readonly<Record<string, unknown>>,
  signed: unknown,
): readonly SignedColumn[] {
  if (typeof signed !== 'object' || signed === null) return [];
  const said = signed as Record<string, unknown>;
  return [...new Set([...Object.keys(said), ...Object.keys(now)])].map((key) => ({
    name: `${prefix}${key}`,
    now: now[key] ?? null,
    signed: said[key] ?? null,
  }));
}

const A_DAY = 86_400_000;

/**
 * The day at the base is at most a day away from the day in UTC. Which zone it was is not part of what was signed, and a
 * base may move since; so a day that can have been the day at the base, anywhere, stands.
 */
export function dayOf(name: string, on: Date, at: Date): SignedColumn {
  const apart = Math.abs(on.getTime() + A_DAY / 2 - at.getTime());
  return follows(name, apart < 1.5 * A_DAY ? null : on.toISOString(), null);
}

/** The day of a signature against its moment. */
export const dayOfSigning = (signedOn: Date, signedAt: Date): SignedColumn =>
  dayOf('signed_on', signedOn, signedAt);
