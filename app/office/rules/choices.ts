import { PURPOSE_NAMES } from '@/lib/rules/purpose-in-words';
import { JASC_CODES } from '@/lib/rules/jasc';
import { AREA_KEYS, areaTitle } from '@/lib/rules/walkaround/areas';

export interface Named {
  readonly value: string;
  readonly label: string;
}

/** Chapters of the table of system codes, each once: "61 Propellers/Propulsors". */
export const CHAPTERS: readonly Named[] = [
  ...new Map(JASC_CODES.map(({ code, chapterTitle }) => [code.slice(0, 2), chapterTitle])),
].map(([value, title]) => ({ value, label: `${value} ${title}` }));

export const AREAS: readonly Named[] = AREA_KEYS.map((value) => ({ value, label: areaTitle(value) }));

export const PURPOSES: readonly Named[] = Object.entries(PURPOSE_NAMES).map(([value, label]) => ({
  value,
  label,
}));
