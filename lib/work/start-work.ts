import { command } from '../access/service';
import { requireOpenWriteUp, underWork } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { findingOf, workPartOf } from '../rules/findings/catalogue';
import type { PartOfAircraft } from '../rules/jasc';
import { systemsOfItem } from '../rules/part-43/43-appendix-a-preventive-maintenance';
import { startWorkInput } from './schema';

/**
 * Begins work on a write-up. From now until it is signed (or given up) the aircraft does not fly: 91.407(a).
 */
export const startWork = command({
  verb: 'work.start',
  input: startWorkInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
    if (underWork(writeUp)) {
      throw new Refusal('conflict', { say: `Work on ${writeUp.number} has begun already.` });
    }
    // The part follows from the system, never from the one who would like to sign.
    const part = workPartOf(writeUp.findingKey, writeUp.jasc);
    if (!part.known) {
      throw new Refusal('conflict', { say: 'Judge the write-up first: it has no JASC code yet.' });
    }
    if (input.workKind === 'preventive' && input.preventiveItem === null) {
      throw fieldRefusal(
        'preventiveItem',
        'Name the item of part 43 Appendix A(c), or enter it as a minor repair.',
      );
    }
    refuseTooSmallAWord(writeUp.findingKey, part.value, input.workKind);
    if (input.workKind === 'preventive') {
      refuseItemForSomethingElse(writeUp.findingKey, writeUp.jasc, input.preventiveItem);
    }
    await tx.maintenanceAction.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: writeUp.aircraftId,
        discrepancyId: writeUp.id,
        title: input.title,
        part: part.value,
        jasc: writeUp.jasc,
        workKind: input.workKind,
        preventiveItem: input.preventiveItem,
        swapOnly: input.swapOnly,
        state: 'started',
        startedById: actor.personId,
        startedAt: now,
      },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    return {
      value: { workId: requestId },
      audit: {
        subjectKind: 'work',
        subjectId: requestId,
        detail: { number: writeUp.number, title: input.title, part: part.value, workKind: input.workKind },
      },
    };
  },
});

/**
 * Where every usual way to put a finding right is a major repair (a bent blade), it is not entered as minor or
 * preventive: that would bring it within reach of a signature the law does not give. Judging the finding anew, with a
 * signature, is the way when it turns out to be something else.
 */
function refuseTooSmallAWord(findingKey: string | null, part: PartOfAircraft, workKind: string): void {
  const usual =
    (findingKey ? findingOf(findingKey)?.work : undefined)?.filter((way) => way.part === part) ?? [];
  if (workKind !== 'major' && usual.length > 0 && usual.every((way) => way.kind === 'major')) {
    throw fieldRefusal('workKind', 'Putting this right is a major repair (part 43 Appendix A(b)).');
  }
}

/**
 * An item of Appendix A(c) is preventive maintenance for what it names and nothing else: painting does not mend a wheel.
 * The catalogue says which items put its finding right; elsewhere the item has to belong to the system of the write-up.
 */
function refuseItemForSomethingElse(findingKey: string | null, jasc: string, item: number | null): void {
  if (item === null) return;
  const usual = findingKey ? findingOf(findingKey)?.work : undefined;
  const systems = systemsOfItem(item);
  const fits = usual
    ? usual.some((way) => way.preventiveItem === item)
    : systems === null || systems.includes(jasc.slice(0, 2));
  if (!fits) {
    throw fieldRefusal(
      'preventiveItem',
      `Item ${item} of part 43 Appendix A(c) does not put this right. Name the item that does, or enter it as a minor repair.`,
    );
  }
}
