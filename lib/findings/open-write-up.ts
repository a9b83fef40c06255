import { randomUUID } from 'node:crypto';
import type { Tx } from '../db/client';
import type { Context } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { requireEquipment } from '../fleet/require-equipment';
import { calendarDateOrNull } from '../db/dates';
import { triage, type StoredLimit, type TriageProposal } from '../rules/findings/triage';
import type { FindingKind, Severity } from '../rules/aircraft';
import { severityCarriedOver } from '../rules/carried-over';

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

/** A finding as it is written down, whoever or whatever raised it. */
export interface FoundThing {
  /** The finding's own number. */
  readonly findingId: string;
  readonly walkaroundId: string | null;
  readonly station: string;
  readonly itemKey: string | null;
  readonly phase: 'before-flight' | 'in-flight' | 'after-flight' | null;
  /** An earlier write-up it is the same as, only worse or back again. */
  readonly relatedId: string | null;
  readonly findingKey: string | null;
  readonly kind: FindingKind | null;
  readonly jasc: string | null;
  readonly equipmentId: string | null;
  readonly inoperativeCount: number | null;
  readonly place: string;
  readonly words: string;
  readonly measurements: Readonly<Record<string, number>>;
  /** ISO instant. */
  readonly foundAt: string;
}

/** A write-up that stood open on paper. The paper can make it stricter, never looser (lib/rules/carried-over.ts). */
export interface OnPaper {
  readonly openedAt: Date;
  readonly severity: Severity | null;
}

/**
 * Writes a finding down and opens a write-up for it in the same breath: from this moment the aircraft's answer knows it.
 * The finding keeps the words as sent; triage proposes the severity. Only what triage leaves to nobody's judgement
 * (grounding, limiting, a cosmetic note) counts at once; a "watch" counts when a mechanic has found it within limits.
 *
 * @param listLimits limits of the type's walkaround list that count where the aircraft has none of its own
 * @param onPaper it was open before this tool: since when, and how severe the paper calls it
 */
export async function openWriteUp(
  { tx, operatorId, actor, now }: Context,
  aircraftId: string,
  found: FoundThing,
  listLimits: readonly StoredLimit[] = [],
  onPaper: OnPaper | null = null,
): Promise<ReportedFinding> {
  const named = found.equipmentId
    ? await requireEquipment(tx, operatorId, aircraftId, found.equipmentId, 'also-removed')
    : null;
  const proposal = triage({
    findingKey: found.findingKey,
    kind: found.kind,
    // Outside the catalogue the item named on the equipment list says which system it is.
    jasc: found.jasc ?? (found.findingKey === null ? (named?.jasc ?? null) : null),
    measurements: found.measurements,
    limits: [...(await storedLimits(tx, operatorId, aircraftId)), ...listLimits],
  });
  // Taken off the list after a phone wrote this: the write-up counts all the same, and a mechanic says what it is about.
  const fits = named !== null && !named.removedOn && isFitting(named, found.findingKey, proposal);
  const equipmentId = fits ? named.id : await onlyFitting(tx, operatorId, aircraftId, proposal);
  await tx.finding.create({ data: findingRow(operatorId, aircraftId, actor.personId, now, found) });
  const severity = onPaper ? severityCarriedOver(onPaper.severity, atOnce(proposal)) : atOnce(proposal);
  const title = titleOf(proposal, found.findingKey, named?.name);
  const discrepancyId = randomUUID();
  const number = await nextNumber(tx, operatorId);
  await tx.discrepancy.create({
    data: {
      id: discrepancyId,
      operatorId,
      aircraftId,
      findingId: found.findingId,
      number,
      title,
      jasc: proposal.jasc.known ? proposal.jasc.value : '',
      kind: proposal.kind.known ? proposal.kind.value : 'damage',
      findingKey: found.findingKey,
      equipmentId,
      inoperativeCount: found.inoperativeCount,
      state: 'open',
      proposedSeverity: proposal.severity.known ? proposal.severity.value : null,
      severity,
      reasons: proposal.reasons as object,
      openedAt: onPaper?.openedAt ?? now,
    },
  });
  await factsChanged(tx, operatorId, aircraftId);
  return {
    findingId: found.findingId,
    discrepancyId,
    number,
    title,
    severity,
    reasons: proposal.reasons,
    settledBy: proposal.settledBy,
  };
}

/** The row of a finding. Also for an observation, which opens no write-up. */
export const findingRow = (
  operatorId: string,
  aircraftId: string,
  personId: string,
  now: Date,
  found: FoundThing,
) => ({
  id: found.findingId,
  operatorId,
  aircraftId,
  walkaroundId: found.walkaroundId,
  personId,
  station: found.station,
  itemKey: found.itemKey,
  phase: found.phase,
  relatedId: found.relatedId,
  findingKey: found.findingKey,
  kind: found.kind,
  place: found.place,
  words: found.words,
  measurements: found.measurements,
  foundAt: new Date(found.foundAt),
  receivedAt: now,
});

/** The limits stored for this very aircraft, each with where it comes from. */
export async function storedLimits(tx: Tx, operatorId: string, aircraftId: string): Promise<StoredLimit[]> {
  const rows = await tx.storedLimit.findMany({
    where: { operatorId, aircraftId, endedAt: null },
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
    where: { operatorId, aircraftId, function: proposal.equipmentFunction, removedOn: null },
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
