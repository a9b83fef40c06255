'use client';

import { English, useWords } from '#words';
import { type PackLine, type RampPack } from '@/lib/walkarounds/pack';
import { citeInWords } from '../../_ui/cite-in-words';
import { HouseMark } from '../../_ui/house-mark';
import { EFFECTS } from '../../_ui/marks';
import { Tag } from '../../_ui/tag';
import lines from '../../_ui/verdict-lines.module.css';
import styles from './phone-lines.module.css';

/** Reasons as the phone prints them: what each does, why, and the paragraph, with any doubt about its text. */
export function PhoneLines(props: {
  lines: readonly PackLine[];
  paragraphs: RampPack['paragraphs'];
  label?: string;
}) {
  const t = useWords();
  return (
    <ul className={`${lines.lines} ${lines.compact}`} aria-label={props.label}>
      {props.lines.map((line, index) => (
        <li key={`${index}-${line.cite}`} className={`${lines.line} ${line.house ? lines.house : ''}`}>
          <span>
            <Tag tone={EFFECTS[line.effect].tone} shape={EFFECTS[line.effect].shape} size="small">
              {t(EFFECTS[line.effect].word)}
            </Tag>
          </span>
          <div className={lines.why}>
            <p>
              <English>{line.because}</English>
            </p>
            {line.house ? (
              <HouseMark house={line.house} plain />
            ) : (
              <PhoneCite cite={line.cite} paragraphs={props.paragraphs} />
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

/** A paragraph in words. One that the pack says nothing about is printed as usual. */
export function PhoneCite({ cite, paragraphs }: { cite: string; paragraphs: RampPack['paragraphs'] }) {
  const known = Object.hasOwn(paragraphs, cite) ? paragraphs[cite] : undefined;
  return (
    <span className={styles.cite}>
      {known?.label ?? citeInWords(cite)}{' '}
      {known?.doubt && <span className={styles.doubt}>{known.doubt}</span>}
    </span>
  );
}
