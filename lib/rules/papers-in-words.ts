import type { PaperKind } from './aircraft';
import { said } from './said';

const PAPER_NAMES: Readonly<Record<PaperKind, string>> = {
  'airworthiness-certificate': said('Airworthiness certificate'),
  registration: said('Registration'),
  'flight-manual': said('Flight manual'),
  'weight-and-balance': said('Weight and balance data'),
};

/** A paper that must be aboard, by name; one this version does not know in its own letters. */
export const paperName = (kind: string): string =>
  (PAPER_NAMES as Readonly<Record<string, string>>)[kind] ?? kind;
