import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { dateColumn } from '../db/dates';
import { signatureOver, type Signature } from '../records/signature';
import type { CalendarDate, HoursTenths } from '../rules/facts';

/** What is answered, on which aircraft. */
export interface Answered {
  readonly requirement: { readonly id: string; readonly name: string; readonly kind: string };
  readonly aircraft: { readonly registration: string; readonly base: { readonly zone: string } };
}

/** A record that follows from a signature given here: of work, or of the last part of an inspection. */
export interface ComplianceRecord {
  readonly doneOn: CalendarDate;
  readonly ttisTenths: HoursTenths;
  readonly wasDueTenths: HoursTenths | null;
  readonly testedToFt: number | null;
  readonly newExpiry: CalendarDate | null;
  readonly details: { readonly [key: string]: string | null } | null;
  readonly approvedBy: string;
  readonly supersedesId: string | null;
  readonly inspectionId: string | null;
  readonly workId: string | null;
  readonly signOffId: string | null;
}

/**
 * Writes the record that something due is answered, with its own content and hash beside the sign-off it follows from: the
 * sign-off says nothing of the columns the due date is reckoned from. Gives the hash; it belongs into the audit row.
 */
export async function writeCompliance(
  context: Context,
  { requirement, aircraft }: Answered,
  record: ComplianceRecord,
): Promise<string> {
  const { actor, now } = context;
  // Whoever may sign was asked before the sign-off: authorized is what a signature given here is.
  const approvedByAuthorised = true;
  const { content, hash } = signatureOver(
    {
      what: 'compliance',
      aircraft: aircraft.registration,
      requirement: requirement.name,
      requirementId: requirement.id,
      kind: requirement.kind,
      ...record,
      approvedByAuthorised,
      by: actor.name,
      at: now.toISOString(),
    },
    now,
    aircraft.base.zone,
  );
  await keepCompliance(context, requirement.id, { ...record, approvedByAuthorised }, { content, hash });
  return hash;
}

/** The columns of a record that something due is answered. Left out: nothing is said of it. */
type ComplianceColumns = Pick<ComplianceRecord, 'doneOn' | 'ttisTenths' | 'approvedBy'> &
  Partial<Omit<ComplianceRecord, 'details'>> & {
    /** Null: the record does not say. */
    readonly approvedByAuthorised: boolean | null;
    readonly details: object | null;
    /** Made by the caller, where something else has to name the record first. */
    readonly id?: string;
    /** Carried over from before: who vouches for it, and the file it came in. */
    readonly vouchingId?: string;
    readonly takenInId?: string | null;
  };

/** Keeps a record with what was signed for it; gives its id. */
export async function keepCompliance(
  { tx, operatorId, actor, now }: Context,
  requirementId: string,
  { doneOn, newExpiry, details, id = randomUUID(), ...columns }: ComplianceColumns,
  { content, hash }: Pick<Signature, 'content' | 'hash'>,
): Promise<string> {
  await tx.compliance.create({
    data: {
      id,
      operatorId,
      requirementId,
      ...columns,
      doneOn: dateColumn(doneOn),
      newExpiry: newExpiry ? dateColumn(newExpiry) : null,
      details: details ?? undefined,
      recordedById: actor.personId,
      recordedAt: now,
      content,
      hash,
    },
  });
  return id;
}
