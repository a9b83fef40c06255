import { English, useEnglish, useWords } from '#words';
import { OutcomeMark } from '@/app/_ui/marks';
import { Moment } from '@/app/_ui/moment';
import { type HousePreview } from '@/lib/house-rules/preview-house-rule';
import styles from './rules.module.css';

/** What a rule would change on the board right now. `isOld`: something was typed since; then it says so. */
export function Preview({ preview, isOld }: { preview: HousePreview; isOld: boolean }) {
  const t = useWords();
  const english = useEnglish();
  const { aircraft, fleet, voided } = preview;
  return (
    <div className={styles.preview} role="status">
      <h3>{t('What it would change right now')}</h3>
      {isOld && <p className={styles.old}>{t('You changed the rule since. Look again.')}</p>}
      <p>
        {aircraft.length === 0
          ? t(
              'Nothing: no answer of the {fleet, plural, one {one aircraft} other {# aircraft}} changes today.',
              {
                fleet,
              },
            )
          : t('{changed} of {fleet} aircraft:', { changed: aircraft.length, fleet })}
      </p>
      {aircraft.length > 0 && (
        <ul className={styles.changed}>
          {aircraft.map(({ registration, changes }) => (
            <li key={registration}>
              <b>{registration}</b>
              <ul className={styles.changes}>
                {changes.map(({ name, before, after, headline }) => (
                  <li key={name}>
                    <span>{t(name)}</span>
                    <span className={styles.fromTo}>
                      <OutcomeMark outcome={before} size="small" />
                      <span>{t('to')}</span>
                      <OutcomeMark outcome={after} size="small" />
                    </span>
                    {headline && (
                      <span className={styles.soft} {...english}>
                        <English>{headline}</English>
                      </span>
                    )}
                  </li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      )}
      {voided.length > 0 ? (
        <div>
          <p>
            <b>
              {t(
                '{count, plural, one {One release becomes} other {# releases become}} void when it is saved:',
                {
                  count: voided.length,
                },
              )}
            </b>
          </p>
          <ul>
            {voided.map(({ registration, departAt, zone }) => (
              <li key={`${registration} ${departAt}`}>
                {registration}, <Moment at={departAt} zone={zone} />
              </li>
            ))}
          </ul>
        </div>
      ) : (
        <p>{t('No release becomes void.')}</p>
      )}
      <p className={styles.soft}>
        {t(
          'Asked for the kinds of flight of the board and for students’ solo flights, as of this moment. Other flights may change as well.',
        )}
      </p>
    </div>
  );
}
