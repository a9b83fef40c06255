import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';
import type { HouseReach, HouseRuleVersion } from '../rules/house/house-rule';
import { settingInWords } from '../rules/house/in-words';
import { unitsOf, type Units } from '../units/say';
import { houseRuleVersion } from './stored';

/** One version of a rule, with names where ids are kept. */
export interface HouseVersionView extends HouseRuleVersion {
  /** What it asks, in one sentence. */
  readonly asks: string;
  /** Registrations and types it is for; null is the whole fleet. */
  readonly named: readonly string[] | null;
}

export interface HouseRuleView {
  readonly ruleId: string;
  readonly newest: HouseVersionView;
  /** Newest first. */
  readonly earlier: readonly HouseVersionView[];
}

export interface HouseRulesView {
  /** In force, the oldest first. */
  readonly inForce: readonly HouseRuleView[];
  /** The last ended first. */
  readonly ended: readonly HouseRuleView[];
  readonly aircraft: readonly {
    readonly id: string;
    readonly registration: string;
    readonly typeId: string;
  }[];
  readonly types: readonly { readonly id: string; readonly name: string }[];
  /** Of a base of the operator: a time of a rule is nobody's in particular. */
  readonly zone: string;
  /** What the operator's people read quantities in, where they have not chosen. */
  readonly units: Units;
}

/** The rules of the house with all their versions, for everybody: whoever meets one may read who set it and why. */
export const readHouseRules = query({
  verb: 'house-rule.read',
  input: z.object({}),
  async run({ tx, operatorId }): Promise<HouseRulesView> {
    const rows = await tx.houseRule.findMany({ where: { operatorId }, orderBy: { madeAt: 'asc' } });
    const choices = await readChoices(tx, operatorId);
    const operator = await tx.operator.findUniqueOrThrow({ where: { id: operatorId } });
    const base = await tx.base.findFirst({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const names = new Map([
      ...choices.aircraft.map(({ id, registration }) => [id, registration] as const),
      ...choices.types.map(({ id, name }) => [id, name] as const),
    ]);
    const byRule = new Map<string, HouseVersionView[]>();
    for (const row of rows) {
      const version = houseRuleVersion(row);
      const view = {
        ...version,
        asks: settingInWords(version.setting),
        named: namedOf(version.reach, names),
      };
      byRule.set(row.ruleId, [...(byRule.get(row.ruleId) ?? []), view]);
    }
    const rules = [...byRule].flatMap(([ruleId, versions]): HouseRuleView[] => {
      const [newest, ...earlier] = versions.toSorted((a, b) => b.version - a.version);
      return newest ? [{ ruleId, newest, earlier }] : [];
    });
    return {
      inForce: rules.filter(({ newest }) => newest.holds),
      ended: rules
        .filter(({ newest }) => !newest.holds)
        .toSorted((a, b) => (a.newest.at < b.newest.at ? 1 : -1)),
      ...choices,
      zone: base?.zone ?? 'UTC',
      units: unitsOf(null, operator.units),
    };
  },
});

/** What a rule can be limited to: aircraft that are not retired, and types. */
async function readChoices(tx: Tx, operatorId: string) {
  const aircraft = await tx.aircraft.findMany({
    where: { operatorId, retiredOn: null },
    select: { id: true, registration: true, typeId: true },
    orderBy: { registration: 'asc' },
  });
  const types = await tx.aircraftType.findMany({
    where: { operatorId },
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
  });
  return { aircraft, types };
}

const namedOf = (reach: HouseReach | null, names: ReadonlyMap<string, string>): string[] | null =>
  reach &&
  [...reach.aircraftIds, ...reach.typeIds].map((id) => names.get(id) ?? 'one that is not here any more');
