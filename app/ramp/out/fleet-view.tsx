'use client';

import { English, Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect } from 'react';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { Moment } from '../../_ui/moment';
import { EmptyState, PageTitle } from '../../_ui/page';
import rows from '../_parts/ramp.module.css';
import { KeptAnswer } from './kept-answer';
import { Go } from './place';
import { useNow } from './use-now';
import styles from './out.module.css';

/** The aircraft kept on this phone, when the server does not answer. */
export function FleetView({ pack }: { pack: RampPack }) {
  const t = useWords();
  const now = useNow();
  useEffect(() => {
    document.title = 'Ramp · Wheelchock';
  }, []);
  const zone = pack.bases[0]?.zone ?? 'UTC';
  return (
    <div className={styles.column}>
      <PageTitle
        lead={
          <>
            <Say
              text="No connection: this is what the phone took along at <moment/>. Walkarounds and findings work; they are sent later."
              parts={{ moment: <Moment at={pack.asOf} zone={zone} /> }}
            />
          </>
        }
      >
        {t('Choose the aircraft')}
      </PageTitle>
      {pack.aircraft.length === 0 ? (
        <EmptyState title={t('No aircraft was taken along.')} />
      ) : (
        <ul className={rows.rows}>
          {pack.aircraft.map((aircraft) => (
            <li key={aircraft.id}>
              <Go href={`/ramp/${aircraft.id}`} className={rows.row}>
                <h2>{aircraft.registration}</h2>
                <span className={rows.rowWhole}>
                  <KeptAnswer aircraft={aircraft} asOf={pack.asOf} now={now} size="small" />
                </span>
                {aircraft.answer?.headline && (
                  <span className={`${rows.rowWhole} ${rows.headline}`}>
                    <English>{aircraft.answer.headline}</English>
                  </span>
                )}
                <span className={`${rows.rowWhole} ${rows.soft}`}>
                  {aircraft.typeName}, {aircraft.baseIdent}. {writtenUp(t, aircraft)}
                </span>
              </Go>
            </li>
          ))}
        </ul>
      )}
      <Go href="/ramp/out" className={styles.press}>
        {t('What is sent and what is not')}
      </Go>
    </div>
  );
}

function writtenUp(t: Translate, { writeUps }: PackAircraft): string {
  const open = writeUps.filter(({ state }) => state === 'open').length;
  const deferred = writeUps.filter(({ state }) => state === 'deferred').length;
  const parts = [
    open > 0 ? t('{open, plural, one {# write-up} other {# write-ups}} open', { open }) : null,
    deferred > 0
      ? t('{deferred, plural, one {# write-up} other {# write-ups}} deferred', { deferred })
      : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? t('Nothing written up.') : `${parts.join(', ')}.`;
}
