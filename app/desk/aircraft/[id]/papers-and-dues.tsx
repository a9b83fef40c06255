import { DateText, HoursText } from '@/app/_ui/moment';
import { Section } from '@/app/_ui/page';
import { dueInWords } from '@/lib/fleet/board-columns';
import { type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { PAPER_WORDS } from '../../words';
import styles from './aircraft.module.css';

/** Inspections and everything else that recurs: when last, when next, how much is left. */
export function Requirements({ file }: { file: AircraftFile }) {
  return (
    <Section title="Inspections and recurring work">
      <ul className={styles.dues}>
        {file.requirements.map((one) => (
          <li key={one.id} className={styles.dueRow}>
            <div>
              <b>{one.name}</b>
              {!one.binding && <span className={styles.soft}> (recommended, not binding)</span>}
              <p className={styles.soft}>
                {one.lastOn === null ? (
                  'Last: not known'
                ) : (
                  <>
                    Last <DateText date={one.lastOn} /> at <HoursText tenths={one.lastTtisTenths} />
                  </>
                )}
              </p>
            </div>
            <div className={styles.left}>
              {one.missing === null ? (
                <b>{dueInWords(one)}</b>
              ) : (
                <b className={styles.missing}>Not known: {one.missing}</b>
              )}
              <p className={styles.soft}>
                {one.on && (
                  <>
                    through <DateText date={one.on} />
                  </>
                )}
                {one.on && one.tenths !== null && ', '}
                {one.tenths !== null && (
                  <>
                    until <HoursText tenths={one.tenths} />
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
  return (
    <Section title="Papers">
      <ul className={styles.dues}>
        {file.papers.map((paper) => (
          <li key={paper.kind} className={styles.dueRow}>
            <b>{PAPER_WORDS[paper.kind] ?? paper.kind}</b>
            <div className={styles.left}>
              <b>
                {paper.aboard === null ? 'Not known whether aboard' : paper.aboard ? 'Aboard' : 'Not aboard'}
              </b>
              <p className={styles.soft}>
                {paper.validThrough ? (
                  <>
                    through <DateText date={paper.validThrough} />
                  </>
                ) : paper.expires === false ? (
                  'does not expire'
                ) : (
                  'expiry not known'
                )}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}
