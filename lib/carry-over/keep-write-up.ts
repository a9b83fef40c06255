import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { openWriteUp, type FoundThing } from '../findings/open-write-up';
import { vouch } from '../records/vouch';
import type { Severity } from '../rules/aircraft';
import { startOfDay } from '../rules/months';
import { keepDeferral, type KeptDeferral } from './keep-deferral';
import { WRITE_UP_STATEMENT } from './statements';
import type { AircraftOfPaper, CarriedWriteUp } from './write-up-on-paper';

/** Where on the aircraft it was found is not asked of a paper; a screen prints it as it stands. */
const STATION = 'carried over';

export interface KeptWriteUp {
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  readonly severity: Severity | null;
  readonly deferral: KeptDeferral | null;
  /** Of every record that was signed for it: they belong into the audit row. */
  readonly hashes: readonly string[];
}

/**
 * Takes over one open write-up, with its deferral if one stands: finding, discrepancy, and the signed record of who vouches for
 * them and from which document. The same triage speaks as for a finding of today; the paper can only be stricter.
 */
export async function keepWriteUp(
  context: Context,
  aircraft: AircraftOfPaper,
  carried: CarriedWriteUp,
  takenInId: string | null,
): Promise<KeptWriteUp> {
  const { tx, operatorId, actor, now } = context;
  const openedAt = new Date(startOfDay(carried.foundOn, aircraft.zone));
  const opened = await openWriteUp(context, aircraft.id, foundThing(carried, openedAt), [], {
    openedAt,
    severity: carried.severity,
  });
  const { discrepancyId, number, title, severity } = opened;
  const vouched = await vouch(tx, {
    operatorId,
    actor,
    now,
    zone: aircraft.zone,
    subjectKind: 'discrepancy',
    subjectId: discrepancyId,
    aircraftId: aircraft.id,
    source: carried.document,
    statement: WRITE_UP_STATEMENT,
    content: {
      number,
      words: carried.words,
      place: carried.place,
      foundOn: carried.foundOn,
      foundBy: carried.foundBy,
      kind: carried.kind,
      jasc: carried.jasc,
      equipmentId: carried.equipmentId,
      inoperativeCount: carried.inoperativeCount,
      severityOnPaper: carried.severity,
      severity,
    },
  });
  await tx.discrepancy.update({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    data: { vouchingId: vouched.id, takenInId },
  });
  const deferral = carried.deferral
    ? await keepDeferral(context, aircraft, { ...opened, ...carried, deferral: carried.deferral })
    : null;
  const hashes = [vouched.hash, ...(deferral?.hashes ?? [])];
  return { discrepancyId, number, title, severity, deferral, hashes };
}

const foundThing = (carried: CarriedWriteUp, openedAt: Date): FoundThing => ({
  findingId: randomUUID(),
  walkaroundId: null,
  station: carried.jasc.startsWith('61') ? 'propeller' : STATION,
  itemKey: null,
  phase: null,
  relatedId: null,
  findingKey: null,
  kind: carried.kind,
  jasc: carried.jasc,
  equipmentId: carried.equipmentId,
  inoperativeCount: carried.inoperativeCount,
  place: carried.place,
  words: carried.words,
  measurements: {},
  foundAt: openedAt.toISOString(),
});
