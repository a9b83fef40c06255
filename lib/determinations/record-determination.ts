import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { SignerRow } from '../people/signer';
import { signatureOver } from '../records/signature';
import type { Line } from '../rules/verdict';
import type { requireOpenWriteUp } from './write-up';

type WriteUp = Awaited<ReturnType<typeof requireOpenWriteUp>>;

interface DeterminationEntry {
  readonly kind: 'severity' | 'within-limits' | 'no-hazard' | 'servicing';
  readonly statement: string;
  readonly lines: readonly Line[];
  /** What is said beyond who, when and about what; part of what is signed. */
  readonly said: object;
  readonly severity?: string;
  readonly measured?: string;
  readonly limitText?: string;
  readonly limitSource?: string;
}

/** The certificate a determination is given under: a mechanic's before a repair station's before a pilot's. */
export function certificateUnder(signer: SignerRow): { readonly kind: string; readonly number: string } {
  const order = ['mechanic', 'repair-station', 'pilot'];
  const held = order.flatMap((kind) =>
    signer.certificates.filter((one) => one.kind === kind && !one.revokedOn),
  )[0];
  return held ? { kind: held.kind, number: held.number } : { kind: 'none', number: 'none' };
}

/** Writes a signed determination about a write-up. The caller has asked the rules already. */
export async function recordDetermination(
  { tx, operatorId, actor, now }: Context,
  writeUp: WriteUp,
  signer: SignerRow,
  entry: DeterminationEntry,
): Promise<{ id: string; hash: string }> {
  const id = randomUUID();
  const certificate = certificateUnder(signer);
  const { kind, statement, lines, said, ...columns } = entry;
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
