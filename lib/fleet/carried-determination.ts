import { z } from 'zod';
import type { DeferralFacts } from '../rules/aircraft';
import { known, unknown, type CalendarDate, type Fact } from '../rules/facts';
import { localDate } from '../rules/months';
import { toDeterminerRecord } from './determiner';

const answer = z.enum(['yes', 'no', 'not-known']);

/** What was signed of a deferral that stood on paper (lib/carry-over/keep-deferral.ts). */
export const carriedContent = z.object({
  carriedOver: z.object({
    determinedOn: z.string().nullable(),
    /** Why the determination does not count, where something about it is not known; else null. */
    missing: z.string().nullable(),
    noHazard: answer,
    countedTogether: answer,
    record: z.object({ signed: answer, by: z.string(), authorised: answer }),
    document: z.string(),
    vouchedBy: z.string(),
  }),
});
export type CarriedContent = z.output<typeof carriedContent>['carriedOver'];

/** The signed content of a carried-over determination; null when it is none, or cannot be read. */
export function carriedOver(determination: {
  readonly vouchingId: string | null;
  readonly content: unknown;
}): CarriedContent | null {
  if (determination.vouchingId === null) return null;
  const parsed = carriedContent.safeParse(determination.content);
  return parsed.success ? parsed.data.carriedOver : null;
}

/** A determination as far as it is asked here. */
export interface DeterminationRow {
  readonly vouchingId: string | null;
  readonly content: unknown;
  readonly personName: string;
  readonly signedAt: Date;
}

/** Another live deferral of the same aircraft. */
export interface OtherDeferral {
  readonly number: string;
  readonly openedAt: Date;
  readonly determination: DeterminationRow;
}

/**
 * A determination taken over from a paper, as the deferral rules want it. Its day is the day of the paper, not of the signature
 * that vouches for it. Unknown, and so no determination, where the paper leaves open what is asked of one made here: the answer
 * itself, who gave it and when, and whether it counted what else was out (91.213(d)(4) is asked of the aircraft as it flies).
 */
export function carriedDetermination(
  row: DeterminationRow,
  own: { readonly number: string; readonly openedAt: Date },
  others: readonly OtherDeferral[],
  zone: string,
): DeferralFacts['determination'] {
  const said = carriedOver(row);
  if (said === null) return unknown(`what the paper says about the determination for ${own.number}`);
  const missing = missingOf(said, row, own, others, zone);
  if (missing !== null) return unknown(missing);
  return known({ by: toDeterminerRecord(row.content, row.personName), on: said.determinedOn ?? '' });
}

function missingOf(
  said: CarriedContent,
  row: DeterminationRow,
  own: { readonly number: string; readonly openedAt: Date },
  others: readonly OtherDeferral[],
  zone: string,
): string | null {
  if (said.missing !== null) return said.missing;
  if (said.determinedOn === null) return `when ${own.number} was determined to be no hazard`;
  if (said.noHazard !== 'yes') return `whether the paper says that ${own.number} is no hazard`;
  const uncounted = others.filter((other) => !countedBetween(said, row, own, other, zone));
  if (uncounted.length === 0) return null;
  const names = uncounted.map(({ number }) => number).join(', ');
  return `whether ${own.number}, carried over, was determined together with ${names}`;
}

/** One of the two determinations counted the other item: the later one has to. */
function countedBetween(
  said: CarriedContent,
  row: DeterminationRow,
  own: { readonly openedAt: Date },
  other: OtherDeferral,
  zone: string,
): boolean {
  const otherSaid = carriedOver(other.determination);
  // Made here, after this one was on record: the door asked for it together with this one.
  if (other.determination.vouchingId === null && other.determination.signedAt > row.signedAt) return true;
  if (counts(said, other.openedAt, zone)) return true;
  return otherSaid !== null && counts(otherSaid, own.openedAt, zone);
}

/** The paper says that it counted all that was out, and this was out by then. */
function counts(said: CarriedContent, openedAt: Date, zone: string): boolean {
  const { countedTogether, determinedOn } = said;
  return countedTogether === 'yes' && determinedOn !== null && openedOn(openedAt, zone) <= determinedOn;
}

const openedOn = (openedAt: Date, zone: string): CalendarDate => localDate(openedAt.toISOString(), zone);

/** What a screen says beside a determination that stood on paper. */
export interface OnPaperView {
  readonly on: CalendarDate | null;
  readonly document: string;
  readonly vouchedBy: string;
}

export function onPaperOf(row: Pick<DeterminationRow, 'vouchingId' | 'content'>): OnPaperView | null {
  const said = carriedOver(row);
  return said && { on: said.determinedOn, document: said.document, vouchedBy: said.vouchedBy };
}

/** The part 43 record stands on paper, signed by somebody who could. Anything not known is no. */
export function carriedRecordSigned(row: DeterminationRow): boolean {
  const said = carriedOver(row);
  return (
    said !== null && said.record.signed === 'yes' && said.record.authorised === 'yes' && said.record.by !== ''
  );
}

/** The day of a determination: on paper the paper's, else the day of the signature. */
export const determinedOn = (
  row: Pick<DeterminationRow, 'vouchingId' | 'content'>,
  signedOn: CalendarDate,
): Fact<CalendarDate> => {
  if (row.vouchingId === null) return known(signedOn);
  const day = carriedOver(row)?.determinedOn ?? null;
  return day === null ? unknown('the day of the determination') : known(day);
};
