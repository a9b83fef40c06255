import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { dateColumn } from '../db/dates';
import type { Prisma } from '../db/client';
import { signatureOver } from '../records/signature';
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
  { tx, operatorId, actor, now }: Context,
  { requirement, aircraft }: Answered,
  record: ComplianceRecord,
): Promise<string> {
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
  const { doneOn, newExpiry, details, ...columns } = record;
  await tx.compliance.create({
    data: {
      id: randomUUID(),
      operatorId,
      requirementId: requirement.id,
      ...columns,
      doneOn: dateColumn(doneOn),
      newExpiry: newExpiry ? dateColumn(newExpiry) : null,
      details: (details ?? undefined) as Prisma.InputJsonValue | undefined,
      approvedByAuthorised,
      recordedById: actor.personId,
      recordedAt: now,
      content,
      hash,
    },
  });
  return hash;
}
