/**
 * A rule of the house as it is typed: every setting of every kind as text, of which those of the chosen kind count. Nothing
 * typed is lost when another kind is looked at.
 */
import { z } from 'zod';
import { readMeasurement } from '../findings/measurement-input';
import { digitsOf } from '../rules/findings/measurements';
import { formatTenths, parseTenths } from '../rules/hours';
import type { HouseKind, HouseReach, HouseSetting } from '../rules/house/house-rule';
import { HOUSE_KIND_KEYS } from '../rules/house/kinds';
import { houseReach, houseSetting } from './schema';

export interface HouseRuleAsTyped {
  kind: string;
  flights: string;
  leastOil: string;
  oldestHours: string;
  chapters: string[];
  areas: string[];
  reserveHours: string;
  counts: string;
  most: string;
  days: string;
  purposes: string[];
  words: string;
  /** fleet, or named. */
  reach: string;
  aircraftIds: string[];
  typeIds: string[];
  why: string;
}

export const emptyRule = (kind: HouseKind): HouseRuleAsTyped => ({
  kind,
  flights: '',
  leastOil: '',
  oldestHours: '',
  chapters: [],
  areas: [],
  reserveHours: '',
  counts: '',
  most: '',
  days: '',
  purposes: [],
  words: '',
  reach: 'fleet',
  aircraftIds: [],
  typeIds: [],
  why: '',
});

const WHOLE = /^\d{1,6}$/;
/** Nothing that could be a whole number: the setting's own message is then said. */
const wholeOf = (text: string): number => (WHOLE.test(text.trim()) ? Number(text.trim()) : Number.NaN);

/** The settings of the chosen kind as they are stored; what cannot be read stays not a number, which its schema refuses. */
function settingTyped(typed: HouseRuleAsTyped): Record<string, unknown> {
  const oil = readMeasurement(typed.leastOil, 'tenth-quart');
  return {
    kind: typed.kind,
    flights: typed.flights,
    leastTenthsQuart: oil.ok ? oil.value : Number.NaN,
    oldestHours: wholeOf(typed.oldestHours),
    chapters: typed.chapters,
    areas: typed.areas,
    reserveTenths: parseTenths(typed.reserveHours.trim()) ?? Number.NaN,
    counts: typed.counts,
    most: wholeOf(typed.most),
    days: wholeOf(typed.days),
    purposes: typed.purposes,
    words: typed.words,
  };
}

const reachTyped = ({ reach, aircraftIds, typeIds }: HouseRuleAsTyped): HouseReach | null =>
  reach === 'named' ? { aircraftIds, typeIds } : null;

/** What is typed under another name than it is stored. */
const FIELD: Readonly<Record<string, string>> = {
  leastTenthsQuart: 'leastOil',
  reserveTenths: 'reserveHours',
};

export type ComposedRule =
  | { readonly ok: true; readonly setting: HouseSetting; readonly reach: HouseReach | null }
  | { readonly ok: false; readonly fields: Record<string, string[]> };

/** Reads what was typed. What cannot be read is said by the field it was typed in. */
export function composeRule(typed: HouseRuleAsTyped): ComposedRule {
  const setting = houseSetting.safeParse(settingTyped(typed));
  const reach = houseReach.safeParse(reachTyped(typed));
  if (setting.success && reach.success) return { ok: true, setting: setting.data, reach: reach.data };
  const fields: Record<string, string[]> = {};
  for (const { path, message } of [...(setting.error?.issues ?? []), ...(reach.error?.issues ?? [])]) {
    const name = String(path[0] ?? 'kind');
    (fields[FIELD[name] ?? name] ??= []).push(message);
  }
  return { ok: false, fields };
}

const texts = z.array(z.string());

/** What the form sends: any text at all; `composeRule` says what is wrong with it. */
export const houseRuleAsTyped = z.object({
  kind: z.enum(HOUSE_KIND_KEYS as [string, ...string[]]),
  flights: z.string(),
  leastOil: z.string().max(20),
  oldestHours: z.string().max(20),
  chapters: texts,
  areas: texts,
  reserveHours: z.string().max(20),
  counts: z.string(),
  most: z.string().max(20),
  days: z.string().max(20),
  purposes: texts,
  words: z.string(),
  reach: z.enum(['fleet', 'named']),
  aircraftIds: texts,
  typeIds: texts,
  why: z.string(),
}) satisfies z.ZodType<HouseRuleAsTyped>;

/** A rule as it stands, ready to be changed. */
export function typedOf(setting: HouseSetting, reach: HouseReach | null): HouseRuleAsTyped {
  const typed: HouseRuleAsTyped = {
    ...emptyRule(setting.kind),
    reach: reach ? 'named' : 'fleet',
    aircraftIds: [...(reach?.aircraftIds ?? [])],
    typeIds: [...(reach?.typeIds ?? [])],
  };
  if ('leastTenthsQuart' in setting) typed.leastOil = digitsOf(setting.leastTenthsQuart, 'tenth-quart');
  if ('oldestHours' in setting) typed.oldestHours = String(setting.oldestHours);
  if ('reserveTenths' in setting) typed.reserveHours = formatTenths(setting.reserveTenths);
  if ('counts' in setting) typed.counts = setting.counts;
  if ('flights' in setting) typed.flights = setting.flights;
  if ('chapters' in setting) typed.chapters = [...setting.chapters];
  if ('areas' in setting) typed.areas = [...setting.areas];
  if ('most' in setting) typed.most = String(setting.most);
  if ('days' in setting) typed.days = String(setting.days);
  if ('purposes' in setting) typed.purposes = [...setting.purposes];
  if ('words' in setting) typed.words = setting.words;
  return typed;
}
