import { useWords } from '#words';
import { VerdictLines } from '@/app/_ui/verdict-lines';
import { type DayBorder, type DayChange } from '@/lib/fleet/day-view';
import { type DayView } from '@/lib/fleet/read-day';
import { FreshMark } from '@/app/_ui/freshness';
import styles from './day.module.css';
import { clockAt } from './words';

/** The day as an ordered list: how it begins, then every border with what comes and what goes. */
export function Borders({ day }: { day: DayView }) {
  const t = useWords();
  return (
    <ol className={styles.borders}>
      <li className={styles.border}>
        <p className={styles.time}>{clockAt(day.from, day)}</p>
        <div className={styles.happens}>
          <h3>{t('The day begins')}</h3>
          <ul className={styles.begins}>
            {day.lanes.map(({ id, name, spans }) => (
              <li key={id}>
                <span className={styles.lane}>{t(name)}</span>
                {spans[0] && <FreshMark outcome={spans[0].outcome} size="small" />}
                {spans[0]?.headline && <span className={styles.soft}>{spans[0].headline}</span>}
              </li>
            ))}
          </ul>
        </div>
      </li>
      {day.borders.map((border) => (
        <Border key={border.at} border={border} day={day} />
      ))}
      <li className={styles.border}>
        <p className={styles.time}>{t('Midnight')}</p>
        <div className={styles.happens}>
          <h3>{t('The day ends')}</h3>
        </div>
      </li>
    </ol>
  );
}

function Border({ border, day }: { border: DayBorder; day: DayView }) {
  const t = useWords();
  const passed = Date.parse(border.at) <= Date.parse(day.asOf);
  return (
    <li className={styles.border}>
      <p className={styles.time}>
        {border.letter && <span className={styles.letter}>{border.letter}</span>}
        <time dateTime={border.at}>{clockAt(border.at, day)}</time>
        {passed && <span className={styles.passed}>{t('passed')}</span>}
      </p>
      <div className={styles.happens}>
        <h3>{border.events.join('; ')}</h3>
        {border.changes.length === 0 && <p className={styles.soft}>{t('The answers stay as they are.')}</p>}
        {border.changes.map((change) => (
          <Change key={change.lanes.join()} change={change} />
        ))}
      </div>
    </li>
  );
}

function Change({ change: { lanes, before, after, comes, goes } }: { change: DayChange }) {
  const t = useWords();
  return (
    <div className={styles.change}>
      <p className={styles.turns}>
        <span className={styles.lane}>{lanes.join('; ')}</span>
        {before !== after && (
          <>
            <FreshMark outcome={before} size="small" />
            <span>{t('then')}</span>
          </>
        )}
        <FreshMark outcome={after} size="small" />
        {before === after && <span className={styles.soft}>{t('as before, for other reasons')}</span>}
      </p>
      {comes.length > 0 && (
        <>
          <h4 className={styles.which4}>{t('From then on')}</h4>
          <VerdictLines lines={comes} />
        </>
      )}
      {goes.length > 0 && (
        <>
          <h4 className={styles.which4}>{t('No longer')}</h4>
          <VerdictLines lines={goes} />
        </>
      )}
    </div>
  );
}
