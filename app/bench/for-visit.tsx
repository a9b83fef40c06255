import { Say, useWords } from '#words';
import { type BenchRow } from '@/lib/work/read-bench';
import { Button, LinkButton } from '../_ui/button';
import styles from './for-visit.module.css';

/**
 * The bar between filters and list: how the keys work while nothing is ticked, then what is ticked and the way into a
 * visit. Both lie in one place, one of them hidden, so that a tick moves nothing; it stays in sight while something is ticked.
 */
export function ForVisit(props: { chosen: readonly BenchRow[]; said: string; onClear: () => void }) {
  const t = useWords();
  const { chosen, said, onClear } = props;
  const first = chosen[0];
  return (
    <div className={`${styles.bar} ${first ? styles.chosen : ''}`}>
      <p role="status" className={styles.said}>
        {said !== '' ? (
          <b>{said}</b>
        ) : first ? (
          <>
            <Say
              text="<b>{chosen} of {registration}</b> ticked for a visit"
              parts={{ b: <b /> }}
              values={{ chosen: chosen.length, registration: first.registration }}
            />
          </>
        ) : (
          t('Tick write-ups of one aircraft to group them into a visit.')
        )}
      </p>
      <div className={styles.side}>
        <div className={`${styles.presses} ${first ? '' : styles.away}`}>
          <LinkButton href={first ? visitHref(first, chosen) : '/bench'} weight="main">
            {t('Group into a visit')}
          </LinkButton>
          <Button weight="quiet" onClick={onClear}>
            {t('Clear')}
          </Button>
        </div>
        <p className={`${styles.keys} ${first ? styles.away : ''}`}>
          <Say
            text="In the list: <kbd>↑</kbd> <kbd>↓</kbd> <kbd>Home</kbd> <kbd>End</kbd> move, <kbd>Enter</kbd> opens, <kbd>Space</kbd> or <kbd>x</kbd> ticks."
            parts={{ kbd: <kbd /> }}
          />
        </p>
      </div>
    </div>
  );
}

function visitHref({ aircraftId }: BenchRow, chosen: readonly BenchRow[]): string {
  const query = new URLSearchParams({ aircraft: aircraftId });
  for (const { writeUp } of chosen) query.append('writeUp', writeUp.id);
  return `/bench/visit/new?${query.toString()}`;
}
