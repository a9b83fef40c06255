import type { LawEntry } from './entry';
import { PART_91_OPERATING } from './part-91-operating';
import { PART_91_EQUIPMENT } from './part-91-equipment';
import { PART_91_INOPERATIVE } from './part-91-inoperative';
import { PART_91_MAINTENANCE } from './part-91-maintenance';
import { PART_43 } from './part-43';
import { PART_43_APPENDICES } from './part-43-appendices';
import { PART_65 } from './part-65';
import { OTHER } from './other';

export type { LawEntry } from './entry';

/**
 * Every paragraph a line may cite, by id. An id is the paragraph as written with `14cfr` before it
 * (`14cfr91.213(d)(2)(iii)`, `14cfr43appA(c)(17)`, `14cfr1.1(night)`) or a document's short name (`ac91-67a`).
 * A checked entry names the copy that was read; those copies are stored ones of various years, never the live eCFR.
 */
export const LAW = {
  ...PART_91_OPERATING,
  ...PART_91_EQUIPMENT,
  ...PART_91_INOPERATIVE,
  ...PART_91_MAINTENANCE,
  ...PART_43,
  ...PART_43_APPENDICES,
  ...PART_65,
  ...OTHER,
} as const satisfies Record<string, LawEntry>;

/** The id of a paragraph in {@link LAW}; a line cannot cite anything else. */
export type CiteId = keyof typeof LAW;
