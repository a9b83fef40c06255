import { randomUUID } from 'node:crypto';
import type { Tx } from '../db/client';
import { command } from '../access/service';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { requireEquipment } from '../fleet/require-equipment';
import { Refusal } from '../problems';
import { calendarDateOrNull } from '../db/dates';
import { triage, type StoredLimit, type TriageProposal } from '../rules/findings/triage';
import type { Severity } from '../rules/aircraft';
import { reportFindingInput } from './schema';

/** What the reporter is told at once. */
export interface ReportedFinding {
  readonly findingId: string;
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  /** What counts from now on; null while undecided, and undecided grounds. */
  readonly severity: Severity | null;
  readonly reasons: TriageProposal['reasons'];
  readonly settledBy: TriageProposal['settledBy'];
}

/**
 * Takes a finding and opens a write-up for it in the same breath: from this moment the aircraft's answer knows it.
 * The finding keeps the words as sent; triage proposes the severity. Only what triage leaves to nobody's judgement
 * (grounding, limiting, a cosmetic note) counts at once; a "watch" counts when a mechanic has found it within limits.
 */
export const reportFinding = command({
  verb: 'finding.report',
  input: reportFindingInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    await requireOwnWalkaround(tx, operatorId, input.walkaroundId, aircraft.id);
    const named = input.equipmentId
      ? await requireEquipment(tx, operatorId, aircraft.id, input.equipmentId)
      : null;
    const proposal = triage({
      findingKey: input.findingKey,
      kind: input.kind,
      // Outside the catalogue the item named on the equipment list says which system it is.
      jasc: input.jasc ?? (input.findingKey === null ? (named?.jasc ?? null) : null),
      measurements: input.measurements,
      limits: await storedLimits(tx, operatorId, aircraft.id),
    });
    const fits = named !== null && isFitting(named, input.findingKey, proposal);
    const equipmentId = fits ? named.id : await onlyFitting(tx, operatorId, aircraft.id, proposal);
    await tx.finding.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        walkaroundId: input.walkaroundId,
        personId: actor.personId,
        station: input.station,
        findingKey: input.findingKey,
        kind: input.kind,
        place: input.place,
        words: input.words,
        measurements: input.measurements,
        foundAt: new Date(input.foundAt),
        receivedAt: now,
      },
    });
    const severity = atOnce(proposal);
    const title = titleOf(proposal, input.findingKey, named?.name);
    const discrepancyId = randomUUID();
    const number = await nextNumber(tx, operatorId);
    await tx.discrepancy.create({
      data: {
        id: discrepancyId,
        operatorId,
        aircraftId: aircraft.id,
        findingId: requestId,
        number,
        title,
        jasc: proposal.jasc.known ? proposal.jasc.value : '',
        kind: proposal.kind.known ? proposal.kind.value : 'damage',
        findingKey: input.findingKey,
        equipmentId,
        inoperativeCount: input.inoperativeCount,
        state: 'open',
        proposedSeverity: proposal.severity.known ? proposal.severity.value : null,
        severity,
        reasons: proposal.reasons as object,
        openedAt: now,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    const value: ReportedFinding = {
      findingId: requestId,
      discrepancyId,
      number,
      title,
      severity,
      reasons: proposal.reasons,
      settledBy: proposal.settledBy,
    };
    return {
      value,
      audit: {
        subjectKind: 'discrepancy',
        subjectId: discrepancyId,
        detail: {
          number,
          aircraft: aircraft.registration,
          title,
          severity,
          findingId: requestId,
        },
      },
    };
  },
});

async function requireOwnWalkaround(
  tx: Tx,
  operatorId: string,
  walkaroundId: string | null,
  aircraftId: string,
): Promise<void> {
  if (!walkaroundId) return;
  const walk = await tx.walkaround.findUnique({ where: { operatorId_id: { operatorId, id: walkaroundId } } });
  if (!walk || walk.aircraftId !== aircraftId)
    throw new Refusal('not_found', { say: 'There is no such walkaround.' });
}

/** The limits stored for this very aircraft, each with where it comes from. */
async function storedLimits(tx: Tx, operatorId: string, aircraftId: string): Promise<StoredLimit[]> {
  const rows = await tx.storedLimit.findMany({
    where: { operatorId, aircraftId },
    orderBy: { measurement: 'asc' },
  });
  return rows.map((row) => ({
    findingKey: row.findingKey,
    measurement: row.measurement,
    unit: row.unit,
    min: row.min,
    max: row.max,
    source: row.source,
    sourceDate: calendarDateOrNull(row.sourceDate),
  }));
}

/**
 * Whether the item named can be what the catalogue's finding is about. A dead fuel gauge filed under the landing light
 * would be judged as a landing light; the item then stays open, and open grounds. Nothing reported is turned away.
 */
const isFitting = (
  named: { function: string },
  findingKey: string | null,
  proposal: TriageProposal,
): boolean =>
  findingKey === null || proposal.equipmentFunction === null || named.function === proposal.equipmentFunction;

/**
 * The only line of the equipment list with the function the catalogue gives. With several and none named it stays open,
 * and the mechanic says which.
 */
async function onlyFitting(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  proposal: TriageProposal,
): Promise<string | null> {
  if (!proposal.equipmentFunction) return null;
  const fitting = await tx.equipment.findMany({
    where: { operatorId, aircraftId, function: proposal.equipmentFunction },
    select: { id: true },
    take: 2,
  });
  return fitting.length === 1 ? (fitting[0]?.id ?? null) : null;
}

/** The catalogue's title; outside it, the name of the equipment that does not work says more than its system's. */
function titleOf(proposal: TriageProposal, findingKey: string | null, itemName: string | undefined): string {
  const dead = proposal.kind.known && proposal.kind.value === 'inoperative';
  return findingKey === null && dead && itemName ? `${itemName} does not work` : proposal.title;
}

/** The severity that counts without anybody's judgement; null leaves it undecided, which grounds. */
function atOnce(proposal: TriageProposal): Severity | null {
  if (!proposal.severity.known) return null;
  const { value } = proposal.severity;
  // A note counts at once only for what is cosmetic; wear that looks harmless is still a mechanic's to find so.
  const cosmetic = proposal.kind.known && proposal.kind.value === 'cosmetic';
  return value === 'watch' || (value === 'note' && !cosmetic) ? null : value;
}

/** The operator's next write-up number, "W-0042". The write lock makes it gapless. */
async function nextNumber(tx: Tx, operatorId: string): Promise<string> {
  const { nextWriteUpNumber } = await tx.operator.update({
    where: { id: operatorId },
    data: { nextWriteUpNumber: { increment: 1 } },
    select: { nextWriteUpNumber: true },
  });
  return `W-${String(nextWriteUpNumber - 1).padStart(4, '0')}`;
}
