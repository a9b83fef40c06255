'use client';

import { useWords } from '#words';
import { useRef, useState, type KeyboardEvent } from 'react';
import { type BenchRow } from '@/lib/work/read-bench';
import { SeverityMark } from '../_ui/marks';
import { Ago } from '../_ui/moment';
import Link from '../_ui/link';
import { Tag } from '../_ui/tag';
import styles from './queue.module.css';
import { severityOf } from './severity-of';

interface ListProps {
  readonly rows: readonly BenchRow[];
  readonly asOf: string;
  readonly chosen: readonly BenchRow[];
  readonly onTick: (row: BenchRow) => void;
}

/**
 * The list, walked by keys. Tab enters it at one row and leaves it again; the arrows, Home and End go from row to row,
 * Enter opens (the rows are links), Space or x ticks. Keys count only while the focus is in the list: WCAG 2.1.4.
 */
export function QueueList({ rows, asOf, chosen, onTick }: ListProps) {
  const t = useWords();
  const list = useRef<HTMLOListElement>(null);
  const [currentId, setCurrentId] = useState<string | null>(null);
  const current = Math.max(
    0,
    rows.findIndex((row) => row.writeUp.id === currentId),
  );

  function onKeyDown(event: KeyboardEvent<HTMLElement>, row: BenchRow, index: number): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const isBox = event.target instanceof HTMLInputElement;
    const to = STEPS[event.key]?.(index, rows.length);
    if (to !== undefined) {
      event.preventDefault();
      const next = rows[Math.min(Math.max(to, 0), rows.length - 1)];
      if (next) setCurrentId(next.writeUp.id);
      const kept = isBox ? 'input' : 'a';
      const item = list.current?.children[Math.min(Math.max(to, 0), rows.length - 1)];
      (item?.querySelector<HTMLElement>(kept) ?? item?.querySelector('a'))?.focus();
    } else if (event.key === 'x' || event.key === 'X' || (event.key === ' ' && !isBox)) {
      event.preventDefault();
      onTick(row);
    }
  }

  return (
    <ol ref={list} className={styles.queue} aria-label={t('Write-ups, most pressing first')}>
      {rows.map((row, index) => (
        <li key={row.writeUp.id} className={styles.item}>
          <Row
            row={row}
            asOf={asOf}
            isTicked={chosen.includes(row)}
            tabIndex={index === current ? 0 : -1}
            onTick={() => onTick(row)}
            onFocus={() => setCurrentId(row.writeUp.id)}
            onKeyDown={(event) => onKeyDown(event, row, index)}
          />
        </li>
      ))}
    </ol>
  );
}

const STEPS: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowDown: (index) => index + 1,
  ArrowUp: (index) => index - 1,
  Home: () => 0,
  End: (_, count) => count - 1,
};

interface RowProps {
  readonly row: BenchRow;
  readonly asOf: string;
  readonly isTicked: boolean;
  readonly tabIndex: 0 | -1;
  readonly onTick: () => void;
  readonly onFocus: () => void;
  readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
}

function Row({ row, asOf, isTicked, tabIndex, onTick, onFocus, onKeyDown }: RowProps) {
  const t = useWords();
  const { writeUp } = row;
  const severity = severityOf(writeUp.severity);
  const reach = { tabIndex, onFocus, onKeyDown };
  return (
    <>
      <div className={`${styles.tick} ${styles[severity ?? 'undecided']}`}>
        {row.visit === null && (
          <label>
            <input {...reach} type="checkbox" checked={isTicked} onChange={onTick} />
            <span className="out-of-sight">
              {t('{registration} {number} for a visit', {
                registration: row.registration,
                number: writeUp.number,
              })}
            </span>
          </label>
        )}
      </div>
      <Link {...reach} href={`/bench/write-up/${writeUp.id}`} className={styles.row}>
        <span className={styles.mark}>
          <SeverityMark severity={severity} size="small" />
        </span>
        <span className={styles.aircraft}>
          {row.registration} <span className={styles.base}>{row.baseIdent}</span>
        </span>
        <span className={styles.what}>
          <span className={styles.title}>{writeUp.title}</span>
          <span className={styles.more}>
            {writeUp.carried && `${t('Carried over')} · `}
            {writeUp.number} · {writeUp.place && `${writeUp.place} · `}
            {row.jascLabel} · <Ago at={writeUp.openedAt} now={asOf} />
          </span>
          {row.visit && (
            <span className={styles.more}>{t('In the visit “{title}”', { title: row.visit.title })}</span>
          )}
        </span>
        <span className={styles.next}>
          {row.repeat && (
            <Tag tone="amber" size="small">
              {t('Repeat')}
            </Tag>
          )}
          {writeUp.state === 'deferred' && row.next !== 'Deferred' && (
            <Tag tone="blue" size="small">
              {t('Deferred')}
            </Tag>
          )}
          <span className={styles.step}>{row.next}</span>
          <span className={styles.why}>{row.why}</span>
        </span>
      </Link>
    </>
  );
}
