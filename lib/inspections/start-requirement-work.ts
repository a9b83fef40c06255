import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import type { RequirementKind } from '../rules/aircraft';
import { partOf } from '../rules/jasc';
import { systemsOfItem } from '../rules/part-43/43-appendix-a-preventive-maintenance';
import { requireRequirement, type RequirementRow } from './requirement';
import { startRequirementWorkInput } from './requirement-schema';
import { mayBePreventive, WAYS, type FixedWork } from './work-of-requirement';
import { filled, said } from '../words/said';

interface Input {
  readonly workKind: 'preventive' | 'minor' | null;
  readonly preventiveItem: number | null;
  readonly jasc: string | null;
  readonly swapOnly: boolean | null;
}

/**
 * Begins work that answers something due without a write-up: a test, a directive, a battery, an oil change. Its entry and
 * signature are those of any work; signed, it is the record. Until then the aircraft does not fly (91.407(a)).
 */
export const startRequirementWork = command({
  verb: 'requirement.start-work',
  input: startRequirementWorkInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const requirement = await requireRequirement(tx, operatorId, input.requirementId);
    const open = await tx.maintenanceAction.findFirst({
      where: {
        operatorId,
        requirementId: requirement.id,
        inspectionId: null,
        state: { in: ['started', 'entered'] },
      },
    });
    if (open)
      throw new Refusal('conflict', {
        say: filled(said('Work on {name} has begun already.'), { name: requirement.name }),
      });
    const work = workFor(requirement, input);
    await tx.maintenanceAction.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: requirement.aircraftId,
        requirementId: requirement.id,
        title: input.title,
        ...work,
        state: 'started',
        startedById: actor.personId,
        startedAt: now,
      },
    });
    await factsChanged(tx, operatorId, requirement.aircraftId);
    return {
      value: { workId: requestId },
      audit: {
        subjectKind: 'work',
        subjectId: requestId,
        detail: {
          aircraft: requirement.aircraft.registration,
          requirement: requirement.name,
          title: input.title,
          ...work,
        },
      },
    };
  },
});

function workFor(
  { kind, name, binding }: RequirementRow,
  input: Input,
): FixedWork & { readonly preventiveItem: number | null } {
  const way = WAYS[kind as RequirementKind];
  switch (way.by) {
    case 'inspection':
      throw new Refusal('conflict', {
        say: filled(said('{name} is answered by an inspection. Begin that.'), { name }),
      });
    case 'check':
      throw new Refusal('conflict', {
        say: filled(said('{name} is recorded as a check, not as work.'), { name }),
      });
    case 'fixed':
      return { ...way.work, preventiveItem: null };
    case 'chosen':
      return chosen(input, mayBePreventive(way, binding));
  }
}

function chosen(input: Input, preventive: boolean) {
  const { workKind, preventiveItem, jasc, swapOnly } = input;
  if (workKind === null)
    throw fieldRefusal('workKind', said('Say whether this is preventive maintenance or a minor repair.'));
  if (jasc === null) throw fieldRefusal('jasc', said('Choose the system: who may sign follows from it.'));
  const part = partOf(jasc);
  if (!part.known) throw fieldRefusal('jasc', said('There is no such JASC code in the table.'));
  if (swapOnly === null)
    throw fieldRefusal('swapOnly', said('Say whether a unit was only taken out and put in.'));
  if (workKind === 'minor') return { workKind, part: part.value, jasc, swapOnly, preventiveItem: null };
  if (!preventive) {
    throw fieldRefusal(
      'workKind',
      said(
        'What a directive, a life limit or a binding interval requires is entered as a repair, not as preventive.',
      ),
    );
  }
  if (preventiveItem === null) {
    throw fieldRefusal(
      'preventiveItem',
      said('Name the item of part 43 Appendix A(c), or enter it as a minor repair.'),
    );
  }
  const systems = systemsOfItem(preventiveItem);
  if (systems !== null && !systems.includes(jasc.slice(0, 2))) {
    throw fieldRefusal(
      'preventiveItem',
      filled(
        said(
          'Item {preventiveItem} of part 43 Appendix A(c) is not about this system. Name the item that is, or enter it as a minor repair.',
        ),
        { preventiveItem },
      ),
    );
  }
  return { workKind, part: part.value, jasc, swapOnly, preventiveItem };
}
