import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { requireEquipment } from '../fleet/require-equipment';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { findingOf, workPartOf } from '../rules/findings/catalogue';
import type { CatalogueFinding } from '../rules/findings/finding';
import { jascCode } from '../rules/jasc';
import { mayFindWithinLimits } from '../rules/who-may-determine';
import { refuseListedUnairworthy } from './listed-unairworthy';
import { recordDetermination } from './record-determination';
import { judgeSeverityInput } from './schema';
import { linesOf, requireOpenWriteUp, underWork } from './write-up';
import { filled, said } from '../words/said';

/**
 * A mechanic judges a write-up: what kind of trouble, which system, which equipment, how severe. It can ground, say
 * that equipment does not work (limiting, so that 91.213 may be asked), or call something cosmetic. It can never make
 * damage, wear, a leak or the like flyable: that takes a repair or a finding within limits. Refuses what stands on a signed
 * list of 43.11(b).
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
    if (!code.known) throw fieldRefusal('jasc', said('There is no such JASC code in the table.'));
    refuseLooseSeverity(input);
    if (input.kind === 'inoperative' && !input.equipmentId) {
      throw fieldRefusal('equipmentId', said('Say which line of the equipment list does not work.'));
    }
    if (writeUp.state === 'deferred') {
      throw new Refusal('conflict', {
        say: said('This write-up is deferred. Repair it, or end the deferral first.'),
      });
    }
    await refuseListedUnairworthy(tx, operatorId, writeUp);
    if (input.equipmentId) {
      const item = await requireEquipment(tx, operatorId, writeUp.aircraftId, input.equipmentId);
      if (input.inoperativeCount !== null && input.inoperativeCount > item.installed) {
        throw fieldRefusal(
          'inoperativeCount',
          filled(said('Only {installed} installed.'), { installed: item.installed }),
        );
      }
    }
    const zone = writeUp.aircraft.base.zone;
    const on = dayAtBase(now, zone);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const facts = signerFacts(signer);
    // The catalogue's finding says which rating reaches it; judged to be something else, its system says so.
    const listed = writeUp.findingKey ? findingOf(writeUp.findingKey) : null;
    const reported = writeUp.finding.findingKey ? findingOf(writeUp.finding.findingKey) : null;
    const sameFinding = listed?.kind === input.kind && writeUp.jasc === input.jasc;
    const findingKey = sameFinding ? writeUp.findingKey : null;
    refuseExplainingAway(writeUp.kind, input.kind, reported);
    // Both the part it was and the part it becomes: moving a write-up must not move it out of reach of a rating.
    const parts = [workPartOf(writeUp.findingKey, writeUp.jasc), workPartOf(findingKey, input.jasc)];
    const samePart = parts.every((part) => part.known && parts[0]?.known && part.value === parts[0].value);
    if (!(samePart && writeUp.jasc === input.jasc)) refuseMovingUnderWork(writeUp);
    const rulings = parts.flatMap((part) => (part.known ? [mayFindWithinLimits(facts, part.value, on)] : []));
    const against = rulings.filter((ruling) => !ruling.allowed).flatMap((ruling) => ruling.lines);
    if (against.length > 0) throw new Refusal('signature_refused', { lines: linesOf(against) });
    const { kind, jasc, equipmentId, inoperativeCount, severity, statement } = input;
    const signed = await recordDetermination(context, writeUp, signer, {
      kind: 'severity',
      under: rulings.at(-1)?.under ?? null,
      statement,
      severity,
      lines: rulings.flatMap((ruling) => ruling.lines),
      said: { kind, jasc, equipmentId, inoperativeCount, severity },
    });
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: {
        kind,
        jasc,
        findingKey,
        equipmentId,
        inoperativeCount,
        severity,
      },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    await tellReporters(context, {
      discrepancyId: writeUp.id,
      what: 'judged',
      eventId: signed.id,
      byName: actor.name,
      words: statement,
    });
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
      said('Only equipment that does not work can be limiting. Damage is repaired or found within limits.'),
    );
  }
  if (input.severity === 'note' && input.kind !== 'cosmetic') {
    throw fieldRefusal('severity', said('Only what is cosmetic can be a note.'));
  }
}

/**
 * Work begun was begun for this system, and its signature will close the write-up: another system under it would be
 * closed by a certificate that does not reach it (43.7).
 */
function refuseMovingUnderWork(writeUp: Awaited<ReturnType<typeof requireOpenWriteUp>>): void {
  if (!underWork(writeUp)) return;
  throw new Refusal('conflict', {
    say: filled(
      said(
        'Work on {number} is under way for another system. Sign it or give it up first, or write up what you found as a new finding.',
      ),
      { number: writeUp.number },
    ),
  });
}

/** Kinds that 91.213 never covers. */
const NEVER_DEFERRED: readonly string[] = ['damage', 'wear', 'leak', 'contamination', 'fastener'];

/**
 * Nothing becomes looks by being called so: damage and wear are found within limits, with the limit and its source, and
 * what does not work is shown to work by a signed entry. Nor does damage become equipment that does not work, where
 * there is no equipment whose function is gone; what was reported counts, whatever it has been judged meanwhile.
 */
function refuseExplainingAway(before: string, after: string, reported: CatalogueFinding | null): void {
  if (after === 'cosmetic' && before !== 'cosmetic') {
    throw fieldRefusal(
      'kind',
      said(
        'Only what was written up as cosmetic is. Damage and wear are found within limits, with the limit and its source; all else is put right and signed.',
      ),
    );
  }
  const neverDeferred = NEVER_DEFERRED.includes(before) || NEVER_DEFERRED.includes(reported?.kind ?? '');
  if (neverDeferred && after === 'inoperative' && reported && reported.equipmentFunction === null) {
    throw fieldRefusal(
      'kind',
      said('This is not equipment with a function that could be deferred. It is repaired.'),
    );
  }
}
