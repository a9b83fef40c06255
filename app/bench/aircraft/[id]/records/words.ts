import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type KindOfRecord, type PartOfRecord } from '@/lib/records/record-row';
import { type Retention } from '@/lib/rules/part-91/91-417-records';
import { dateInWords } from '@/app/_ui/moment';

export const PART_WORDS: Readonly<Record<PartOfRecord, string>> = {
  airframe: said('Airframe'),
  engine: said('Engine'),
  propeller: said('Propeller'),
  appliance: said('Appliances'),
  aircraft: said('Whole aircraft, or not said'),
};

export const KIND_WORDS: Readonly<Record<KindOfRecord, string>> = {
  work: said('Maintenance entry'),
  inspection: said('Inspection entry'),
  compliance: said('Record of what recurs'),
  determination: said('Determination'),
  deferral: said('Deferral'),
  'check-flight': said('Check flight'),
  list: said('List of 43.11(b)'),
  extension: said('Extension'),
  permit: said('Special flight permit'),
  'permit-inspection': said('Inspection for a permit'),
  vouching: said('Vouched for'),
};

/** "kept through 25 Nov 2027", as short as the law's answer allows. */
export function keptInWords(t: Translate, { keepThrough, asked }: Retention): string {
  switch (keepThrough) {
    case 'with-the-aircraft':
      return t('Kept, and goes with the aircraft');
    case 'until-repaired':
      return t('Kept until repaired and approved');
    case 'until-the-next':
      return t('Kept until the next supersedes it');
    case 'not-named':
      return t('91.417 does not name it');
    default:
      return asked
        ? t('The law asks for it through {date}', { date: dateInWords(keepThrough) })
        : t('The law asked for it through {date}; it stays here all the same', {
            date: dateInWords(keepThrough),
          });
  }
}
