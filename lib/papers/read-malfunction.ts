import { z } from 'zod';
import { query } from '../access/service';
import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import { Refusal } from '../problems';
import { formatTenths } from '../rules/hours';
import { dayInWords } from '../rules/in-words';
import { jascCode } from '../rules/jasc';
import { localDate } from '../rules/months';
import { areaTitle } from '../rules/walkaround/areas';
import { partsOf } from '../work/parts';
import { withGaps, type MalfunctionFacts } from './malfunction-facts';
import { fileName } from './paper';

const WRITE_UP = {
  finding: true,
  aircraft: { include: { type: true, base: true, operator: true } },
  work: { include: { signOff: true }, orderBy: { startedAt: 'asc' } },
  determinations: { orderBy: { signedAt: 'asc' } },
} as const satisfies Prisma.DiscrepancyInclude;
type Row = Prisma.DiscrepancyGetPayload<{ include: typeof WRITE_UP }>;

export interface MalfunctionReport {
  /** Without its ending: the facts go out as PDF and as JSON. */
  readonly fileName: string;
  readonly jsonName: string;
  readonly facts: MalfunctionFacts;
}

/**
 * The facts of one write-up for a malfunction or defect report, as the records have them. The parts are those that signed
 * work took out. Engine, propeller and the times of parts are not kept here, and are said to be missing.
 */
export const readMalfunction = query({
  verb: 'paper.read',
  input: z.object({ discrepancyId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { discrepancyId }): Promise<MalfunctionReport> {
    const row = await tx.discrepancy.findUnique({
      where: { operatorId_id: { operatorId, id: discrepancyId } },
      include: WRITE_UP,
    });
    if (!row) throw new Refusal('not_found', { say: 'There is no such write-up here.' });
    const { aircraft, finding } = row;
    const ttis = ttisOf(row);
    const code = row.jasc ? jascCode(row.jasc) : null;
    const removed = row.work
      .filter((work) => work.state === 'signed')
      .flatMap((work) => partsOf(work.parts))
      .find((part) => part.did === 'removed');
    return {
      fileName: fileName(aircraft.registration, `${row.number}-facts`, ''),
      jsonName: fileName(aircraft.registration, `${row.number}-facts`, '', 'json'),
      facts: withGaps({
        madeAt: now.toISOString(),
        writeUp: row.number,
        operator: aircraft.operator.name,
        aircraft: {
          registration: aircraft.registration,
          type: aircraft.type.name,
          serial: aircraft.serial,
          totalTimeHours: ttis === null ? null : formatTenths(ttis),
        },
        engine: null,
        propeller: null,
        system: code?.known ? { code: code.value.code, title: code.value.title } : null,
        part: {
          name: removed?.name ?? null,
          number: removed?.number ?? null,
          serial: removed?.serial ?? null,
          condition: row.kind || null,
          location: [areaTitle(finding.station), finding.place].filter(Boolean).join(': ') || null,
          totalTimeHours: null,
          timeSinceOverhaulHours: null,
        },
        foundOn: localDate(instant(finding.foundAt), aircraft.base.zone),
        foundDuring: finding.phase?.replace('-', ' ') ?? null,
        description: [row.title, finding.words].filter(Boolean).join('\n'),
        done: doneAbout(row),
        submitter: { name: actor.name, organisation: aircraft.operator.name },
      }),
    };
  },
});

/** Total time when it was found is not recorded; that of the first signed work is the nearest the record has. */
function ttisOf({ work, aircraft, state }: Row): number | null {
  const signed = work.find((one) => one.state === 'signed' && one.ttisTenths !== null);
  return signed?.ttisTenths ?? (state === 'closed' ? null : aircraft.ttisTenths);
}

function doneAbout({ work, determinations, aircraft }: Row): string[] {
  const on = (at: Date) => dayInWords(localDate(instant(at), aircraft.base.zone));
  return [
    ...determinations.map((one) => ({
      at: one.signedAt,
      said: `${on(one.signedAt)}, ${one.personName}: ${one.statement}`,
    })),
    ...work.flatMap(({ signOff, title, description }) =>
      signOff
        ? [
            {
              at: signOff.signedAt,
              said: `${on(signOff.signedAt)}, ${signOff.personName}: ${description ?? title}`,
            },
          ]
        : [],
    ),
  ]
    .toSorted((a, b) => a.at.getTime() - b.at.getTime())
    .map(({ said }) => said);
}
