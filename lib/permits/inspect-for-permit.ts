import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { calendarDate } from '../db/dates';
import type { Tx } from '../db/client';
import { requireAllowed } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { whereSpendsPermit } from '../releases/active-releases';
import { dayAtBase, signatureOver } from '../records/signature';
import { mayInspectForPermit } from '../rules/inspect-for-permit';
import { coversOf, partsCovered } from './covered';
import { inspectForPermitInput } from './schema';
import { said } from '../words/said';

/**
 * A mechanic or repair station finds the aircraft safe for the flight of its permit and signs that (21.199(b)). Refused when
 * the permit asks for none, is inspected, used or over already, or the certificates do not reach what it covers.
 */
export const inspectForPermit = command({
  verb: 'permit.inspect',
  input: inspectForPermitInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, { permitId, statement }) {
    const permit = await requireOpenPermit(tx, operatorId, permitId);
    const { zone } = permit.aircraft.base;
    const on = dayAtBase(now, zone);
    if (calendarDate(permit.goodThrough) < on)
      throw new Refusal('conflict', { say: said('This permit is over.') });
    const covers = coversOf(permit.covers);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const ruling = mayInspectForPermit(signerFacts(signer), await partsOf(tx, operatorId, covers), on);
    requireAllowed(ruling);
    const held = signer.certificates.find((one) => one.kind === ruling.under);
    if (!held) throw new Refusal('signature_refused', { say: said('No certificate carries this.') });
    const content = {
      what: 'inspection-for-special-flight-permit',
      permit: permit.reference,
      permitHash: permit.hash,
      aircraft: permit.aircraft.registration,
      safeForTheFlight: true,
      statement,
      certificate: { kind: held.kind, number: held.number },
      lines: ruling.lines,
      by: actor.name,
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, zone);
    await tx.permitInspection.create({
      data: {
        id: randomUUID(),
        operatorId,
        permitId,
        personId: actor.personId,
        personName: actor.name,
        certificateKind: held.kind,
        certificateNumber: held.number,
        statement,
        ...signature,
      },
    });
    await factsChanged(tx, operatorId, permit.aircraftId);
    return {
      value: { permitId },
      audit: {
        subjectKind: 'special-flight-permit',
        subjectId: permitId,
        detail: { aircraft: permit.aircraft.registration, reference: permit.reference, hash: signature.hash },
      },
    };
  },
});

async function requireOpenPermit(tx: Tx, operatorId: string, id: string) {
  const permit = await tx.specialFlightPermit.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: {
      inspection: true,
      releases: { where: whereSpendsPermit, select: { id: true } },
      aircraft: { include: { base: true } },
    },
  });
  if (!permit) throw new Refusal('not_found', { say: said('There is no such permit here.') });
  if (!permit.asksInspection)
    throw new Refusal('conflict', { say: said('This permit asks for no inspection.') });
  if (permit.inspection)
    throw new Refusal('conflict', { say: said('The inspection for this permit is signed already.') });
  if (permit.releases.length > 0)
    throw new Refusal('conflict', { say: said('The flight of this permit is released already.') });
  return permit;
}

/** Write-ups may have closed since the permit was recorded; the permit names them all the same. */
export async function partsOf(tx: Tx, operatorId: string, covers: ReturnType<typeof coversOf>) {
  const ids = covers.filter(({ kind }) => kind === 'discrepancy').map(({ id }) => id);
  const writeUps = await tx.discrepancy.findMany({
    where: { operatorId, id: { in: ids } },
    select: { id: true, findingKey: true, jasc: true },
  });
  return partsCovered(covers, writeUps);
}
