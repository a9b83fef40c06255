import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { dateColumn } from '../db/dates';
import { eligibilityNow } from '../determinations/begin-deferral';
import { openDeferralWork } from '../determinations/open-deferral-work';
import { requireOpenWriteUp } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import type { CarriedContent } from '../fleet/carried-determination';
import { readSigner, signerFacts } from '../people/signer';
import { signatureOver } from '../records/signature';
import { vouch } from '../records/vouch';
import { answered } from '../rules/carried-over';
import { startOfDay } from '../rules/months';
import { mayPlacePlacard } from '../rules/who-may-determine';
import { DEFERRAL_STATEMENT } from './statements';
import type { AircraftOfPaper, CarriedDeferral, CarriedWriteUp } from './write-up-on-paper';

export interface KeptDeferral {
  readonly deferralId: string;
  readonly placardPlaced: boolean;
  /** Why the determination on paper does not count; null when it does. */
  readonly missing: string | null;
  readonly recordOwed: boolean;
  readonly hashes: readonly string[];
}

interface OfWriteUp extends CarriedWriteUp {
  readonly discrepancyId: string;
  readonly number: string;
  readonly deferral: CarriedDeferral;
}

/**
 * Takes over a deferral that stands on paper: the determination as the paper has it, with what is not known of it; the deferral;
 * its placard, in place only where somebody who may say so says so; and the part 43 entry as owed where the paper has none.
 * Whether it lets the aircraft fly is asked of the rules, as of any deferral.
 */
export async function keepDeferral(
  context: Context,
  aircraft: AircraftOfPaper,
  carried: OfWriteUp,
): Promise<KeptDeferral> {
  const { tx, operatorId, actor, now } = context;
  const { deferral, discrepancyId } = carried;
  const writeUp = await requireOpenWriteUp(tx, operatorId, discrepancyId);
  const eligibility = await eligibilityNow(context, aircraft.id, discrepancyId);
  const deferralId = randomUUID();
  const vouched = await vouch(tx, {
    operatorId,
    actor,
    now,
    zone: aircraft.zone,
    subjectKind: 'deferral',
    subjectId: deferralId,
    aircraftId: aircraft.id,
    source: carried.document,
    statement: DEFERRAL_STATEMENT,
    content: { number: carried.number, discrepancyId, ...onPaperOf(deferral) },
  });
  const determined = await keepDetermination(context, aircraft, carried, vouched.id);
  await tx.deferral.create({
    data: {
      id: deferralId,
      operatorId,
      discrepancyId,
      determinationId: determined.id,
      basis: deferral.basis,
      method: deferral.method,
      methodWords: deferral.methodWords,
      deactivationIsMaintenance: deferral.isMaintenance,
      melItemId: deferral.melItem?.id ?? null,
      melProceduresDone: answered(deferral.proceduresDone) === true,
      recordedOn: dateColumn(deferral.recordedOn),
      eltFirstRemovedOn: deferral.eltRemovedOn ? dateColumn(deferral.eltRemovedOn) : null,
      eltRecordComplete: deferral.eltRecordComplete,
      eligibility: eligibility as object,
      // The day of the paper: an inspection done since counts against it, whenever it was entered here (91.405(c)).
      begunAt: new Date(startOfDay(deferral.determinedOn ?? deferral.recordedOn, aircraft.zone)),
      vouchingId: vouched.id,
    },
  });
  const placardPlaced = await keepPlacard(context, aircraft, deferral, deferralId);
  const recordOwed = deferral.isMaintenance && !recordStands(deferral);
  if (recordOwed) await openDeferralWork(context, writeUp, deferralId, deferral);
  await tx.discrepancy.update({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    data: { state: 'deferred' },
  });
  await factsChanged(tx, operatorId, aircraft.id);
  const hashes = [vouched.hash, determined.hash];
  return { deferralId, placardPlaced, missing: deferral.judged.missing, recordOwed, hashes };
}

/** As facts count it (lib/fleet/carried-determination.ts). */
const recordStands = ({ record }: CarriedDeferral): boolean =>
  record.signed === 'yes' && record.authorised === 'yes' && record.by !== '';

/** The deferral as the paper has it, for the signed record. */
const onPaperOf = (deferral: CarriedDeferral) => {
  const { judged: _judged, melItem, ...said } = deferral;
  return { ...said, melItemId: melItem?.id ?? null, melItem: melItem?.title ?? null };
};

/** The row names whoever determined on paper; it is signed by whoever vouches for the paper. */
async function keepDetermination(
  { tx, operatorId, actor, now }: Context,
  aircraft: AircraftOfPaper,
  { deferral, document, number, discrepancyId }: OfWriteUp,
  vouchingId: string,
): Promise<{ id: string; hash: string }> {
  const { judged, determiner } = deferral;
  const name = determiner.name === '' ? 'Not known' : determiner.name;
  const certificate = {
    kind: determiner.certificate,
    number: determiner.number === '' ? 'not known' : determiner.number,
  };
  const carriedOver: CarriedContent = {
    determinedOn: deferral.determinedOn,
    missing: judged.allowed ? null : judged.missing,
    noHazard: deferral.noHazard,
    countedTogether: deferral.countedTogether,
    record: deferral.record,
    document,
    vouchedBy: actor.name,
  };
  const content = {
    what: 'no-hazard',
    carriedOver,
    onPaper: determiner,
    determiner: judged.determiner,
    basis: deferral.basis,
    melItem: deferral.melItem?.title ?? null,
    recordedOn: deferral.recordedOn,
    method: deferral.method,
    methodWords: deferral.methodWords,
    deactivationIsMaintenance: deferral.isMaintenance,
    melProceduresDone: answered(deferral.proceduresDone) === true,
    placardWording: deferral.placard.wording,
    placardLocation: deferral.placard.location,
    eltFirstRemovedOn: deferral.eltRemovedOn,
    eltRecordComplete: deferral.eltRecordComplete,
    writeUp: number,
    aircraft: aircraft.registration,
    by: name,
    certificate,
    statement: DEFERRAL_STATEMENT,
    at: now.toISOString(),
  };
  const signature = signatureOver(content, now, aircraft.zone);
  const id = randomUUID();
  await tx.determination.create({
    data: {
      id,
      operatorId,
      discrepancyId,
      kind: 'no-hazard',
      personId: actor.personId,
      personName: name,
      certificateKind: certificate.kind,
      certificateNumber: certificate.number,
      statement: DEFERRAL_STATEMENT,
      lines: judged.lines as object,
      vouchingId,
      ...signature,
    },
  });
  return { id, hash: signature.hash };
}

/**
 * In place counts when whoever vouches, or whoever determined on paper, is somebody who may place a placard here. Else it is owed:
 * a pilot or mechanic who looks at it marks it placed.
 */
async function keepPlacard(
  { tx, operatorId, actor, now }: Context,
  aircraft: AircraftOfPaper,
  { placard, judged, determinedOn }: CarriedDeferral,
  deferralId: string,
): Promise<boolean> {
  const voucher = signerFacts(await readSigner(tx, operatorId, actor.personId));
  const trusted = judged.mayPlacard || mayPlacePlacard(voucher, aircraft.today).allowed;
  const placed = placard.inPlace === 'yes' && trusted;
  await tx.placard.create({
    data: {
      id: randomUUID(),
      operatorId,
      deferralId,
      wording: placard.wording,
      location: placard.location,
      placedAt: placed
        ? determinedOn === null
          ? now
          : new Date(startOfDay(determinedOn, aircraft.zone))
        : null,
      placedById: placed ? actor.personId : null,
    },
  });
  return placed;
}
