import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { calendarDate } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import type { RequirementKind } from '../rules/aircraft';
import type { CalendarDate, HoursTenths } from '../rules/facts';
import { formatTenths, parseTenths } from '../rules/hours';
import { dayInWords } from '../rules/in-words';
import { missingDetail } from './comply-by-work';
import { newExpiryRefused } from './new-expiry';
import { dueBefore, standingRecords, type RequirementRow } from './requirement';
import { keepCompliance } from './write-compliance';
import { said } from '../words/said';

/** What the papers say, whether another shop sent them today or they were there before this tool. */
export interface PaperRecord {
  readonly doneOn: string;
  /** As typed. */
  readonly ttis: string;
  readonly approvedBy: string;
  readonly certificateKind: string;
  readonly certificateNumber: string;
  /** Null: the papers do not say, and what is not known bars. */
  readonly authorised: boolean | null;
  readonly papers: string;
  readonly testedToFt: number | null;
  readonly newExpiry: string | null;
  readonly method: string;
  readonly revision: string;
  readonly supersedesId: string | null;
  readonly why: string;
}

/** Carried over: who vouches for it, made once the record is known. */
type Vouches = (
  complianceId: string,
  record: object,
) => Promise<{ readonly id: string; readonly hash: string }>;

interface Kept {
  readonly complianceId: string;
  /** Of the record, and of the vouching where there is one. */
  readonly hashes: readonly [string, ...string[]];
}

/**
 * Keeps a record copied from papers, with the same questions whichever way it comes. Refuses days to come, hours the aircraft does
 * not have, an order that cannot be, and a record that lacks what its kind needs (91.411(d), 91.207(c)(2), 91.417(a)(2)(v)).
 */
export async function keepPaperRecord(
  context: Context,
  requirement: RequirementRow,
  input: PaperRecord,
  signed: { readonly what: string; readonly statement: string },
  carried: { readonly vouches: Vouches; readonly takenInId: string | null } | null = null,
): Promise<Kept> {
  const { tx, operatorId, actor, now } = context;
  const { aircraft } = requirement;
  const zone = aircraft.base.zone;
  const fault = paperRecordFault(requirement, input, dayAtBase(now, zone));
  if (fault)
    throw fault.field === null
      ? new Refusal('conflict', { say: fault.message })
      : fieldRefusal(fault.field, fault.message);
  const ttisTenths = parseTenths(input.ttis) ?? 0;
  const corrected = correctedBy(requirement, input.supersedesId);
  const wasDueTenths = ['annual', 'hundred-hour'].includes(requirement.kind)
    ? await dueBefore(tx, operatorId, aircraft.id, {
        doneOn: input.doneOn,
        ttisTenths,
        instead: corrected?.id ?? null,
      })
    : null;
  const { doneOn, testedToFt, newExpiry, authorised } = input;
  const record = {
    doneOn,
    ttisTenths,
    wasDueTenths,
    testedToFt,
    newExpiry,
    approvedBy: `${input.approvedBy}, ${input.certificateKind} ${input.certificateNumber}`,
    approvedByAuthorised: authorised,
    supersedesId: corrected?.id ?? null,
    details: {
      papers: input.papers,
      method: input.method || null,
      revision: input.revision || null,
      why: corrected ? input.why : null,
    },
  };
  const signature = signatureOver(
    {
      what: signed.what,
      aircraft: aircraft.registration,
      requirement: requirement.name,
      requirementId: requirement.id,
      kind: requirement.kind,
      ...record,
      statement: signed.statement,
      by: actor.name,
      at: now.toISOString(),
    },
    now,
    zone,
  );
  const id = randomUUID();
  const vouched = carried ? await carried.vouches(id, { requirement: requirement.name, ...record }) : null;
  await keepCompliance(
    context,
    requirement.id,
    {
      ...record,
      id,
      ...(vouched ? { vouchingId: vouched.id, takenInId: carried?.takenInId ?? null } : {}),
    },
    signature,
  );
  await factsChanged(tx, operatorId, aircraft.id);
  return { complianceId: id, hashes: vouched ? [signature.hash, vouched.hash] : [signature.hash] };
}

function correctedBy({ compliances }: RequirementRow, supersedesId: string | null) {
  if (supersedesId === null) return null;
  const row = compliances.find(({ id }) => id === supersedesId);
  if (!row) throw new Refusal('not_found', { say: said('There is no such record of this.') });
  if (!standingRecords(compliances).includes(row)) {
    throw new Refusal('conflict', {
      say: said('That record was corrected already. Correct the one that stands.'),
    });
  }
  return row;
}

export interface PaperFault {
  /** Null: the record as a whole. */
  readonly field: 'doneOn' | 'ttis' | 'testedToFt' | 'newExpiry' | 'method' | 'revision' | null;
  readonly message: string;
}

/** What stands beside a record that is looked at: of a file, the rows before it as well. */
export interface BesideIt {
  readonly kind: string;
  readonly fixedExpiry: Date | null;
  readonly aircraft: { readonly registration: string; readonly ttisTenths: HoursTenths | null };
  readonly compliances: readonly {
    readonly id: string;
    readonly doneOn: Date;
    readonly ttisTenths: HoursTenths;
    readonly supersedesId: string | null;
  }[];
}

/** What is wrong with a record from papers, the first of it; null when nothing is. */
export function paperRecordFault(
  requirement: BesideIt,
  input: PaperRecord,
  today: CalendarDate,
): PaperFault | null {
  if (requirement.kind === 'vor-check') {
    return { field: null, message: said('A VOR check is recorded by whoever makes it.') };
  }
  if (input.doneOn > today) return { field: 'doneOn', message: said('This day has not come yet.') };
  const ttisTenths = parseTenths(input.ttis);
  if (ttisTenths === null) return { field: 'ttis', message: said('Hours as the record shows them.') };
  const missing = missingDetail(requirement.kind as RequirementKind, {
    testedToFt: input.testedToFt ?? undefined,
    newExpiry: input.newExpiry ?? undefined,
    method: input.method,
    revision: input.revision,
  });
  if (missing) return { field: missing.field, message: missing.because };
  const wrongExpiry = newExpiryRefused(requirement, input.doneOn, input.newExpiry);
  if (wrongExpiry) return { field: 'newExpiry', message: wrongExpiry };
  return impossibleTime(requirement, input.doneOn, ttisTenths, input.supersedesId);
}

/** Never above the aircraft's own time, nor against the order of the records beside it. */
function impossibleTime(
  { aircraft, compliances }: BesideIt,
  doneOn: string,
  ttisTenths: HoursTenths,
  instead: string | null,
): PaperFault | null {
  if (aircraft.ttisTenths !== null && ttisTenths > aircraft.ttisTenths) {
    const message = `${aircraft.registration} has only ${formatTenths(aircraft.ttisTenths)} h on record.`;
    return { field: 'ttis', message };
  }
  for (const other of standingRecords(compliances)) {
    if (other.id === instead) continue;
    const on = calendarDate(other.doneOn);
    const fits =
      on < doneOn ? other.ttisTenths <= ttisTenths : on > doneOn ? other.ttisTenths >= ttisTenths : true;
    if (fits) continue;
    const message = `The record of ${dayInWords(on)} says ${formatTenths(other.ttisTenths)} h. One of the two is wrong.`;
    return { field: 'ttis', message };
  }
  return null;
}
