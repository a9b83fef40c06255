import { known, unknown, type Fact } from './facts';
import { JASC_11_TO_31 } from './jasc-codes-11-to-31';
import { JASC_32_TO_57 } from './jasc-codes-32-to-57';
import { JASC_61_TO_85 } from './jasc-codes-61-to-85';

/**
 * The system codes a discrepancy is filed under: 271 four-digit codes of the Joint Aircraft System/Component table
 * (in use since May 1991; editions of 1996, 2002 and 2008 are known).
 *
 * Status. Twelve were seen in copies of the FAA text: 1100, 1210, 1220, 1230, 1240 (definitions), 2200, 2210, 2211,
 * 2212, 2213 (table copy), 2810 (parts category list), 5540 (as used in an alerts circular). The other 259 are from
 * memory. Titles are spelled out in plain case. `part` is our own grouping, chosen to pick the rating a signer
 * needs; it is not in the FAA table. It is a starting point only: a clogged static line is filed under an
 * instrument code, yet clearing it is airframe work (see `workPartOf` in `findings/catalogue.ts`).
 */

/** The part of the aircraft that decides which rating a signature needs. */
export const PARTS_OF_AIRCRAFT = ['airframe', 'powerplant', 'propeller', 'instrument', 'avionics'] as const;
export type PartOfAircraft = (typeof PARTS_OF_AIRCRAFT)[number];

/** One chapter of the table: its title and its codes as [code, title, part]. */
export interface JascChapter {
  readonly title: string;
  readonly codes: readonly (readonly [code: string, title: string, part: PartOfAircraft])[];
}

/** One code with its words. */
export interface JascCode {
  readonly code: string;
  readonly title: string;
  readonly chapterTitle: string;
  readonly part: PartOfAircraft;
  /** `checked`: code and title seen in a copy of an FAA text. `memory`: nobody has. */
  readonly status: 'checked' | 'memory';
}

const CHECKED: ReadonlySet<string> = new Set([
  '1100',
  '1210',
  '1220',
  '1230',
  '1240',
  '2200',
  '2210',
  '2211',
  '2212',
  '2213',
  '2810',
  '5540',
]);

/** All codes in ascending order. */
export const JASC_CODES: readonly JascCode[] = [...JASC_11_TO_31, ...JASC_32_TO_57, ...JASC_61_TO_85].flatMap(
  (chapter) =>
    chapter.codes.map(([code, title, part]) => ({
      code,
      title,
      chapterTitle: chapter.title,
      part,
      status: CHECKED.has(code) ? ('checked' as const) : ('memory' as const),
    })),
);

const BY_CODE: ReadonlyMap<string, JascCode> = new Map(JASC_CODES.map((entry) => [entry.code, entry]));

/** The entry of a code; unknown when the table does not hold it. */
export function jascCode(code: string): Fact<JascCode> {
  const entry = BY_CODE.get(code);
  return entry ? known(entry) : unknown(`a system code of the table (${code || 'none given'} is not in it)`);
}

/** The part of the aircraft a code belongs to; unknown for a code outside the table. */
export function partOf(code: string): Fact<PartOfAircraft> {
  const entry = jascCode(code);
  return entry.known ? known(entry.value.part) : entry;
}

/** "3340 Exterior Lighting"; for a code outside the table the bare code, said to be unknown. */
export function jascLabel(code: string): string {
  const entry = jascCode(code);
  return entry.known ? `${code} ${entry.value.title}` : `${code} (not in the table)`;
}

/** The chapter of a code: "33", "Lights"; null when the table does not hold the code. */
export function jascChapter(code: string): { readonly code: string; readonly title: string } | null {
  const entry = jascCode(code);
  return entry.known ? { code: code.slice(0, 2), title: entry.value.chapterTitle } : null;
}
