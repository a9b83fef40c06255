import type { z } from 'zod';
import { command, type Context } from '../access/service';
import { requireOpenWriteUp, underWork } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { findingOf, workPartOf } from '../rules/findings/catalogue';
import { systemsOfItem } from '../rules/part-43/43-appendix-a-preventive-maintenance';
import { requireWork } from './entry';
import { startWorkInput, type startRepairInput, type startTestInput } from './schema';
import { TESTS_BY } from './tests-owed';
import { refuseTooSmallAWord } from './usual-kind';
import { filled, said } from '../words/said';

type RepairInput = z.output<typeof startRepairInput>;
type TestInput = z.output<typeof startTestInput>;

/**
 * Begins work on a write-up, or the test that signed work left owed. From now until it is signed (or given up) the
 * aircraft does not fly: 91.407(a).
 */
export const startWork = command({
  verb: 'work.start',
  input: startWorkInput,
  run: (context, input) => ('testForId' in input ? startTest(context, input) : startRepair(context, input)),
});

async function startRepair(
  { tx, operatorId, actor, now, requestId }: Context,
  input: RepairInput,
): Promise<Started> {
  const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
  if (underWork(writeUp)) {
    throw new Refusal('conflict', {
      say: filled(said('Work on {number} has begun already.'), { number: writeUp.number }),
    });
  }
  // The part follows from the system, never from the one who would like to sign.
  const part = workPartOf(writeUp.findingKey, writeUp.jasc);
  if (!part.known) {
    throw new Refusal('conflict', { say: said('Judge the write-up first: it has no JASC code yet.') });
  }
  if (input.workKind === 'preventive' && input.preventiveItem === null) {
    throw fieldRefusal(
      'preventiveItem',
      said('Name the item of part 43 Appendix A(c), or enter it as a minor repair.'),
    );
  }
  refuseTooSmallAWord(writeUp, part.value, input.workKind);
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
  return started(requestId, { ...input, part: part.value, number: writeUp.number });
}

/** The test stands with the work that owes it; its write-up, closed or not, stays as it is. */
async function startTest(
  { tx, operatorId, actor, now, requestId }: Context,
  input: TestInput,
): Promise<Started> {
  const owing = await requireWork(tx, operatorId, input.testForId);
  if (owing.state !== 'signed' || owing.testsOwed.length === 0) {
    throw new Refusal('conflict', { say: said('This work leaves no test owed.') });
  }
  if (owing.corrections.some(({ state }) => state === 'signed')) {
    throw new Refusal('conflict', {
      say: said('This entry was corrected: the test belongs to the newer one.'),
    });
  }
  const settles = TESTS_BY[input.workKind]?.[input.part] ?? [];
  if (!settles.some((test) => owing.testsOwed.includes(test))) {
    throw fieldRefusal('part', said('This test is not owed after that work.'));
  }
  const underWay = await tx.maintenanceAction.findFirst({
    where: {
      operatorId,
      state: { in: ['started', 'entered'] },
      OR: [{ testForId: owing.id }, ...(owing.discrepancyId ? [{ discrepancyId: owing.discrepancyId }] : [])],
    },
  });
  if (underWay) {
    throw new Refusal('conflict', {
      say: filled(said('{title} is under way: sign it or give it up first.'), { title: underWay.title }),
    });
  }
  await tx.maintenanceAction.create({
    data: {
      id: requestId,
      operatorId,
      aircraftId: owing.aircraftId,
      discrepancyId: owing.discrepancyId,
      testForId: owing.id,
      title: input.title,
      part: input.part,
      // Opening of a static line is filed under the system it belongs to; so is its test.
      jasc: owing.jasc,
      workKind: input.workKind,
      preventiveItem: null,
      swapOnly: false,
      state: 'started',
      startedById: actor.personId,
      startedAt: now,
    },
  });
  await factsChanged(tx, operatorId, owing.aircraftId);
  return started(requestId, { ...input, number: owing.discrepancy?.number ?? null });
}

interface Started {
  readonly value: { readonly workId: string };
  readonly audit: { subjectKind: string; subjectId: string; detail: Record<string, unknown> };
}

const started = (
  workId: string,
  { number, title, part, workKind }: { number: string | null; title: string; part: string; workKind: string },
): Started => ({
  value: { workId },
  audit: { subjectKind: 'work', subjectId: workId, detail: { number, title, part, workKind } },
});

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
      filled(
        said(
          'Item {item} of part 43 Appendix A(c) does not put this right. Name the item that does, or enter it as a minor repair.',
        ),
        { item },
      ),
    );
  }
}
