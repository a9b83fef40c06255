import { z } from 'zod';
import { instant } from '../db/dates';
import type {
  HouseReach,
  HouseRuleVersion,
  HouseSetting,
  UnreadableSetting,
} from '../rules/house/house-rule';
import { houseReach, houseSetting } from './schema';

/** A row of `house_rule`, as far as it is read. */
export interface HouseRuleRow {
  readonly ruleId: string;
  readonly version: number;
  readonly kind: string;
  readonly settings: unknown;
  readonly holds: boolean;
  readonly why: string;
  readonly madeByName: string;
  readonly madeAt: Date;
}

const storedReach = z.object({ reach: houseReach });

/**
 * A row as the rules take it. What cannot be read (a newer program wrote it) stays a rule, for the whole fleet, that nobody
 * knows the meaning of: the engine then says no go.
 */
export function houseRuleVersion(row: HouseRuleRow): HouseRuleVersion {
  const { ruleId, version, holds, why } = row;
  return { ruleId, version, holds, ...readSettings(row), by: row.madeByName, at: instant(row.madeAt), why };
}

function readSettings({ kind, settings }: HouseRuleRow): {
  setting: HouseSetting | UnreadableSetting;
  reach: HouseReach | null;
} {
  const stored = typeof settings === 'object' && settings !== null ? settings : {};
  const setting = houseSetting.safeParse({ ...stored, kind });
  const reach = storedReach.safeParse(stored);
  return setting.success && reach.success
    ? { setting: setting.data, reach: reach.data.reach }
    : { setting: { kind: 'unreadable', storedKind: kind }, reach: null };
}

/** What is written to the column: the settings without their kind, and the reach. */
export function storedSettings({ kind: _, ...settings }: HouseSetting, reach: HouseReach | null): object {
  return { ...settings, reach };
}
