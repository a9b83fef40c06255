import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import Link from '../_ui/link';
import { type EarlierClosure, type RepeatView } from '@/lib/findings/repeats';
import { REPEAT_DAYS, REPEAT_FLIGHTS } from '@/lib/rules/repeat-defect';
import { Moment } from '../_ui/moment';
import { Tag } from '../_ui/tag';
import styles from './repeat-notice.module.css';

/** The same system was signed off a little while ago: what was found and done then, the last first. */
export function RepeatNotice({ repeat, zone }: { repeat: RepeatView; zone: string }) {
  const t = useWords();
  const times = repeat.earlier.filter(({ inWindow }) => inWindow).length;
  return (
    <section className={styles.notice} aria-labelledby="repeat">
      <h2 id="repeat" className={styles.title}>
        <Tag tone="amber">{t('Repeat')}</Tag>{' '}
        {times === 1
          ? t('This system was signed off shortly before.')
          : t('Signed off {times} times shortly before.', { times })}
      </h2>
      <p className={styles.rule}>
        {t(
          'Within {repeat_days} days or {repeat_flights} flights of a sign-off. Our own rule, not a regulation.',
          { repeat_days: REPEAT_DAYS, repeat_flights: REPEAT_FLIGHTS },
        )}
      </p>
      <ol className={styles.list} aria-label={t('Earlier closures, the last first')}>
        {repeat.earlier.map((one) => (
          <li key={one.discrepancyId}>
            <Earlier one={one} zone={zone} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Earlier({ one, zone }: { one: EarlierClosure; zone: string }) {
  const t = useWords();
  return (
    <>
      <p className={styles.head}>
        <Link href={`/bench/write-up/${one.discrepancyId}`}>
          {one.number} {one.title}
        </Link>
        {one.how === 'could-not-duplicate' ? (
          <Tag tone="amber" shape="question" size="small">
            {t('Could not duplicate')}
          </Tag>
        ) : (
          <Tag tone="grey" shape="tick" size="small">
            {t('Repaired')}
          </Tag>
        )}
        {!one.inWindow && <span className={styles.soft}>{t('longer ago, for the history')}</span>}
      </p>
      {one.words && <blockquote className={styles.words}>{one.words}</blockquote>}
      <p className={styles.soft}>
        <Say
          text="Signed by {signedBy}, closed <moment/>. {since} {same}"
          parts={{ moment: <Moment at={one.closedAt} zone={zone} /> }}
          values={{ signedBy: one.signedBy, since: sinceInWords(t, one), same: t(SAME[one.sameBy]) }}
        />
      </p>
    </>
  );
}

/** "12 days and 3 flights before this one." */
function sinceInWords(t: Translate, { days, flights }: EarlierClosure): string {
  const inDays = days === 0 ? t('The same day') : t('{days, plural, one {# day} other {# days}}', { days });
  return flights === null
    ? t('{inDays} before this one; how many flights is not known.', { inDays })
    : t('{inDays} and {flights, plural, one {# flight} other {# flights}} before this one.', {
        inDays,
        flights,
      });
}

const SAME: Readonly<Record<EarlierClosure['sameBy'], string>> = {
  finding: said('The same finding.'),
  equipment: said('The same equipment.'),
  system: said('The same system by its code.'),
};
