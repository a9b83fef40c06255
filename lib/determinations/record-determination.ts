import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { SignerRow } from '../people/signer';
import { Refusal } from '../problems';
import { signatureOver } from '../records/signature';
import type { Line } from '../rules/verdict';
import type { DeterminingCertificate } from '../rules/who-may-determine';
import type { requireOpenWriteUp } from './write-up';
import { said } from '../words/said';

type WriteUp = Awaited<ReturnType<typeof requireOpenWriteUp>>;

interface DeterminationEntry {
  readonly kind:
    'severity' | 'within-limits' | 'no-hazard' | 'servicing' | 'inspected-at-inspection' | 'removed-for-good';
  /** The kind of certificate the ruling allowed it under. */
  readonly under: DeterminingCertificate | null;
  readonly statement: string;
  readonly lines: readonly Line[];
  /** What is said beyond who, when and about what; part of what is signed. */
  readonly said: object;
  readonly severity?: string;
  readonly measured?: string;
  readonly limitText?: string;
  readonly limitSource?: string;
  /** Within a stored limit: what was measured, in its smallest unit, and the limit. */
  readonly measurement?: string;
  readonly measuredValue?: number;
  readonly limitId?: string;
  /** 91.405(c): the deferral disposed of, and the inspection, or the record of one, at which it was. */
  readonly deferralId?: string;
  readonly inspectionId?: string | null;
  readonly complianceId?: string | null;
}

/** The certificate that carried the ruling: one held beside it, out of date perhaps, is not what the record names. */
function certificateUnder(signer: SignerRow, under: DeterminingCertificate | null) {
  const held = signer.certificates.find((one) => one.kind === under);
  if (!held) throw new Refusal('signature_refused', { say: said('No certificate carries this.') });
  return { kind: held.kind, number: held.number };
}

/** Writes a signed determination about a write-up. The caller has asked the rules already. */
export async function recordDetermination(
  { tx, operatorId, actor, now }: Context,
  writeUp: WriteUp,
  signer: SignerRow,
  entry: DeterminationEntry,
): Promise<{ id: string; hash: string }> {
  const id = randomUUID();
  const { kind, under, statement, lines, said, ...columns } = entry;
  const certificate = certificateUnder(signer, under);
  const content = {
    ...said,
    what: kind,
    writeUp: writeUp.number,
    aircraft: writeUp.aircraft.registration,
    by: actor.name,
    certificate,
    statement,
    at: now.toISOString(),
  };
  const signature = signatureOver(content, now, writeUp.aircraft.base.zone);
  await tx.determination.create({
    data: {
      id,
      operatorId,
      discrepancyId: writeUp.id,
      kind,
      statement,
      lines: lines as object,
      personId: actor.personId,
      personName: actor.name,
      certificateKind: certificate.kind,
      certificateNumber: certificate.number,
      ...columns,
      ...signature,
    },
  });
  return { id, hash: signature.hash };
}
