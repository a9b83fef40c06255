import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull } from '../db/dates';
import { Refusal } from '../problems';
import { saidIn } from '../records/signed-row';
import { signedSignOff } from '../records/signed-tables';
import { INSPECTION_PARTS } from '../rules/part-43/43-11-inspection-entry';
import { RUN_UP_CHECKS } from '../rules/part-43/43-15-performance';
import { WORK_ROW } from '../work/entry';
import type { InspectionPaper, InspectionPart } from './inspection-entries';
import { fileName } from './paper';
import { paperAircraft, paperSignature } from './read-entry';

const AIRCRAFT = { include: { type: true, base: true } } as const;
const GIVEN_UP = 'abandoned';

/** The signed entries of an inspection, to print. Refuses `conflict` while none is signed. */
export const readInspectionPaper = query({
  verb: 'paper.read',
  input: z.object({ inspectionId: z.uuid() }),
  async run({ tx, operatorId, now }, { inspectionId }): Promise<InspectionPaper> {
    const row = await tx.inspection.findUnique({
      where: { operatorId_id: { operatorId, id: inspectionId } },
      include: {
        aircraft: AIRCRAFT,
        work: {
          include: { ...WORK_ROW, signOff: { include: { list: true } } },
          orderBy: { startedAt: 'asc' },
        },
      },
    });
    if (!row) throw new Refusal('not_found', { say: 'There is no such inspection here.' });
    const inOrder = row.work.toSorted((a, b) => placeOf(a.part) - placeOf(b.part));
    const parts = inOrder.flatMap((work): InspectionPart[] => {
      const { signOff } = work;
      if (!signOff) return [];
      const { list, ...signed } = signOff;
      return [
        {
          part: work.part,
          title: work.title,
          description: work.description,
          references: work.references,
          performedBy: work.performedBy,
          completedOn: calendarDateOrNull(work.completedOn),
          ttisTenths: work.ttisTenths,
          airworthy: signOff.airworthy,
          list: list && { dated: calendarDate(list.dated), items: countOf(list.items) },
          signature: paperSignature(signOff, signOff.statement, signedSignOff({ ...signed, work })),
        },
      ];
    });
    if (parts.length === 0) {
      throw new Refusal('conflict', {
        say: 'Nothing of this inspection is signed yet: there is no entry to print.',
      });
    }
    return {
      fileName: fileName(row.aircraft.registration, `${row.kind}-entries`, row.id),
      aircraft: await paperAircraft(tx, operatorId, row.aircraft),
      madeAt: now.toISOString(),
      kind: row.kind,
      extent: row.extent,
      checklist: row.checklist,
      runUp: runUpSaid(row.runUp),
      parts,
      unsigned: inOrder.flatMap(({ signOff, state, part }) => (signOff || state === GIVEN_UP ? [] : [part])),
    };
  },
});

/** Airframe, powerplant, propeller: the order in which the logbooks are named. */
const placeOf = (part: string): number => (INSPECTION_PARTS as readonly string[]).indexOf(part);

const countOf = (items: unknown): number => (Array.isArray(items) ? items.length : 0);

const CHECK = z.looseObject({ answer: z.string(), reading: z.string() });

/** What the engine run of 43.15(c)(2) showed, a line a check; a check that is not on record is not there. */
function runUpSaid(performance: unknown): string | null {
  const lines = RUN_UP_CHECKS.flatMap(({ key, name }) => {
    const check = CHECK.safeParse(saidIn(performance, `runUp.${key}`));
    if (!check.success) return [];
    const { answer, reading } = check.data;
    return [`${name}: ${answer.replace('-', ' ')}${reading ? `, ${reading}` : ''}`];
  });
  return lines.length > 0 ? lines.join('\n') : null;
}
