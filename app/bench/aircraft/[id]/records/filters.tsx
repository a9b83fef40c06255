import { useWords } from '#words';
import Link from '@/app/_ui/link';
import { PARTS_OF_RECORDS, type PartOfRecord } from '@/lib/records/record-row';
import styles from './records.module.css';
import { PART_WORDS } from './words';

export interface Chosen {
  readonly aircraftId: string;
  readonly year: number;
  readonly part: PartOfRecord | null;
}

const hrefOf = ({ aircraftId, year, part }: Chosen): string =>
  `/bench/aircraft/${aircraftId}/records?year=${year}${part ? `&part=${part}` : ''}#signed`;

/** By year, so that it stays quick over the years of an aircraft; by part, because 91.417(a)(1) asks for each. */
export function Filters({ chosen, years }: { chosen: Chosen; years: readonly number[] }) {
  const t = useWords();
  return (
    <div className={`${styles.filters} not-on-paper`}>
      <nav aria-label={t('Year signed')}>
        <ul>
          {years.map((year) => (
            <li key={year}>
              <Link
                href={hrefOf({ ...chosen, year })}
                aria-current={year === chosen.year ? 'true' : undefined}
                replace
              >
                {year}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <nav aria-label={t('Part of the aircraft')}>
        <ul>
          {[null, ...PARTS_OF_RECORDS].map((part) => (
            <li key={part ?? 'all'}>
              <Link
                href={hrefOf({ ...chosen, part })}
                aria-current={part === chosen.part ? 'true' : undefined}
                replace
              >
                {part ? t(PART_WORDS[part]) : t('All parts')}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
    </div>
  );
}
