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
            Recommended, not binding
          </Tag>
        )}
        <p className={styles.soft}>
          <Cite cite={line.cite} plain />
          {line.last && (
            <>
              . Last <DateText date={line.last.on} /> at <HoursText tenths={line.last.ttisTenths} />
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
  overdue: { tone: 'red', shape: 'block', word: 'Overdue' },
  unknown: { tone: 'red', shape: 'question', word: 'Not known' },
  soon: { tone: 'amber', shape: 'wedge', word: 'Due soon' },
  later: { tone: 'grey', shape: 'dot', word: 'Later' },
};

function Left({ line }: { line: DueLine }) {
  const mark = MARKS[line.group];
  // What only recommends grounds nothing, so it is never shown in the colour of grounded.
  const tone = line.binding || mark.tone !== 'red' ? mark.tone : 'amber';
  return (
    <p className={styles.left}>
      <Tag tone={tone} shape={mark.shape} size="small">
        {mark.word}
      </Tag>{' '}
      <b>{line.missing === null ? leftInWords(line) : `Not known: ${line.missing}`}</b>
    </p>
  );
}

const leftInWords = (line: DueLine): string =>
  line.on === null && line.tenths === null ? 'Done; it does not repeat' : dueInWords(line);

function Limits({ line }: { line: DueLine }) {
  if (line.on === null && line.tenths === null) return null;
  return (
    <p className={styles.soft}>
      {line.on && (
        <>
          Through <DateText date={line.on} />
        </>
      )}
      {line.on && line.tenths !== null && ', or '}
      {line.tenths !== null && (
        <>
          until <HoursText tenths={line.tenths} />
        </>
      )}
    </p>
  );
}

/** The date by the flying pace, or why there is none. Called "about", because that is what it is. */
function Forecast({ line }: { line: DueLine }) {
  if (line.noForecast !== null && line.group !== 'overdue') {
    return <p className={styles.soft}>{capital(line.noForecast)}.</p>;
  }
  if (!line.first || line.remainingTenths === null || line.group === 'overdue') return null;
  const { by, on, earliest, latest } = line.first;
  const band =
    latest === null
      ? `${dateInWords(earliest)} or later`
      : earliest === latest
        ? dateInWords(on)
        : `${dateInWords(earliest)} to ${dateInWords(latest)}`;
  return (
    <p className={styles.forecast}>
      At this pace about {dateInWords(on)}
      {by === 'calendar' ? ' (the date comes first)' : ' (the hours come first)'}; likely {band}.
    </p>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function EndsWithIt({ line: { endsDeferrals } }: { line: DueLine }) {
  if (endsDeferrals.length === 0) return null;
  return (
    <div>
      <p>
        Ends {endsDeferrals.length === 1 ? 'this deferral' : 'these deferrals'}: repair, replace, remove or
        inspect <Cite cite="14cfr91.405(c)" plain />
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
  const { excessTenths, lastTenths, thenLeftTenths, thenLeftAtLastTenths } = overfly;
  return (
    <p className={styles.soft}>
      {excessTenths > 0
        ? `${formatTenths(excessTenths)} h over. Done now, only ${formatTenths(thenLeftTenths)} h remain until the next. `
        : ''}
      Not more than 10 h over, until {formatTenths(lastTenths)} h, and only en route to where it can be done.
      What is flown over comes off the next 100 h: at the last tenth {formatTenths(thenLeftAtLastTenths)} h
      remain.
    </p>
  );
}
