import type { PaperKind } from './aircraft';

const PAPER_NAMES: Readonly<Record<PaperKind, string>> = {
  'airworthiness-certificate': 'Airworthiness certificate',
  registration: 'Registration',
  'flight-manual': 'Flight manual',
  'weight-and-balance': 'Weight and balance data',
};

/** A paper that must be aboard, by name; one this version does not know in its own letters. */
export const paperName = (kind: string): string =>
  (PAPER_NAMES as Readonly<Record<string, string>>)[kind] ?? kind;
