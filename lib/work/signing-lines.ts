import { calendarDateOrNull } from '../db/dates';
import type { AircraftTypeFacts } from '../rules/aircraft';
import { factOf, known, type CalendarDate } from '../rules/facts';
import type { PartOfAircraft } from '../rules/jasc';
import { localDate } from '../rules/months';
import { checkBeforeApproval } from '../rules/part-43/43-5-before-approval';
import { checkEntry439 } from '../rules/part-43/43-9-entry';
import type { SignerFacts } from '../rules/people';
import type { Line } from '../rules/verdict';
import type { SigningRuling, WorkKind, WorkToSign } from '../rules/who-may-sign';
import { detailsOf, majorAnswersOf, type WorkRow } from './entry';

/** The work as the law of signatures sees it, for this signer. */
export function workToSign(work: WorkRow, signer: Pick<SignerFacts, 'name'>): WorkToSign {
  return {
    part: work.part as PartOfAircraft,
    kind: work.workKind as WorkKind,
    preventiveItem: work.preventiveItem,
    swapOnly: work.swapOnly,
    aircraftCategory: work.aircraft.type.category as AircraftTypeFacts['category'],
    performedBySigner: work.performedBy?.trim().toLowerCase() === signer.name.trim().toLowerCase(),
  };
}

/** 43.3(d): whether the signer has to say how whoever did the work could do it. */
export const workerAsked = (
  work: WorkRow,
  signer: Pick<SignerFacts, 'name'>,
  under: SigningRuling['under'],
): boolean =>
  (under?.capacity === 'mechanic' || under?.capacity === 'inspection-authorization') &&
  !workToSign(work, signer).performedBySigner;

/** Whether the entry is whole (43.9(a)) and all is complete that 43.5 asks before an approval. `on` is the day of signing. */
export function entryLinesOf(
  work: WorkRow,
  signer: Pick<SignerFacts, 'name'>,
  under: NonNullable<SigningRuling['under']>,
  on: CalendarDate,
): readonly Line[] {
  const entry = checkEntry439(
    {
      description: work.description,
      dataReference: work.references,
      startedOn: known(localDate(work.startedAt.toISOString(), work.aircraft.base.zone)),
      completedOn: factOf(calendarDateOrNull(work.completedOn), 'the day the work was completed'),
      performedBy: work.performedBy ? [work.performedBy] : [],
      approver: {
        name: signer.name,
        signed: true,
        certificateNumber: under.certificate.number,
        certificateKind: under.certificate.kind,
      },
    },
    on,
  );
  const { majorRecord, cabinTank, copyAboard } = detailsOf(work);
  const before = checkBeforeApproval({
    kind: work.workKind as WorkKind,
    part: work.part as PartOfAircraft,
    jasc: work.jasc,
    entryMade: entry.every((line) => line.effect !== 'bars'),
    majorAnswers: majorAnswersOf(work),
    majorRecord: majorRecord && work.form337 ? { kind: majorRecord, reference: work.form337 } : null,
    approvedData: work.approvedData,
    approver: under.capacity,
    limitsChanged: factOf(work.limitsChanged, 'whether the work changed limits or data of the flight manual'),
    limitsRevised: work.limitsRevised,
    cabinTank: factOf(cabinTank, 'whether a fuel tank was put into the cabin or baggage compartment'),
    copyAboard: factOf(copyAboard, 'whether a copy of Form 337 for the fuel tank is aboard'),
  });
  return [...entry, ...before];
}
