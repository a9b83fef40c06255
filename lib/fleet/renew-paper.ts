import { command } from '../access/service';
import { calendarDateOrNull, dateColumn } from '../db/dates';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { CalendarDate } from '../rules/facts';
import { dayInWords } from '../rules/in-words';
import { registrationExpiry } from '../rules/part-47/47-40-registration';
import { factsChanged } from './require-aircraft';
import { renewPaperInput } from './requirement-schema';
import { filled, said } from '../words/said';

/**
 * A paper renewed: its new last day, its number, and whether it is aboard, as a person reads them. What stood before stays
 * in the audit. A registration is held against 47.40(a): a later day than that is refused.
 */
export const renewPaper = command({
  verb: 'paper.renew',
  input: renewPaperInput,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.paperId } };
    const paper = await tx.paper.findUnique({
      where: key,
      include: { aircraft: { include: { base: true } } },
    });
    if (!paper || paper.aircraft.retiredOn) {
      throw new Refusal('not_found', { say: said('There is no such paper here.') });
    }
    const today = dayAtBase(now, paper.aircraft.base.zone);
    if (paper.kind === 'registration') requireRegistrationDates(input, today);
    const after = {
      validThrough: input.validThrough,
      expires: input.expires,
      reference: input.reference,
      aboard: input.aboard,
    };
    const before = {
      validThrough: calendarDateOrNull(paper.validThrough),
      expires: paper.expires,
      reference: paper.reference,
      aboard: paper.aboard,
    };
    await tx.paper.update({
      where: key,
      data: {
        ...after,
        validThrough: input.validThrough === null ? null : dateColumn(input.validThrough),
      },
    });
    await factsChanged(tx, operatorId, paper.aircraftId);
    return {
      value: { paperId: paper.id },
      audit: {
        subjectKind: 'paper',
        subjectId: paper.id,
        detail: {
          registration: paper.aircraft.registration,
          kind: paper.kind,
          before,
          after,
          issuedOn: input.issuedOn,
          by: actor.name,
        },
      },
    };
  },
});

/** 47.40(a): seven years after the last day of the month of issue, at most. */
export function requireRegistrationDates(
  {
    issuedOn,
    validThrough,
    expires,
  }: { issuedOn: string | null; validThrough: string | null; expires: boolean },
  today: CalendarDate,
): void {
  if (!expires || validThrough === null) {
    throw fieldRefusal(
      'validThrough',
      said('A registration runs out: 47.40(a). Enter the day on the certificate.'),
    );
  }
  if (issuedOn === null)
    throw fieldRefusal('issuedOn', said('The day of issue is needed: 47.40(a) counts from it.'));
  if (issuedOn > today) throw fieldRefusal('issuedOn', said('The day of issue has not come yet.'));
  if (validThrough < issuedOn) throw fieldRefusal('validThrough', said('This is before the day of issue.'));
  const most = registrationExpiry(issuedOn);
  if (validThrough > most) {
    throw fieldRefusal(
      'validThrough',
      filled(said('Later than 47.40(a) allows: issued {day}, it ends with {day2}.'), {
        day: dayInWords(issuedOn),
        day2: dayInWords(most),
      }),
    );
  }
}
