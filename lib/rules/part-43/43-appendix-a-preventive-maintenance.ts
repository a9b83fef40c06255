import { known, unknown, type Fact } from '../facts';
import { LAW, type CiteId, type LawEntry } from '../law';
import type { WorkToSign } from '../work-to-sign';

/**
 * Part 43 Appendix A(c): preventive maintenance. It is limited to the 31 tasks below and only where no complex
 * assembly is involved. Item 32 (database updates) was removed; such an update is now no maintenance under 43.3(k).
 *
 * Words and status of each item come from the law registry, so they stand in one place; the appendix itself decides.
 */

export interface PreventiveItem {
  readonly item: number;
  readonly cite: CiteId;
  /** The task in short words, without a full stop: the gist of the paragraph in the law registry. */
  readonly task: string;
  readonly status: LawEntry['status'];
  /** Set where the item exists for one sort of aircraft only. */
  readonly onlyFor: 'lighter-than-air' | 'primary-category' | null;
}

const item = (number: number, cite: CiteId, onlyFor: PreventiveItem['onlyFor'] = null): PreventiveItem => ({
  item: number,
  cite,
  task: LAW[cite].gist.replace(/\.$/, ''),
  status: LAW[cite].status,
  onlyFor,
});

/** Items 1 to 31 in order. */
export const PREVENTIVE_ITEMS: readonly PreventiveItem[] = [
  item(1, '14cfr43appA(c)(1)'),
  item(2, '14cfr43appA(c)(2)'),
  item(3, '14cfr43appA(c)(3)'),
  item(4, '14cfr43appA(c)(4)'),
  item(5, '14cfr43appA(c)(5)'),
  item(6, '14cfr43appA(c)(6)'),
  item(7, '14cfr43appA(c)(7)'),
  item(8, '14cfr43appA(c)(8)'),
  item(9, '14cfr43appA(c)(9)'),
  item(10, '14cfr43appA(c)(10)'),
  item(11, '14cfr43appA(c)(11)'),
  item(12, '14cfr43appA(c)(12)'),
  item(13, '14cfr43appA(c)(13)'),
  item(14, '14cfr43appA(c)(14)'),
  item(15, '14cfr43appA(c)(15)'),
  item(16, '14cfr43appA(c)(16)'),
  item(17, '14cfr43appA(c)(17)'),
  item(18, '14cfr43appA(c)(18)'),
  item(19, '14cfr43appA(c)(19)'),
  item(20, '14cfr43appA(c)(20)'),
  item(21, '14cfr43appA(c)(21)'),
  item(22, '14cfr43appA(c)(22)'),
  item(23, '14cfr43appA(c)(23)'),
  item(24, '14cfr43appA(c)(24)'),
  item(25, '14cfr43appA(c)(25)', 'lighter-than-air'),
  item(26, '14cfr43appA(c)(26)'),
  item(27, '14cfr43appA(c)(27)', 'lighter-than-air'),
  item(28, '14cfr43appA(c)(28)'),
  item(29, '14cfr43appA(c)(29)'),
  item(30, '14cfr43appA(c)(30)', 'primary-category'),
  item(31, '14cfr43appA(c)(31)'),
];

/** Looks up an item by its number; unknown outside 1 to 31, so that nothing can be preventive by a slip. */
export function preventiveItem(number: number | null): Fact<PreventiveItem> {
  const found = PREVENTIVE_ITEMS.find((entry) => entry.item === number);
  if (found) return known(found);
  return unknown(
    number === 32
      ? 'which item of Appendix A(c) this is (32 was removed; a database update is 43.3(k), no maintenance)'
      : 'which of the 31 items of Appendix A(c) this is',
  );
}

/**
 * The chapters of the JASC table in which each item can lie: (1) to (4), (18) landing gear; (7), (9), (11) to (15)
 * structure, doors, windows, cabin; (8) hydraulics and brakes; (16), (17) lights; (19) cowling; (20) ignition; (21) to
 * (23), (28), (29) fuel and oil; (24) battery. Our own grouping, no source. What stands on no one system is left out:
 * (5) safety wire, (6) lubrication, (10) coatings, (25) and (27) balloons, (26) fasteners, (30), (31) radios.
 */
const SYSTEMS_OF_ITEM: Readonly<Record<number, readonly string[]>> = {
  1: ['32'],
  2: ['32'],
  3: ['32'],
  4: ['32'],
  7: ['51', '53', '54', '55', '57'],
  8: ['29', '32'],
  9: ['25', '51', '52', '53', '54', '55', '57'],
  11: ['25'],
  12: ['32', '51', '52', '53', '54', '55', '57', '71'],
  13: ['56'],
  14: ['25'],
  15: ['25'],
  16: ['33'],
  17: ['33'],
  18: ['32'],
  19: ['71'],
  20: ['74'],
  21: ['21', '28', '71', '73', '75', '79'],
  22: ['28', '73'],
  23: ['28', '73', '79'],
  24: ['24'],
  28: ['28'],
  29: ['79'],
};

/** Chapters (first two digits of a JASC code) in which an item can lie; null where it can lie in any. */
export const systemsOfItem = (number: number): readonly string[] | null => SYSTEMS_OF_ITEM[number] ?? null;

/**
 * Whether an item can describe this work at all: the sort of aircraft fits, and the part worked on is one the list
 * reaches. No item covers a propeller or an instrument; of the radios only item 31 speaks, and it speaks of nothing
 * but radios. Null when it fits, else the reason in plain words. Strict reading of the list as it stands.
 */
export function whyItemDoesNotFit(entry: PreventiveItem, work: WorkToSign): string | null {
  if (entry.onlyFor === 'primary-category')
    return 'Item 30 is for primary category aircraft; this tool holds standard category aircraft.';
  if (entry.onlyFor === 'lighter-than-air' && work.aircraftCategory !== 'lighter-than-air')
    return `Item ${entry.item} is for balloons only.`;
  if (work.part === 'propeller') return 'No item of the list covers a propeller.';
  if (work.part === 'instrument') return 'No item of the list covers an instrument.';
  if (work.part === 'avionics' && entry.item !== 31)
    return `Item ${entry.item} does not cover radios; only item 31 does.`;
  if (work.part !== 'avionics' && entry.item === 31)
    return 'Item 31 covers tray-mounted navigation and communication units only.';
  if (entry.item === 31 && !work.swapOnly)
    return 'Item 31 covers taking a unit out and putting it back, not work inside it.';
  return null;
}
