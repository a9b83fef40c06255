import { command } from '../access/service';
import { LETTER_STATEMENT } from '../carry-over/statements';
import { calendarDateOrNull, dateColumn } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { vouch } from '../records/vouch';
import { answered } from '../rules/carried-over';
import { requireMel } from './require-mel';
import { melLetterInput } from './schema';

/**
 * Whether the letter of authorization is aboard, and which it is (91.213(a)(2)); signed, because aboard opens the way of the list.
 * What stood before stays in the audit.
 */
export const melLetter = command({
  verb: 'mel.letter',
  input: melLetterInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const mel = await requireMel(tx, operatorId, input.melId);
    const zone = mel.aircraft.base.zone;
    if (input.letterIssuedOn !== null && input.letterIssuedOn > dayAtBase(now, zone)) {
      throw fieldRefusal('letterIssuedOn', 'This day has not come yet.');
    }
    const after = {
      letterAboard: answered(input.letterAboard),
      letterReference: input.letterReference,
      letterIssuedOn: input.letterIssuedOn,
    };
    const { hash } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone,
      subjectKind: 'mel',
      subjectId: mel.id,
      aircraftId: mel.aircraftId,
      source: input.letterReference,
      statement: LETTER_STATEMENT,
      content: { act: 'letter', reference: mel.reference, ...after },
    });
    await tx.mel.update({
      where: { operatorId_id: { operatorId, id: mel.id } },
      data: {
        ...after,
        letterIssuedOn: input.letterIssuedOn === null ? null : dateColumn(input.letterIssuedOn),
      },
    });
    await factsChanged(tx, operatorId, mel.aircraftId);
    const before = {
      letterAboard: mel.letterAboard,
      letterReference: mel.letterReference,
      letterIssuedOn: calendarDateOrNull(mel.letterIssuedOn),
    };
    return {
      value: { melId: mel.id },
      audit: {
        subjectKind: 'mel',
        subjectId: mel.id,
        detail: { aircraft: mel.aircraft.registration, before, after, hash },
      },
    };
  },
});
