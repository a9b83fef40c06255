import { calendarDateOrNull, instant } from '../db/dates';
import type { Prisma } from '../db/client';
import { standingOn, type CertificateStanding } from '../rules/certificate-expiry';
import type { CalendarDate, Instant } from '../rules/facts';
import type { CertificateKind } from './certificate-schema';
import { PROOFS, proofViews, type ProofView } from './proof-view';

export const CERTIFICATE_ROW = {
  supersedesBy: { select: { id: true } },
  proofs: PROOFS,
} as const satisfies Prisma.CertificateInclude;
type CertificateRow = Prisma.CertificateGetPayload<{ include: typeof CERTIFICATE_ROW }>;

export interface CertificateView {
  readonly id: string;
  readonly kind: CertificateKind;
  readonly number: string;
  readonly grade: string | null;
  readonly ratings: readonly string[];
  readonly issuedOn: CalendarDate | null;
  readonly expiresOn: CalendarDate | null;
  readonly recentExperienceThrough: CalendarDate | null;
  readonly firstYearActivityMet: boolean | null;
  readonly authorisedToSign: boolean | null;
  /** stands, renewed: a newer entry took its place, ended. */
  readonly state: 'stands' | 'renewed' | 'ended';
  readonly ended: { readonly on: CalendarDate; readonly why: string } | null;
  /** Null: entered before anybody was asked. */
  readonly enteredAt: Instant | null;
  readonly standing: CertificateStanding;
  readonly proofs: readonly ProofView[];
}

/** A certificate as the office shows it, on this day at the person's base. */
export function certificateView(row: CertificateRow, today: CalendarDate): CertificateView {
  const dates = {
    expiresOn: calendarDateOrNull(row.expiresOn),
    recentExperienceThrough: calendarDateOrNull(row.recentExperienceThrough),
  };
  const { id, kind, number, grade, ratings, firstYearActivityMet, authorisedToSign } = row;
  const revokedOn = calendarDateOrNull(row.revokedOn);
  return {
    id,
    kind: kind as CertificateKind,
    number,
    grade,
    ratings,
    issuedOn: calendarDateOrNull(row.issuedOn),
    ...dates,
    firstYearActivityMet,
    authorisedToSign,
    state: row.supersedesBy ? 'renewed' : revokedOn ? 'ended' : 'stands',
    ended: revokedOn ? { on: revokedOn, why: row.revokedWhy ?? '' } : null,
    enteredAt: row.enteredAt && instant(row.enteredAt),
    standing: standingOn({ kind, ...dates, firstYearActivityMet }, today),
    proofs: proofViews(row.proofs),
  };
}
