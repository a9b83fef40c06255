import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import type { WalkaroundList } from '../rules/walkaround/plan';
import { listOf, NOT_FITTED_YET } from './newest-list';
import type { PackList } from './pack';

export interface ListVersion {
  readonly id: string;
  readonly version: number;
  readonly list: WalkaroundList;
  readonly why: string;
  readonly madeBy: string;
  readonly madeAt: string;
  /** Walkarounds begun by it. */
  readonly walked: number;
}

export interface ListsOfType {
  readonly typeId: string;
  readonly typeName: string;
  /** Zone of the first base, for showing when versions were made. */
  readonly zone: string;
  /** Registrations of this type in service. */
  readonly aircraft: readonly string[];
  /** What is walked from now on: the newest version, or the starting list. */
  readonly current: PackList;
  /** All versions, newest first. */
  readonly versions: readonly ListVersion[];
}

/** The walkaround lists of all types, with everything they ever were: who made which version, when and why. */
export const readLists = query({
  verb: 'walkaround-list.read',
  input: z.object({}),
  async run({ tx, operatorId }): Promise<ListsOfType[]> {
    const types = await tx.aircraftType.findMany({
      where: { operatorId },
      orderBy: { name: 'asc' },
      include: {
        aircraft: {
          where: { retiredOn: null },
          select: { registration: true },
          orderBy: { registration: 'asc' },
        },
        walkaroundPlans: {
          orderBy: { version: 'desc' },
          include: { _count: { select: { walkarounds: true } } },
        },
      },
    });
    const base = await tx.base.findFirst({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const names = await namesOf(
      tx,
      types.flatMap((type) => type.walkaroundPlans.map((plan) => plan.madeById)),
    );
    return types.map((type) => {
      const versions = type.walkaroundPlans.map((plan) => ({
        id: plan.id,
        version: plan.version,
        list: listOf(plan.content),
        why: plan.why,
        madeBy: nameIn(names, plan.madeById),
        madeAt: instant(plan.madeAt),
        walked: plan._count.walkarounds,
      }));
      const [newest] = versions;
      return {
        typeId: type.id,
        typeName: type.name,
        zone: base?.zone ?? 'UTC',
        aircraft: type.aircraft.map(({ registration }) => registration),
        current: newest ? { id: newest.id, version: newest.version, list: newest.list } : NOT_FITTED_YET,
        versions,
      };
    });
  },
});
