'use client';

import { Say, useWords } from '#words';
import { raisedByMissingPlacard } from '@/lib/rules/walkaround/judge-walk';
import { type PackAircraft } from '@/lib/walkarounds/pack';
import { Tag } from '../../../_ui/tag';
import { changePlacard } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { findingPath } from '../finding-path';
import { goTo } from '../place';
import { type PlacardToCheck } from './so-far';
import styles from './walk.module.css';

/** A placard that must be there: there, or missing. Missing is itself a finding, so its form opens. */
export function PlacardCheck(props: { aircraft: PackAircraft; walk: KeptWalk; placard: PlacardToCheck }) {
  const t = useWords();
  const { aircraft, walk, placard } = props;
  const { id, wording, location, of } = placard;
  const answer = walk.placards[id] ?? null;
  const raised = raisedByMissingPlacard(placard, placard.area);
  const isWritten = walk.findings.some(({ itemKey }) => itemKey === raised.itemKey);

  function miss() {
    void changePlacard(aircraft.id, id, 'missing');
    void goTo(
      findingPath(aircraft.id, {
        station: placard.area,
        item: raised.itemKey,
        walk: walk.id,
        finding: raised.findingKey ?? undefined,
        place: location,
        words: raised.words,
      }),
    );
  }

  return (
    <section className={styles.placard} aria-label={t('Placard {wording}', { wording })}>
      <p>
        <Say
          text="Placard must be there: <b>{wording}</b> {location} <span>({number})</span>"
          parts={{ b: <b className={styles.wording} />, span: <span className={styles.soft} /> }}
          values={{ wording, location, number: of.number }}
        />{' '}
        {answer === 'there' && (
          <Tag tone="grey" shape="tick" size="small">
            {t('There')}
          </Tag>
        )}
        {answer === 'missing' && (
          <Tag tone="amber" shape="wedge" size="small">
            {isWritten ? t('Missing, written up') : t('Missing, not written up yet')}
          </Tag>
        )}
      </p>
      {!isWritten && (
        <div className={styles.two}>
          <button
            type="button"
            className={styles.press}
            aria-pressed={answer === 'there'}
            onClick={() => void changePlacard(aircraft.id, id, answer === 'there' ? null : 'there')}
          >
            {t('It is there')}
          </button>
          <button
            type="button"
            className={`${styles.press} ${styles.amberPress}`}
            aria-pressed={answer === 'missing'}
            onClick={miss}
          >
            {t('Missing')}
          </button>
        </div>
      )}
    </section>
  );
}
