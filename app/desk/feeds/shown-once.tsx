'use client';

import { useWords } from '#words';
import { useEffect, useId, useRef, useState } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import styles from './feeds.module.css';

interface ShownOnceProps {
  readonly title: string;
  readonly label: string;
  readonly text: string;
  readonly children?: React.ReactNode;
}

/** A secret that is never shown again: in a field to take it from, with the focus on it. */
export function ShownOnce({ title, label, text, children }: ShownOnceProps) {
  const t = useWords();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('');
  useEffect(() => field.current?.focus(), [text]);

  async function copy() {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      field.current?.select();
      setSaid(t('Not copied. It is marked: copy it with the keyboard.'));
    }
  }

  return (
    <div className={styles.once}>
      <p className={styles.onceTitle}>{title}</p>
      {children}
      <label htmlFor={id}>{label}</label>
      <input
        ref={field}
        id={id}
        readOnly
        value={text}
        spellCheck={false}
        onFocus={(event) => event.target.select()}
      />
      <ButtonRow>
        <Button onClick={() => void copy()}>{t('Copy')}</Button>
        <span role="status">{said}</span>
      </ButtonRow>
    </div>
  );
}
