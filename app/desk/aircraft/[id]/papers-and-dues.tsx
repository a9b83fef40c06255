import { English, Say, useWords } from '#words';
import { DateText, HoursText } from '@/app/_ui/moment';
import { Section } from '@/app/_ui/page';
import { dueInWords } from '@/lib/fleet/board-columns';
import { type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { PAPER_WORDS } from '../../words';
import styles from './aircraft.module.css';

/** Inspections and everything else that recurs: when last, when next, how much is left. */
export function Requirements({ file }: { file: AircraftFile }) {
  const t = useWords();
  return (
    <Section title={t('Inspections and recurring work')}>
      <ul className={styles.dues}>
        {file.requirements.map((one) => (
          <li key={one.id} className={styles.dueRow}>
            <div>
              <b>{one.name}</b>
              {!one.binding && <span className={styles.soft}> {t('(recommended, not binding)')}</span>}
              <p className={styles.soft}>
                {one.lastOn === null ? (
                  t('Last: not known')
                ) : (
                  <>
                    {t('Last')} <DateText date={one.lastOn} />{' '}
                    <Say
                      text="at <hoursText/>"
                      parts={{ hoursText: <HoursText tenths={one.lastTtisTenths} /> }}
                    />
                  </>
                )}
              </p>
            </div>
            <div className={styles.left}>
              {one.missing === null ? (
                <b>{dueInWords(t, one)}</b>
              ) : (
                <b className={styles.missing}>
                  <Say text="Not known: {missing}" values={{ missing: <English>{one.missing}</English> }} />
                </b>
              )}
              <p className={styles.soft}>
                {one.on && (
                  <>
                    {t('through')} <DateText date={one.on} />
                  </>
                )}
                {one.on && one.tenths !== null && ', '}
                {one.tenths !== null && (
                  <>
                    <Say text="until <hoursText/>" parts={{ hoursText: <HoursText tenths={one.tenths} /> }} />
                  </>
                )}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** The papers that must be aboard. */
export function Papers({ file }: { file: AircraftFile }) {
  const t = useWords();
  return (
    <Section title={t('Papers')}>
      <ul className={styles.dues}>
        {file.papers.map((paper) => (
          <li key={paper.kind} className={styles.dueRow}>
            <b>{PAPER_WORDS[paper.kind] ?? paper.kind}</b>
            <div className={styles.left}>
              <b>
                {paper.aboard === null
                  ? t('Not known whether aboard')
                  : paper.aboard
                    ? t('Aboard')
                    : t('Not aboard')}
              </b>
              <p className={styles.soft}>
                {paper.validThrough ? (
                  <>
                    {t('through')} <DateText date={paper.validThrough} />
                  </>
                ) : paper.expires === false ? (
                  t('does not expire')
                ) : (
                  t('expiry not known')
                )}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}
