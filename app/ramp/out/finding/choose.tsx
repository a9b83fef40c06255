import { useWords } from '#words';
import { SOMETHING_ELSE, type FindingOffered } from '@/lib/findings/compose-finding';
import { type PackWriteUp } from '@/lib/walkarounds/pack';
import { SeverityOf, StateMark } from '../../_parts/write-up-card';
import styles from './finding.module.css';

/**
 * The likely findings as big buttons; a press chooses at once. What is written up here already stands first, and can be
 * what was found.
 */
export function Choose(props: {
  offers: readonly FindingOffered[];
  known: readonly PackWriteUp[];
  onChoose: (key: string) => void;
  onSame: (writeUp: PackWriteUp) => void;
}) {
  const t = useWords();
  const { offers, known, onChoose, onSame } = props;
  return (
    <section aria-labelledby="what">
      {known.length > 0 && (
        <div className={styles.known}>
          <h2>{t('Written up here already')}</h2>
          <ul className={styles.offers}>
            {known.map((writeUp) => (
              <li key={writeUp.id}>
                <button type="button" className={styles.offer} onClick={() => onSame(writeUp)}>
                  <span>
                    {writeUp.number} {writeUp.title}
                  </span>
                  <span className={styles.knownMarks}>
                    <SeverityOf writeUp={writeUp} />
                    <StateMark writeUp={writeUp} />
                  </span>
                  {writeUp.place && <span className={styles.soft}>{writeUp.place}</span>}
                  <span className={styles.itIs}>{t('It is this one')}</span>
                </button>
              </li>
            ))}
          </ul>
        </div>
      )}
      <h2 id="what">{t('What did you find?')}</h2>
      <ul className={styles.offers}>
        {[...offers, { key: SOMETHING_ELSE, title: t('Something else') }].map(({ key, title }) => (
          <li key={key}>
            <button type="button" className={styles.offer} onClick={() => onChoose(key)}>
              {t(title)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
