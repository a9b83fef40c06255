import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { jascCode, partOf } from '../rules/jasc';
import { mayFindWithinLimits } from '../rules/who-may-determine';
import { recordDetermination } from './record-determination';
import { judgeSeverityInput } from './schema';
import { linesOf, requireOpenWriteUp } from './write-up';

/**
 * A mechanic judges a write-up: what kind of trouble, which system, which equipment, how severe. It can ground, say
 * that equipment does not work (limiting, so that 91.213 may be asked), or call something cosmetic. It can never make
 * damage, wear, a leak or the like flyable: that takes a repair or a finding within limits.
 */
export const judgeSeverity = command({
  verb: 'severity.judge',
  input: judgeSeverityInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
    const code = jascCode(input.jasc);
    if (!code.known) throw fieldRefusal('jasc', 'There is no such JASC code in the table.');
    refuseLooseSeverity(input);
    if (input.kind === 'inoperative') requireEquipment(input.equipmentId);
    if (writeUp.state === 'deferred') {
      throw new Refusal('conflict', {
        say: 'This write-up is deferred. Repair it, or end the deferral first.',
      });
    }
    if (input.equipmentId) {
      const item = await tx.equipment.findUnique({
        where: { operatorId_id: { operatorId, id: input.equipmentId } },
      });
      if (!item || item.aircraftId !== writeUp.aircraftId) {
        throw fieldRefusal('equipmentId', 'This is not on the equipment list of this aircraft.');
      }
      if (input.inoperativeCount !== null && input.inoperativeCount > item.installed) {
        throw fieldRefusal('inoperativeCount', `Only ${item.installed} installed.`);
      }
    }
    const zone = writeUp.aircraft.base.zone;
    const on = dayAtBase(now, zone);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const facts = signerFacts(signer);
    const ruling = mayFindWithinLimits(facts, code.value.part, on);
    if (!ruling.allowed) throw new Refusal('signature_refused', { lines: linesOf(ruling.lines) });
    // Moving a write-up to another system must not move it out of reach of the rating it needs.
    const partSoFar = partOf(writeUp.jasc);
    if (partSoFar.known && partSoFar.value !== code.value.part) {
      const before = mayFindWithinLimits(facts, partSoFar.value, on);
      if (!before.allowed) throw new Refusal('signature_refused', { lines: linesOf(before.lines) });
    }
    const { kind, jasc, equipmentId, inoperativeCount, severity, statement } = input;
    const signed = await recordDetermination(context, writeUp, signer, {
      kind: 'severity',
      statement,
      severity,
      lines: ruling.lines,
      said: { kind, jasc, equipmentId, inoperativeCount, severity },
    });
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: {
        kind,
        jasc,
        equipmentId,
        inoperativeCount,
        severity,
      },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    return {
      value: { determinationId: signed.id, severity },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: { number: writeUp.number, kind, severity, hash: signed.hash },
      },
    };
  },
});

/** Limiting is for equipment that does not work; a note is for looks only. Anything else grounds. */
function refuseLooseSeverity(input: { kind: string; severity: string }): void {
  if (input.severity === 'limiting' && input.kind !== 'inoperative') {
    throw fieldRefusal(
      'severity',
      'Only equipment that does not work can be limiting. Damage is repaired or found within limits.',
    );
  }
  if (input.severity === 'note' && input.kind !== 'cosmetic') {
    throw fieldRefusal('severity', 'Only what is cosmetic can be a note.');
  }
}

function requireEquipment(equipmentId: string | null): void {
  if (!equipmentId) throw fieldRefusal('equipmentId', 'Say which line of the equipment list does not work.');
}
