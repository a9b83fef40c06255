'use client';

import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { useIsLost } from '@/app/_ui/freshness';
import { ShapeMark, type Shape } from '@/app/_ui/tag';
import { type DayView } from '@/lib/fleet/read-day';
import { type Outcome } from '@/lib/rules/verdict';
import styles from './timeline.module.css';
import { clockAt, percentOf } from './words';

const LOOK: Record<Outcome, { readonly word: string; readonly shape: Shape; readonly style: string }> = {
  go: { word: said('Go'), shape: 'disc', style: 'go' },
  'go-with-limits': { word: said('Limits'), shape: 'wedge', style: 'limits' },
  'no-go': { word: said('No go'), shape: 'block', style: 'nogo' },
};
const LIGHT_WORDS = { day: said('Day'), twilight: said('Twilight'), night: said('Night') } as const;

/** The day drawn: light, four lanes, flights, hours. A picture only; everything in it stands in words below. */
export function Timeline({ day }: { day: DayView }) {
  const t = useWords();
  if (useIsLost()) return <p className={styles.lost}>{t('Not known: the server cannot be reached.')}</p>;
  const isNow = Date.parse(day.from) <= Date.parse(day.asOf) && Date.parse(day.asOf) < Date.parse(day.until);
  return (
    <>
      <div
        role="img"
        aria-label={t(
          'Timeline of {registration}: light, four kinds of use, booked flights. The list below says the same in words.',
          { registration: day.registration },
        )}
        className={styles.timeline}
      >
        <Row name={t('Light')}>
          {day.light.map(({ from, until, light }) => (
            <Piece key={from} day={day} from={from} until={until} look={styles[light]}>
              {t(LIGHT_WORDS[light])}
            </Piece>
          ))}
        </Row>
        {day.lanes.map(({ id, name, spans }) => (
          <Row key={id} name={t(name)}>
            {spans.map(({ from, until, outcome }) => (
              <Piece key={from} day={day} from={from} until={until} look={styles[LOOK[outcome].style]}>
                <ShapeMark shape={LOOK[outcome].shape} />
                <span className={styles.word}>{t(LOOK[outcome].word)}</span>
              </Piece>
            ))}
            {isNow && <Now day={day} />}
          </Row>
        ))}
        {day.flights.length > 0 && (
          <Row name={t('Booked')}>
            {day.flights.map(({ id, departAt, arriveAt, label }) => (
              <Piece key={id} day={day} from={departAt} until={arriveAt} look={styles.flight}>
                {label}
              </Piece>
            ))}
          </Row>
        )}
        {day.borders.some(({ letter }) => letter !== null) && (
          <Row name={t('Changes')} look={styles.letters}>
            {day.borders.map(({ at, letter }) =>
              letter === null ? null : (
                <span key={at} className={styles.letter} style={{ left: `${percentOf(at, day)}%` }}>
                  {letter}
                </span>
              ),
            )}
          </Row>
        )}
        <Row name="" look={styles.hours}>
          {day.hours.map(({ at, label }, index) => (
            <span
              key={at}
              className={`${styles.hour} ${index % 2 === 1 ? '' : styles.between}`}
              style={{ left: `${percentOf(at, day)}%` }}
            >
              {label}
            </span>
          ))}
        </Row>
      </div>
      <ul className={styles.legend} aria-label={t('Legend')}>
        {Object.values(LOOK).map(({ word, shape, style }) => (
          <li key={word}>
            <span className={`${styles.swatch} ${styles[style]}`}>
              <ShapeMark shape={shape} />
            </span>
            {word === 'Limits' ? t('Go with limits') : word}
          </li>
        ))}
        {isNow && (
          <li>
            <Say
              text="<span/> Now, {clockAt}"
              parts={{ span: <span className={styles.nowSwatch} /> }}
              values={{ clockAt: clockAt(day.asOf, day) }}
            />
          </li>
        )}
      </ul>
    </>
  );
}

function Row(props: { name: string; look?: string | undefined; children: React.ReactNode }) {
  return (
    <div className={styles.row}>
      <span className={styles.name}>{props.name}</span>
      <div className={props.look ?? styles.track}>{props.children}</div>
    </div>
  );
}

function Piece(props: {
  day: DayView;
  from: string;
  until: string;
  look: string | undefined;
  children: React.ReactNode;
}) {
  const left = percentOf(props.from, props.day);
  const width = percentOf(props.until, props.day) - left;
  return (
    <span className={`${styles.piece} ${props.look ?? ''}`} style={{ left: `${left}%`, width: `${width}%` }}>
      <span className={styles.inside}>{props.children}</span>
    </span>
  );
}

const Now = ({ day }: { day: DayView }) => (
  <span className={styles.now} style={{ left: `${percentOf(day.asOf, day)}%` }} />
);
