import { command } from '../access/service';
import type { Tx } from '../db/client';
import { factsChanged, touched } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { whereActive } from '../releases/active-releases';
import type { ProposedFlight } from '../rules/operations';
import { baseColumns, requireFittingZone, sourceOf, type BaseColumns } from './columns';
import { changeBaseInput } from './schema';
import { said } from '../words/said';

/** The name is for people; everything else can change an answer. */
const isFact = (column: string): boolean => column !== 'name';

/**
 * Puts a base right. A change of anything but the name can change answers, so every aircraft based there gets a new
 * version of its facts, and releases from or to it are asked about again. The ident stays. Refuses `not_found`, and what `addBase` refuses of position and zone.
 */
export const changeBase = command({
  verb: 'base.change',
  input: changeBaseInput,
  async run({ tx, operatorId, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.baseId } };
    const base = await tx.base.findUnique({ where: key });
    if (!base) throw new Refusal('not_found', { say: said('There is no such base here.') });
    const columns = baseColumns(input);
    const changed = (Object.keys(columns) as (keyof BaseColumns)[]).filter(
      (column) => columns[column] !== base[column],
    );
    const moved = changed.some((column) => ['latitudeDeg', 'longitudeDeg', 'zone'].includes(column));
    if (moved) {
      const zoneConfirmed = input.zoneConfirmed || !changed.includes('zone');
      requireFittingZone(columns, { zoneConfirmed, now });
    }
    const source = moved ? sourceOf(columns, base.ident) : base.source;
    await tx.base.update({ where: key, data: { ...columns, source } });
    const aircraft = changed.some(isFact)
      ? await tx.aircraft.findMany({
          where: { operatorId, baseId: base.id, retiredOn: null },
          select: { id: true, registration: true },
          orderBy: { registration: 'asc' },
        })
      : [];
    for (const { id } of aircraft) await factsChanged(tx, operatorId, id);
    if (changed.some(isFact)) await touchReleasesAt(tx, operatorId, base.ident, now);
    return {
      value: { baseId: base.id, changed },
      audit: {
        subjectKind: 'base',
        subjectId: base.id,
        detail: {
          ident: base.ident,
          changed: Object.fromEntries(
            changed.map((column) => [column, { from: base[column], to: columns[column] }]),
          ),
          aircraft: aircraft.map(({ registration }) => registration),
        },
      },
    };
  },
});

/** Aircraft based elsewhere may be released from here or to here. */
async function touchReleasesAt(tx: Tx, operatorId: string, ident: string, now: Date): Promise<void> {
  const releases = await tx.release.findMany({
    where: { AND: [whereActive(now)], operatorId },
    select: { aircraftId: true, flight: true },
  });
  for (const { aircraftId, flight } of releases) {
    const { from, to } = flight as unknown as ProposedFlight;
    if (from.ident === ident || to.ident === ident) touched(tx, aircraftId);
  }
}
