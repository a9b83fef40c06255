import { useWords } from '#words';
import { type WriteUpSummary } from '@/lib/findings/summary';
import { Tag } from '../../_ui/tag';
import { PlacardIsUp } from './placard-is-up';
import styles from './ramp.module.css';

/** Placards of a live deferral: what must be there, and what is still owed. */
export function Placards({ placards, mayPlace }: Pick<WriteUpSummary, 'placards'> & { mayPlace: boolean }) {
  const t = useWords();
  if (placards.length === 0) return null;
  return (
    <ul className={styles.plainList} aria-label={t('Placards')}>
      {placards.map(({ id, wording, location, placed }) => (
        <li key={id} className={styles.placard}>
          <p>
            <Tag tone={placed ? 'grey' : 'amber'} shape={placed ? 'tick' : 'wedge'} size="small">
              {placed ? t('Placard must be there') : t('Placard owed')}
            </Tag>
          </p>
          <p>
            <b className={styles.wording}>{wording}</b> {location}
          </p>
          {placed ? (
            <p className={styles.soft}>{t('Not there? Then write it up: a missing placard is a finding.')}</p>
          ) : (
            <>
              <p>{t('No go until it is up.')}</p>
              {mayPlace && <PlacardIsUp placardId={id} wording={wording} />}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
