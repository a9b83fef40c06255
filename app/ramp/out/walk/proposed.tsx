'use client';

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
  const finding = pack.findings.find(({ key }) => key === raised.findingKey);
  const [measured] = Object.entries(raised.measurements);
  return (
    <section className={styles.proposed} aria-label="Proposed finding">
      <p className={styles.itemTitle}>Proposed finding: {finding?.title ?? 'outside its limit'}</p>
      <p>{raised.line.because}</p>
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
          Write it up
        </Go>
        {children}
      </div>
      <p className={styles.soft}>Not written up by you, it is written up by itself when you finish.</p>
    </section>
  );
}

/** A stored number as one would type it, without its unit. */
function typed(key: string, value: number): string {
  const unit = measurementOf(key)?.unit;
  if (!unit) return String(value);
  return sayMeasured(value, unit).slice(0, -MEASURE_UNITS[unit].label.length).trim();
}
