import { command } from '../access/service';
import { calendarDate } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import type { RequirementKind } from '../rules/aircraft';
import type { HoursTenths } from '../rules/facts';
import { formatTenths, parseTenths } from '../rules/hours';
import { dayInWords } from '../rules/in-words';
import { missingDetail } from './comply-by-work';
import { newExpiryRefused } from './new-expiry';
import { dueBefore, requireRequirement, standingRecords, type RequirementRow } from './requirement';
import { recordRequirementInput } from './requirement-schema';
import { keepCompliance } from './write-compliance';

/**
 * Something due was done by another shop, and its papers are here: whoever enters them signs for having copied them truly,
 * not for the work. Says who approved it and whether that person was authorized. May take the place of a wrong record. An
 * annual or 100-hour entered so still owes what became of each deferred item (91.405(c)).
 */
export const recordRequirement = command({
  verb: 'requirement.record',
  input: recordRequirementInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const requirement = await requireRequirement(tx, operatorId, input.requirementId);
    if (requirement.kind === 'vor-check') {
      throw new Refusal('conflict', { say: 'A VOR check is recorded by whoever makes it.' });
    }
    const { aircraft } = requirement;
    const zone = aircraft.base.zone;
    if (input.doneOn > dayAtBase(now, zone)) throw fieldRefusal('doneOn', 'This day has not come yet.');
    const ttisTenths = parseTenths(input.ttis);
    if (ttisTenths === null) throw fieldRefusal('ttis', 'Hours as the record shows them.');
    const details = {
      testedToFt: input.testedToFt ?? undefined,
      newExpiry: input.newExpiry ?? undefined,
      method: input.method,
      revision: input.revision,
    };
    const missing = missingDetail(requirement.kind as RequirementKind, details);
    if (missing) throw fieldRefusal(missing.field, missing.because);
    const wrongExpiry = newExpiryRefused(requirement, input.doneOn, input.newExpiry);
    if (wrongExpiry) throw fieldRefusal('newExpiry', wrongExpiry);
    const corrected = correctedBy(requirement, input.supersedesId);
    refuseImpossibleTime(requirement, input.doneOn, ttisTenths, corrected?.id ?? null);
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
        what: 'requirement-record',
        aircraft: aircraft.registration,
        requirement: requirement.name,
        requirementId: requirement.id,
        kind: requirement.kind,
        ...record,
        statement: RECORD_STATEMENT,
        by: actor.name,
        at: now.toISOString(),
      },
      now,
      zone,
    );
    const id = await keepCompliance(context, requirement.id, record, signature);
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { complianceId: id, hash: signature.hash },
      audit: {
        subjectKind: 'requirement',
        subjectId: requirement.id,
        detail: {
          aircraft: aircraft.registration,
          requirement: requirement.name,
          doneOn,
          hash: signature.hash,
        },
      },
    };
  },
});

/** What is signed by whoever copies a record from papers. */
export const RECORD_STATEMENT =
  'I have seen the papers named here, and this is what they say. I do not approve the work by this.';

function correctedBy({ compliances }: RequirementRow, supersedesId: string | null) {
  if (supersedesId === null) return null;
  const row = compliances.find(({ id }) => id === supersedesId);
  if (!row) throw new Refusal('not_found', { say: 'There is no such record of this.' });
  if (!standingRecords(compliances).includes(row)) {
    throw new Refusal('conflict', { say: 'That record was corrected already. Correct the one that stands.' });
  }
  return row;
}

/** Never above the aircraft's own time, nor against the order of the records beside it. */
function refuseImpossibleTime(
  { aircraft, compliances }: RequirementRow,
  doneOn: string,
  ttisTenths: HoursTenths,
  instead: string | null,
): void {
  if (aircraft.ttisTenths !== null && ttisTenths > aircraft.ttisTenths) {
    throw fieldRefusal(
      'ttis',
      `${aircraft.registration} has only ${formatTenths(aircraft.ttisTenths)} h on record.`,
    );
  }
  for (const other of standingRecords(compliances)) {
    if (other.id === instead) continue;
    const on = calendarDate(other.doneOn);
    const fits =
      on < doneOn ? other.ttisTenths <= ttisTenths : on > doneOn ? other.ttisTenths >= ttisTenths : true;
    if (fits) continue;
    throw fieldRefusal(
      'ttis',
      `The record of ${dayInWords(on)} says ${formatTenths(other.ttisTenths)} h. One of the two is wrong.`,
    );
  }
}
