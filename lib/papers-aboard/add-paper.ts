import { command } from '../access/service';
import { PAPER_STATEMENT } from '../carry-over/statements';
import { dateColumn } from '../db/dates';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { requireRegistrationDates } from '../fleet/renew-paper';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { vouch } from '../records/vouch';
import { addPaperInput } from './schema';
import { filled, said } from '../words/said';

/**
 * One of the papers that must be aboard, entered for the first time; signed by whoever read it. One that is there already is
 * renewed (`paper.renew`). A registration is held against 47.40(a).
 */
export const addPaper = command({
  verb: 'paper.add',
  input: addPaperInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const zone = aircraft.base.zone;
    const standing = await tx.paper.findFirst({
      where: { operatorId, aircraftId: aircraft.id, kind: input.kind },
      select: { id: true },
    });
    if (standing) {
      throw new Refusal('conflict', {
        say: filled(said('{registration} has this paper on record already. Renew it instead.'), {
          registration: aircraft.registration,
        }),
      });
    }
    if (input.kind === 'registration') requireRegistrationDates(input, dayAtBase(now, zone));
    const { kind, reference, expires, validThrough, aboard, issuedOn } = input;
    const { id: vouchingId, hash } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone,
      subjectKind: 'paper',
      subjectId: requestId,
      aircraftId: aircraft.id,
      source: reference,
      statement: PAPER_STATEMENT,
      content: { kind, reference, expires, validThrough, aboard, issuedOn },
    });
    await tx.paper.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        kind,
        reference,
        aboard,
        expires,
        validThrough: validThrough === null ? null : dateColumn(validThrough),
        vouchingId,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { paperId: requestId },
      audit: {
        subjectKind: 'paper',
        subjectId: requestId,
        detail: {
          registration: aircraft.registration,
          kind,
          reference,
          validThrough,
          aboard,
          issuedOn,
          hash,
        },
      },
    };
  },
});
