import { Prisma, type Tx } from '../db/client';
import { instant } from '../db/dates';
import { houseRuleVersion } from '../house-rules/stored';
import type { Instant } from '../rules/facts';
import { asksOfWalks, inForce, reaches, type HouseRuleVersion } from '../rules/house/house-rule';
import { newer } from '../rules/house/readings';
import type { WalkAnswers } from '../rules/walkaround/answers';
import { listOf } from '../walkarounds/newest-list';

export interface OilReading {
  readonly tenthsQuart: number;
  readonly at: Instant;
}

/** What the rules of the house need to know of one aircraft besides its other facts. */
export interface HouseOfAircraft {
  /** In force for this aircraft. */
  readonly versions: readonly HouseRuleVersion[];
  /** Null also where no rule in force for the aircraft asks: then it is not read. */
  readonly lastOil: OilReading | null;
  readonly lastWalkaround: { readonly at: Instant } | null;
}

interface Named {
  readonly id: string;
  readonly typeId: string;
}

const NOTHING_ASKED = { lastOil: null, lastWalkaround: null } as const;

/**
 * The rules of the house and what they ask, for these aircraft: one query where there are no rules, and what walkarounds left
 * behind only for the aircraft of which a rule asks it.
 */
export async function readHouse(
  tx: Tx,
  aircraft: readonly Named[],
  proposed: readonly HouseRuleVersion[] = [],
): Promise<(one: Named) => HouseOfAircraft> {
  const versions = aircraft.length === 0 ? [] : await versionsInForce(tx, proposed);
  const of = (one: Named) => versions.filter(({ reach }) => reaches(reach, one));
  const asked = aircraft.filter((one) => asksOfWalks(of(one).map(({ setting }) => setting)));
  const readings = await readingsOf(
    tx,
    asked.map(({ id }) => id),
  );
  return (one) => ({ versions: of(one), ...(readings.get(one.id) ?? NOTHING_ASKED) });
}

/** The rules of this operator that are in force; row-level security sees to it that there are no others. */
export const versionsInForce = async (
  tx: Tx,
  proposed: readonly HouseRuleVersion[] = [],
): Promise<HouseRuleVersion[]> =>
  inForce([...(await tx.houseRule.findMany()).map(houseRuleVersion), ...proposed]);

/** Whether a rule in force asks what walkarounds of this aircraft leave behind: then one that ends changes its facts. */
export async function walksCount(tx: Tx, one: Named): Promise<boolean> {
  const versions = (await versionsInForce(tx)).filter(({ reach }) => reaches(reach, one));
  return asksOfWalks(versions.map(({ setting }) => setting));
}

/** An oil reading may be older than the last walkaround, where that one did not ask for it; hardly by more than these. */
const WALKS_LOOKED_AT = 10;
const OIL = 'oil-quantity';

/** Whether oil is among what was measured. */
export const isOilReading = (measurements: object): boolean => Object.hasOwn(measurements, OIL);

async function readingsOf(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Omit<HouseOfAircraft, 'versions'>>> {
  if (ids.length === 0) return new Map();
  const rows = await tx.aircraft.findMany({
    where: { id: { in: [...ids] } },
    select: {
      id: true,
      walkarounds: {
        where: { finishedAt: { not: null } },
        orderBy: { finishedAt: 'desc' },
        take: WALKS_LOOKED_AT,
        select: { finishedAt: true, answers: true, plan: { select: { content: true } } },
      },
      findings: {
        where: { measurements: { path: [OIL], not: Prisma.AnyNull } },
        orderBy: { foundAt: 'desc' },
        take: 1,
        select: { measurements: true, foundAt: true, receivedAt: true },
      },
    },
  });
  return new Map(
    rows.map(({ id, walkarounds, findings }) => {
      const [last] = walkarounds;
      const onWalks = walkarounds.map(oilOfWalk).reduce(newer, null);
      const found = findings.map(oilOfFinding).reduce(newer, null);
      const lastWalkaround = last?.finishedAt ? { at: instant(last.finishedAt) } : null;
      return [id, { lastOil: newer(onWalks, found), lastWalkaround }];
    }),
  );
}

/** The last reading that was not taken back. Never later than the walkaround was finished: a clock may run ahead. */
function oilOfWalk(walk: {
  readonly finishedAt: Date | null;
  readonly answers: unknown;
  readonly plan: { readonly content: unknown } | null;
}): OilReading | null {
  const answers = walk.answers as WalkAnswers | null;
  if (!answers || !walk.plan || !walk.finishedAt) return null;
  const finishedMs = walk.finishedAt.getTime();
  const items = listOf(walk.plan.content).stations.flatMap((station) => station.items);
  return items
    .filter((item) => item.kind === 'number' && item.measurement === OIL)
    .flatMap(({ key }) => answers.items[key]?.readings.findLast(({ struck }) => !struck) ?? [])
    .map(({ value, at }) => ({ tenthsQuart: value, at: instantOf(Math.min(Date.parse(at), finishedMs)) }))
    .reduce<OilReading | null>(newer, null);
}

function oilOfFinding(row: {
  readonly measurements: unknown;
  readonly foundAt: Date;
  readonly receivedAt: Date;
}): OilReading | null {
  const value = (row.measurements as Record<string, unknown>)[OIL];
  if (typeof value !== 'number') return null;
  return { tenthsQuart: value, at: instantOf(Math.min(row.foundAt.getTime(), row.receivedAt.getTime())) };
}

const instantOf = (ms: number): Instant => instant(new Date(ms));
