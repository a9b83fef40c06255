'use client';

import { type Translate } from '@/lib/words/translate';
import { useWords } from '#words';
import { areaTitle } from '@/lib/rules/walkaround/areas';
import { type PackWriteUp } from '@/lib/walkarounds/pack';
import { CarriedMark } from '../../_ui/carried-mark';
import { SeverityMark } from '../../_ui/marks';
import { Moment } from '../../_ui/moment';
import ramp from '../_parts/ramp.module.css';
import { StateMark } from '../_parts/write-up-card';
import styles from './phone-write-ups.module.css';

/** Write-ups in a few lines each: how bad, what, where, in whose words. `showPlace` where they are not all at one place. */
export function PhoneWriteUps(props: {
  writeUps: readonly PackWriteUp[];
  zone: string;
  label: string;
  showPlace?: boolean;
}) {
  const t = useWords();
  return (
    <ul className={styles.list} aria-label={props.label}>
      {props.writeUps.map((writeUp) => (
        <li key={writeUp.id} className={styles.writeUp}>
          <span className={ramp.marks}>
            {writeUp.state !== 'closed' && <SeverityMark severity={writeUp.severity} size="small" />}
            <StateMark writeUp={writeUp} />
            {writeUp.carried && <CarriedMark mark={writeUp.carried} short />}
          </span>
          <p className={styles.title}>
            {writeUp.number} {writeUp.title}
          </p>
          <p className={styles.words}>{writeUp.words}</p>
          <p className={styles.soft}>
            {whereAbout(t, writeUp, props.showPlace ?? false)}
            {writeUp.reportedBy}, <Moment at={writeUp.closedAt ?? writeUp.openedAt} zone={props.zone} />
            {writeUp.closedAt ? t(' closed') : ''}
            {writeUp.observations > 0 &&
              t('. Seen again by {observations, plural, one {# other} other {# others}}', {
                observations: writeUp.observations,
              })}
            {writeUp.photos > 0 &&
              `. ${t('{photos, plural, one {# photo} other {# photos}}', { photos: writeUp.photos })}`}
            .
          </p>
        </li>
      ))}
    </ul>
  );
}

function whereAbout(t: Translate, { station, place }: PackWriteUp, showPlace: boolean): string {
  const parts = [showPlace ? t(areaTitle(station)) : '', place].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${parts.join(': ')}. `;
}
