import { randomUUID } from 'node:crypto';
import { MEL_STATEMENT } from '../carry-over/statements';
import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { faultFields } from '../equipment/read-rows';
import { sha256Of } from '../equipment/file-sum';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { vouch } from '../records/vouch';
import { answered } from '../rules/carried-over';
import { itemColumns } from './item-columns';
import { readMelFile } from './read-mel-file';
import { importMelInput } from './schema';
import { said } from '../words/said';

/**
 * Takes in a minimum equipment list with its letter of authorization, whole or not at all; signed by whoever held it against the
 * approved list (91.213(a)(1), (a)(2)). It takes the place of the one in force, which stays for the deferrals that stand on it.
 * The very same list again adds nothing.
 */
export const importMel = command({
  verb: 'mel.import',
  input: importMelInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const zone = aircraft.base.zone;
    const { checked, items } = await readMelFile(tx, operatorId, input);
    if (checked.errors.length > 0) {
      throw new Refusal('invalid', {
        say: said('Nothing was taken in. Put right what is wrong below.'),
        fields: faultFields(checked.errors),
      });
    }
    if (input.letterIssuedOn !== null && input.letterIssuedOn > dayAtBase(now, zone)) {
      throw fieldRefusal('letterIssuedOn', said('This day has not come yet.'));
    }
    const about = { aircraft: aircraft.registration, reference: input.reference, revision: input.revision };
    if (checked.unchanged && checked.replaces) {
      return {
        value: { melId: checked.replaces.id, items: items.length, unchanged: true },
        audit: { subjectKind: 'mel', subjectId: checked.replaces.id, detail: { ...about, unchanged: true } },
      };
    }
    const head = {
      reference: input.reference,
      revision: input.revision === '' ? null : input.revision,
      letterReference: input.letterReference,
      letterIssuedOn: input.letterIssuedOn,
      letterAboard: answered(input.letterAboard),
      enforceCategories: input.enforceCategories === 'yes',
      extensionCategories: [...input.extensionCategories],
      extensionReference: input.extensionReference === '' ? null : input.extensionReference,
    };
    const melId = randomUUID();
    const takenInId = randomUUID();
    const sha256 = sha256Of(input.text);
    const { hash, id: vouchingId } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone,
      subjectKind: 'mel',
      subjectId: melId,
      aircraftId: aircraft.id,
      source: [input.reference, input.revision, input.letterReference]
        .filter((part) => part !== '')
        .join(', '),
      statement: MEL_STATEMENT,
      content: { ...head, items: items.map(({ row: _row, ...item }) => item) },
    });
    await tx.takenIn.create({
      data: {
        id: takenInId,
        operatorId,
        what: 'mel',
        format: input.format,
        aircraftId: aircraft.id,
        fileName: input.fileName,
        sha256,
        rows: items.length,
        takenById: actor.personId,
        takenAt: now,
      },
    });
    await tx.mel.updateMany({
      where: { operatorId, aircraftId: aircraft.id, endedAt: null },
      data: { endedAt: now, endedById: actor.personId },
    });
    await tx.mel.create({
      data: {
        ...head,
        id: melId,
        operatorId,
        aircraftId: aircraft.id,
        letterIssuedOn: head.letterIssuedOn === null ? null : dateColumn(head.letterIssuedOn),
        takenInId,
        vouchingId,
        addedById: actor.personId,
        addedAt: now,
      },
    });
    await tx.melItem.createMany({
      data: items.map((item) => ({ ...itemColumns(item), id: randomUUID(), operatorId, melId })),
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraft.id } },
      data: { withoutMel: false },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { melId, items: items.length, unchanged: false },
      audit: {
        subjectKind: 'mel',
        subjectId: melId,
        detail: {
          ...about,
          items: items.length,
          fileName: input.fileName,
          ended: checked.replaces?.id ?? null,
          loses: checked.loses,
          hash,
        },
      },
    };
  },
});
