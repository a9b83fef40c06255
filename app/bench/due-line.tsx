import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import Link from '../_ui/link';
import { type DueLine } from '@/lib/due/due-list';
import { type Overfly } from '@/lib/due/due-rows';
import { dueInWords } from '@/lib/fleet/board-columns';
import { type DueGroup } from '@/lib/rules/due-window';
import { formatTenths } from '@/lib/rules/hours';
import { Cite } from '../_ui/cite';
import { DateText, dateInWords, HoursText } from '../_ui/moment';
import { Tag, type Shape, type Tone } from '../_ui/tag';
import styles from './due-line.module.css';

/**
 * One thing that falls due: what, by when, what the flying pace says, and which deferrals end with it. `atBench`: the
 * reader may go on to the bench's own pages; the desk's links stay at the desk.
 */
export function DueLineCard(props: { line: DueLine; withAircraft: boolean; atBench: boolean }) {
  const t = useWords();
  const { line, withAircraft, atBench } = props;
  const { aircraft } = line;
  return (
    <article className={`${styles.line} ${styles[line.group]}`}>
      <div className={styles.what}>
        <h3 className={styles.name}>
          {withAircraft && (
            <span className={styles.aircraft}>
              <Link href={`/${atBench ? 'bench' : 'desk'}/aircraft/${aircraft.aircraftId}`}>
                {aircraft.registration}
              </Link>{' '}
              <span className={styles.base}>{aircraft.baseIdent}</span>
            </span>
          )}
          <Named line={line} atBench={atBench} />
        </h3>
        {!line.binding && (
          <Tag tone="blue" size="small">
            {t('Recommended, not binding')}
          </Tag>
        )}
        <p className={styles.soft}>
          <Cite cite={line.cite} plain />
          {line.last && (
            <>
              {t('. Last')} <DateText date={line.last.on} />{' '}
              <Say
                text="at <hoursText/>"
                parts={{ hoursText: <HoursText tenths={line.last.ttisTenths} /> }}
              />
            </>
          )}
        </p>
      </div>
      <div className={styles.when}>
        <Left line={line} />
        <Limits line={line} />
        <Forecast line={line} />
      </div>
      {(line.endsDeferrals.length > 0 || line.overfly) && (
        <div className={styles.more}>
          <EndsWithIt line={line} />
          {line.overfly && <OverflySaid overfly={line.overfly} />}
        </div>
      )}
    </article>
  );
}

/** The name, as the way to where it is answered. */
function Named({ line, atBench }: { line: DueLine; atBench: boolean }) {
  if (!atBench && line.kind !== 'deferral') return <>{line.name}</>;
  const aircraft = `/bench/aircraft/${line.aircraft.aircraftId}`;
  const href = {
    requirement: line.id === '' ? `${aircraft}#add` : `/bench/requirement/${line.id}`,
    paper: `${aircraft}#papers`,
    deferral: `/bench/write-up/${line.id}`,
  }[line.kind];
  return <Link href={href}>{line.name}</Link>;
}

const MARKS: Readonly<Record<DueGroup, { tone: Tone; shape: Shape; word: string }>> = {
  overdue: { tone: 'red', shape: 'block', word: said('Overdue') },
  unknown: { tone: 'red', shape: 'question', word: said('Not known') },
  soon: { tone: 'amber', shape: 'wedge', word: said('Due soon') },
  later: { tone: 'grey', shape: 'dot', word: said('Later') },
};

function Left({ line }: { line: DueLine }) {
  const t = useWords();
  const mark = MARKS[line.group];
  // What only recommends grounds nothing, so it is never shown in the colour of grounded.
  const tone = line.binding || mark.tone !== 'red' ? mark.tone : 'amber';
  return (
    <p className={styles.left}>
      <Tag tone={tone} shape={mark.shape} size="small">
        {t(mark.word)}
      </Tag>{' '}
      <b>
        {line.missing === null ? leftInWords(t, line) : t('Not known: {missing}', { missing: line.missing })}
      </b>
    </p>
  );
}

const leftInWords = (t: Translate, line: DueLine): string =>
  line.on === null && line.tenths === null ? t('Done; it does not repeat') : dueInWords(t, line);

function Limits({ line }: { line: DueLine }) {
  const t = useWords();
  if (line.on === null && line.tenths === null) return null;
  return (
    <p className={styles.soft}>
      {line.on && (
        <>
          {t('Through')} <DateText date={line.on} />
        </>
      )}
      {line.on && line.tenths !== null && t(', or ')}
      {line.tenths !== null && (
        <>
          <Say text="until <hoursText/>" parts={{ hoursText: <HoursText tenths={line.tenths} /> }} />
        </>
      )}
    </p>
  );
}

/** The date by the flying pace, or why there is none. Called "about", because that is what it is. */
function Forecast({ line }: { line: DueLine }) {
  const t = useWords();
  if (line.noForecast !== null && line.group !== 'overdue') {
    return <p className={styles.soft}>{capital(line.noForecast)}.</p>;
  }
  if (!line.first || line.remainingTenths === null || line.group === 'overdue') return null;
  const { by, on, earliest, latest } = line.first;
  const band =
    latest === null
      ? t('{date} or later', { date: dateInWords(earliest) })
      : earliest === latest
        ? dateInWords(on)
        : t('{date} to {date2}', { date: dateInWords(earliest), date2: dateInWords(latest) });
  return (
    <p className={styles.forecast}>
      {t('At this pace about {date}{which}; likely {band}.', {
        date: dateInWords(on),
        which: by === 'calendar' ? t(' (the date comes first)') : t(' (the hours come first)'),
        band,
      })}
    </p>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function EndsWithIt({ line: { endsDeferrals } }: { line: DueLine }) {
  const t = useWords();
  if (endsDeferrals.length === 0) return null;
  return (
    <div>
      <p>
        <Say
          text="Ends {which}: repair, replace, remove or inspect <cite/>"
          parts={{ cite: <Cite cite="14cfr91.405(c)" plain /> }}
          values={{ which: endsDeferrals.length === 1 ? t('this deferral') : t('these deferrals') }}
        />
      </p>
      <ul className={styles.ends}>
        {endsDeferrals.map((one) => (
          <li key={one.discrepancyId}>
            <Link href={`/bench/write-up/${one.discrepancyId}`}>
              {one.number} {one.title}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** 91.409(b): the ten hours, only on the way to the inspection, and their price. */
function OverflySaid({ overfly }: { overfly: Overfly }) {
  const t = useWords();
  const { excessTenths, lastTenths, thenLeftTenths, thenLeftAtLastTenths } = overfly;
  return (
    <p className={styles.soft}>
      {t(
        '{which}Not more than 10 h over, until {tenths} h, and only en route to where it can be done. What is flown over comes off the next 100 h: at the last tenth {tenths2} h remain.',
        {
          which:
            excessTenths > 0
              ? t('{tenths} h over. Done now, only {tenths2} h remain until the next. ', {
                  tenths: formatTenths(excessTenths),
                  tenths2: formatTenths(thenLeftTenths),
                })
              : '',
          tenths: formatTenths(lastTenths),
          tenths2: formatTenths(thenLeftAtLastTenths),
        },
      )}
    </p>
  );
}
