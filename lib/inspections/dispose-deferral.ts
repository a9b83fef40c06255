import type { z } from 'zod';
import { command, type Context } from '../access/service';
import type { Tx } from '../db/client';
import { distinct, eligibilityNow, refuseAloneOnly, togetherSaid } from '../determinations/begin-deferral';
import { endDeferral } from '../determinations/end-deferral';
import { recordDetermination } from '../determinations/record-determination';
import { linesOf, requireAllowed, requireOpenWriteUp, underWork } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts, type SignerRow } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { AircraftTypeFacts } from '../rules/aircraft';
import { workPartOf } from '../rules/findings/catalogue';
import { mayDetermineNoHazard, toDeterminer } from '../rules/who-may-determine';
import { mayApproveReturnToService } from '../rules/who-may-sign';
import { requireOpenInspection } from './inspection';
import { disposeDeferralInput } from './schema';
import { filled, said } from '../words/said';

type WriteUp = Awaited<ReturnType<typeof requireOpenWriteUp>>;

/**
 * 91.405(c): what becomes of a deferred item at a required inspection, or afterwards for one that was recorded without a
 * word on it. `inspected`: 91.213(d) is asked again and no hazard determined afresh, alone and together; it stays deferred.
 * `removed`: for good; deferral and write-up end and the unit is off the equipment list. Refused while 91.213 bars or limits
 * any kind of flight over it, because the list and the directives are asked only of what is written up. Repaired or replaced
 * is work like any other on the write-up, and ends the deferral by itself; while such work is under way nothing is said here.
 */
export const disposeDeferral = command({
  verb: 'deferral.dispose',
  input: disposeDeferralInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor } = context;
    const deferral = await tx.deferral.findUnique({
      where: { operatorId_id: { operatorId, id: input.deferralId } },
      include: { end: true, placards: true, work: true },
    });
    if (!deferral) throw new Refusal('not_found', { say: said('There is no such deferral here.') });
    if (deferral.end)
      throw new Refusal('conflict', { say: said('This deferral has ended; nothing is owed for it.') });
    const writeUp = await requireOpenWriteUp(tx, operatorId, deferral.discrepancyId);
    if (underWork(writeUp)) {
      throw new Refusal('conflict', {
        say: filled(
          said('Work on {number} is under way, and its entry is not signed. Sign it or give it up first.'),
          { number: writeUp.number },
        ),
      });
    }
    const at = { inspectionId: input.inspectionId, complianceId: input.complianceId };
    await requireInspectionOf(context, writeUp.aircraftId, deferral.begunAt, at);
    await refuseTwice(tx, operatorId, deferral.id, at);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const about = { deferralId: deferral.id, ...at };
    const signed =
      input.disposition === 'inspected'
        ? { ...(await leftInoperative(context, writeUp, signer, about, input)), equipment: null }
        : await removedForGood(context, writeUp, signer, deferral, about, input.statement);
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    return {
      value: { determinationId: signed.id, disposition: input.disposition },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: {
          number: writeUp.number,
          deferralId: deferral.id,
          disposition: input.disposition,
          ...at,
          ...(signed.equipment ? { equipment: signed.equipment } : {}),
          hash: signed.hash,
        },
      },
    };
  },
});

interface At {
  readonly inspectionId: string | null;
  readonly complianceId: string | null;
}

/** An open inspection of the same aircraft, or a recorded annual or 100-hour that came after the deferral. */
async function requireInspectionOf(
  { tx, operatorId }: Context,
  aircraftId: string,
  begunAt: Date,
  at: At,
): Promise<void> {
  const nothing = new Refusal('not_found', { say: said('There is no such inspection of this aircraft.') });
  if (at.inspectionId !== null) {
    const inspection = await requireOpenInspection(tx, operatorId, at.inspectionId);
    if (inspection.aircraftId !== aircraftId) throw nothing;
    return;
  }
  const record = await tx.compliance.findUnique({
    where: { operatorId_id: { operatorId, id: at.complianceId ?? '' } },
    include: { requirement: true },
  });
  if (!record || record.requirement.aircraftId !== aircraftId) throw nothing;
  if (!['annual', 'hundred-hour'].includes(record.requirement.kind)) {
    throw new Refusal('conflict', {
      say: said('Only an annual or 100-hour inspection asks what becomes of deferred items.'),
    });
  }
  if (record.recordedAt <= begunAt) {
    throw new Refusal('conflict', {
      say: said('This inspection was on record before the item was deferred.'),
    });
  }
}

async function refuseTwice(tx: Tx, operatorId: string, deferralId: string, at: At): Promise<void> {
  const earlier = await tx.determination.findFirst({
    where: { operatorId, kind: 'inspected-at-inspection', deferralId, ...at },
  });
  if (earlier)
    throw new Refusal('conflict', { say: said('This item has its disposition at this inspection already.') });
}

/** Inspected: 91.213 asked again with today's facts, and (d)(4) determined afresh by somebody who may. */
async function leftInoperative(
  context: Context,
  writeUp: WriteUp,
  signer: SignerRow,
  about: At & { readonly deferralId: string },
  input: z.output<typeof disposeDeferralInput>,
) {
  const facts = signerFacts(signer);
  const { rating } = writeUp.aircraft.type;
  const ruling = mayDetermineNoHazard(facts, rating, dayAtBase(context.now, writeUp.aircraft.base.zone));
  requireAllowed(ruling);
  const report = await eligibilityNow(context, writeUp.aircraftId, writeUp.id);
  if (!report.deferrable) {
    throw new Refusal('signature_refused', {
      say: said(
        '14 CFR 91.213 does not let this stay inoperative any more. It is repaired, replaced or removed.',
      ),
      lines: distinct(linesOf([...report.gate, ...report.table.flatMap((row) => row.lines)])),
    });
  }
  refuseAloneOnly(report, input);
  return recordDetermination(context, writeUp, signer, {
    kind: 'inspected-at-inspection',
    under: ruling.under,
    statement: input.statement,
    lines: ruling.lines,
    said: {
      ...about,
      determiner: toDeterminer(facts, rating),
      noHazard: true,
      ...togetherSaid(report),
      eligibility: report,
    },
    ...about,
  });
}

interface Removable {
  readonly id: string;
  readonly method: string;
  readonly work: readonly { readonly state: string }[];
}

/** Removed for good, by somebody who may approve its removal: one line less on the equipment list. */
async function removedForGood(
  context: Context,
  writeUp: WriteUp,
  signer: SignerRow,
  deferral: Removable,
  about: At & { readonly deferralId: string },
  statement: string,
) {
  const { tx, operatorId, now } = context;
  if (deferral.method !== 'removed' || !deferral.work.some(({ state }) => state === 'signed')) {
    throw new Refusal('conflict', {
      say: said(
        'It is deferred as deactivated, or its removal is not signed. Remove it as work with its entry first.',
      ),
    });
  }
  await refuseStillAskedFor(context, writeUp);
  const part = workPartOf(writeUp.findingKey, writeUp.jasc);
  if (!part.known) throw new Refusal('conflict', { say: said('Give the write-up its JASC code first.') });
  const facts = signerFacts(signer);
  const ruling = mayApproveReturnToService(
    facts,
    {
      part: part.value,
      kind: 'minor',
      preventiveItem: null,
      swapOnly: true,
      aircraftCategory: writeUp.aircraft.type.category as AircraftTypeFacts['category'],
      performedBySigner: true,
    },
    dayAtBase(now, writeUp.aircraft.base.zone),
  );
  requireAllowed(ruling);
  const signed = await recordDetermination(context, writeUp, signer, {
    kind: 'removed-for-good',
    under: ruling.under?.capacity === 'repair-station' ? 'repair-station' : 'mechanic',
    statement,
    lines: ruling.lines,
    said: { ...about, listsRevised: true, inoperativeCount: writeUp.inoperativeCount },
    ...about,
  });
  const equipment = await takeOffTheList(tx, operatorId, writeUp);
  await endDeferral(context, { deferralId: deferral.id, how: 'removed', words: statement });
  await tx.discrepancy.update({
    where: { operatorId_id: { operatorId, id: writeUp.id } },
    data: { state: 'closed', closedAt: now, closedHow: 'removed' },
  });
  return { ...signed, equipment };
}

/**
 * The equipment list (91.213(d)(2)(ii)), directives (iv) and a minimum equipment list are asked of what is written up, and
 * of nothing once the write-up is closed. So every kind of flight has to be open without a limit before it is closed so.
 */
async function refuseStillAskedFor(context: Context, writeUp: WriteUp): Promise<void> {
  const { gate, table } = await eligibilityNow(context, writeUp.aircraftId, writeUp.id);
  const held = table
    .flatMap((row) => row.lines)
    .filter(({ effect }) => effect !== 'supports' && effect !== 'notes');
  if (held.length === 0 && table.every(({ allowed }) => allowed)) return;
  throw new Refusal('signature_refused', {
    say: said(
      'The equipment list, a directive or part 91 still asks for it on some flights: it stays deferred, or the list is revised first.',
    ),
    lines: distinct([...linesOf(gate), ...held.map(({ cite, because }) => ({ cite, because }))]),
  });
}

/** Lowers what is installed; tells what it was and is, for the audit. */
async function takeOffTheList(
  tx: Tx,
  operatorId: string,
  writeUp: WriteUp,
): Promise<{ readonly id: string; readonly installedBefore: number; readonly installedAfter: number }> {
  const { equipmentId, inoperativeCount } = writeUp;
  if (!equipmentId || inoperativeCount === null) {
    throw new Refusal('conflict', {
      say: said('Say first which equipment it is and how many of it: judge it anew.'),
    });
  }
  const key = { operatorId_id: { operatorId, id: equipmentId } };
  const { installed } = await tx.equipment.findUniqueOrThrow({ where: key, select: { installed: true } });
  const after = Math.max(0, installed - inoperativeCount);
  await tx.equipment.update({ where: key, data: { installed: after } });
  return { id: equipmentId, installedBefore: installed, installedAfter: after };
}
