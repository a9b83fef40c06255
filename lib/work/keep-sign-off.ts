import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { Signature } from '../records/signature';
import type { Line } from '../rules/verdict';
import type { CapacityRuling } from '../rules/who-may-sign';

/** A signature on work: the certificate it is given under, what is declared, and the lines that allowed it. */
interface SignedWork {
  readonly workId: string;
  readonly certificate: CapacityRuling['certificate'];
  readonly statement: string;
  readonly lines: readonly Line[];
  /** Inspections only: 43.11(a)(4) or (a)(5), and the list that was given. */
  readonly airworthy?: boolean;
  readonly listId?: string | null;
}

/** Keeps the sign-off of one piece of work; gives its id. The law was asked before. */
export async function keepSignOff(
  { tx, operatorId, actor }: Context,
  { certificate, lines, ...said }: SignedWork,
  signature: Signature,
): Promise<string> {
  const id = randomUUID();
  await tx.signOff.create({
    data: {
      id,
      operatorId,
      personId: actor.personId,
      personName: actor.name,
      certificateKind: certificate.kind,
      certificateNumber: certificate.number,
      lines: lines as object,
      ...said,
      ...signature,
    },
  });
  return id;
}
