import { randomUUID } from 'node:crypto';
import type { Actor } from '../access/actor';
import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { signatureOver } from './signature';

/** What somebody can vouch for; a check in the database holds the same list. */
export const VOUCHED_KINDS = [
  'equipment',
  'aircraft-type',
  'aircraft',
  'mel',
  'discrepancy',
  'deferral',
  'compliance',
  'paper',
  'directives',
] as const;
export type VouchedKind = (typeof VOUCHED_KINDS)[number];

export interface ToVouch {
  readonly operatorId: string;
  readonly actor: Actor;
  readonly now: Date;
  /** The base's: the day of the signature is the day there. */
  readonly zone: string;
  readonly subjectKind: VouchedKind;
  readonly subjectId: string;
  /** Null: the subject is no aircraft's (a type). */
  readonly aircraftId: string | null;
  /** The document it was held against, with its revision or date. */
  readonly source: string;
  /** What the person says, as it was shown before the signature. */
  readonly statement: string;
  /**
   * The subject as it stands, as plain JSON; hours in tenths, dates as texts. It lies under `content.subject` of the row; what is
   * said about the signature itself stands beside it.
   */
  readonly content: object;
}

export interface Vouched {
  readonly id: string;
  /** Must stand in the audit row's detail, or verification says the record is not in the chain. */
  readonly hash: string;
}

/**
 * The one maker of `vouching` rows: a signed record that something here agrees with the aircraft's own documents, or was carried
 * over from them. Called by a command with `signing: true` only, because the password was asked there.
 */
export async function vouch(tx: Tx, given: ToVouch): Promise<Vouched> {
  const row = rowOf(given);
  await tx.vouching.create({ data: row });
  return { id: row.id, hash: row.hash };
}

/** The same for many things of one sitting or file, in one insert: each thing with its record. */
export async function vouchForAll<Thing>(
  tx: Tx,
  things: readonly Thing[],
  toVouch: (thing: Thing) => ToVouch,
): Promise<readonly { readonly thing: Thing; readonly vouched: Vouched }[]> {
  const made = things.map((thing) => ({ thing, row: rowOf(toVouch(thing)) }));
  await tx.vouching.createMany({ data: made.map(({ row }) => row) });
  return made.map(({ thing, row: { id, hash } }) => ({ thing, vouched: { id, hash } }));
}

function rowOf(given: ToVouch) {
  const { operatorId, actor, now, zone, subjectKind, subjectId, aircraftId, source, statement } = given;
  const signature = signatureOver(
    {
      act: 'vouching',
      subjectKind,
      subjectId,
      aircraftId,
      source,
      statement,
      person: { id: actor.personId, name: actor.name },
      at: instant(now),
      subject: given.content,
    },
    now,
    zone,
  );
  return {
    id: randomUUID(),
    operatorId,
    subjectKind,
    subjectId,
    aircraftId,
    source,
    personId: actor.personId,
    personName: actor.name,
    statement,
    ...signature,
    content: signature.content as Prisma.InputJsonObject,
  };
}
