import { calendarDate } from '../db/dates';
import type { Prisma } from '../db/client';
import type { CalendarDate } from '../rules/facts';

/** What a screen or paper says beside something carried over: who vouches for it, since when, and from which document. */
export interface CarriedMark {
  readonly by: string;
  readonly on: CalendarDate;
  readonly source: string;
}

/** Read with whatever may be carried over. */
export const VOUCHED = {
  select: { personName: true, signedOn: true, source: true },
} as const satisfies { readonly select: Prisma.VouchingSelect };

type Vouched = Prisma.VouchingGetPayload<typeof VOUCHED>;

/** The mark of a row; null where it was made here. */
export const markOf = (vouching: Vouched | null): CarriedMark | null =>
  vouching && { by: vouching.personName, on: calendarDate(vouching.signedOn), source: vouching.source };

/** The mark in one sentence, for papers and exports. English: it stands beside what was signed. */
export const markInWords = ({ by, on, source }: CarriedMark): string =>
  `Carried over, vouched for by ${by} on ${on} from: ${source}`;
