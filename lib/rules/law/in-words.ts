import type { LawEntry } from './entry';
import { said } from '../said';

/** How people write a paragraph whose id is `14cfr91.213(d)(2)` or `14cfr43appA(c)(17)`; any other id as it stands. */
export function citeInWords(cite: string): string {
  const appendix = /^14cfr(\d+)app([A-Z])(.*)$/.exec(cite);
  if (appendix) return `14 CFR part ${appendix[1]} appendix ${appendix[2]}${appendix[3]}`;
  return cite.replace(/^14cfr/, '14 CFR ');
}

/** The doubt shown beside a paragraph by how sure we are of its text; null for none. */
export const DOUBTS: Readonly<Record<LawEntry['status'], string | null>> = {
  checked: null,
  memory: said('text not confirmed: from memory'),
  reading: said('our reading'),
};
