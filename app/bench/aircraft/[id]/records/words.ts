import { type KindOfRecord, type PartOfRecord } from '@/lib/records/record-row';
import { type Retention } from '@/lib/rules/part-91/91-417-records';
import { dateInWords } from '@/app/_ui/moment';

export const PART_WORDS: Readonly<Record<PartOfRecord, string>> = {
  airframe: 'Airframe',
  engine: 'Engine',
  propeller: 'Propeller',
  appliance: 'Appliances',
  aircraft: 'Whole aircraft, or not said',
};

export const KIND_WORDS: Readonly<Record<KindOfRecord, string>> = {
  work: 'Maintenance entry',
  inspection: 'Inspection entry',
  compliance: 'Record of what recurs',
  determination: 'Determination',
  deferral: 'Deferral',
  'check-flight': 'Check flight',
  list: 'List of 43.11(b)',
  extension: 'Extension',
  permit: 'Special flight permit',
  'permit-inspection': 'Inspection for a permit',
};

/** "kept through 25 Nov 2027", as short as the law's answer allows. */
export function keptInWords({ keepThrough, asked }: Retention): string {
  switch (keepThrough) {
    case 'with-the-aircraft':
      return 'Kept, and goes with the aircraft';
    case 'until-repaired':
      return 'Kept until repaired and approved';
    case 'until-the-next':
      return 'Kept until the next supersedes it';
    case 'not-named':
      return '91.417 does not name it';
    default:
      return asked
        ? `The law asks for it through ${dateInWords(keepThrough)}`
        : `The law asked for it through ${dateInWords(keepThrough)}; it stays here all the same`;
  }
}
