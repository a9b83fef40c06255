import type { Tx } from '../db/client';
import { aside } from '../db/savepoint';
import { queueDeliveries, type WrittenAct } from '../feeds/queue-deliveries';
import { touchedAircraft } from '../fleet/require-aircraft';
import { recallReleases } from '../releases/recall-releases';
import type { Context } from './service';

/** A write that has been done and linked into the audit chain, still in its transaction. */
export interface Written extends Context {
  readonly verb: string;
  readonly audit: Pick<WrittenAct, 'subjectKind' | 'subjectId' | 'detail'>;
  /** Its row in the audit chain. */
  readonly seq: number;
}

/**
 * What follows from every write, in its transaction: releases of aircraft whose facts changed are asked about again, and
 * other programs are told. Neither may cost the write itself: a write-up that is lost is worse than both.
 */
export async function afterWrite(written: Written): Promise<void> {
  const { tx, operatorId, verb, audit, seq, now: at } = written;
  await tellPrograms(tx, { operatorId, verb, ...audit, seq, at });
  const aircraftIds = touchedAircraft(tx);
  if (aircraftIds.length === 0) return;
  const recalled = await aside(tx, 'recall', () => recallReleases(written, aircraftIds));
  for (const act of recalled.done ? recalled.value : []) await tellPrograms(tx, act);
}

const tellPrograms = (tx: Tx, act: WrittenAct) => aside(tx, 'deliveries', () => queueDeliveries(tx, act));
