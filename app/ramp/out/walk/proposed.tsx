'use client';

import { English, useWords } from '#words';
import { type ReactNode } from 'react';
import { MEASURE_UNITS, measurementOf, sayMeasured } from '@/lib/rules/findings/measurements';
import { type RaisedByWalk } from '@/lib/rules/walkaround/judge-walk';
import { type RampPack } from '@/lib/walkarounds/pack';
import { findingPath } from '../finding-path';
import { PhoneCite } from '../phone-lines';
import { Go } from '../place';
import styles from './walk.module.css';

interface ProposedProps {
  readonly pack: RampPack;
  readonly aircraftId: string;
  readonly walkId: string;
  readonly raised: RaisedByWalk;
  /** The way to say that it is no finding after all. */
  readonly children?: ReactNode;
}

/** A finding that came up by itself: what it is, why, and the ways on. */
export function Proposed({ pack, aircraftId, walkId, raised, children }: ProposedProps) {
  const t = useWords();
  const finding = pack.findings.find(({ key }) => key === raised.findingKey);
  const [measured] = Object.entries(raised.measurements);
  return (
    <section className={styles.proposed} aria-label={t('Proposed finding')}>
      <p className={styles.itemTitle}>
        {t('Proposed finding: {title}', { title: finding?.title ?? t('outside its limit') })}
      </p>
      <p>
        <English>{raised.line.because}</English>
      </p>
      <PhoneCite cite={raised.line.cite} paragraphs={pack.paragraphs} />
      <div className={styles.two}>
        <Go
          href={findingPath(aircraftId, {
            station: raised.station,
            item: raised.itemKey,
            walk: walkId,
            finding: raised.findingKey ?? undefined,
            words: raised.words,
            measured: measured && { key: measured[0], text: typed(measured[0], measured[1]) },
          })}
          className={`${styles.press} ${styles.amberFilled}`}
        >
          {t('Write it up')}
        </Go>
        {children}
      </div>
      <p className={styles.soft}>{t('Not written up by you, it is written up by itself when you finish.')}</p>
    </section>
  );
}

/** A stored number as one would type it, without its unit. */
function typed(key: string, value: number): string {
  const unit = measurementOf(key)?.unit;
  if (!unit) return String(value);
  return sayMeasured(value, unit).slice(0, -MEASURE_UNITS[unit].label.length).trim();
}
