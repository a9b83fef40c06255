'use client';

import { useWords } from '#words';
import { useEffect, useRef } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import styles from './account.module.css';

/** Recovery codes, this once, with the focus on them. */
export function CodesShown({ codes }: { codes: readonly string[] }) {
  const t = useWords();
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => list.current?.focus(), [codes]);
  return (
    <div className={styles.steps}>
      <h3>{t('Your recovery codes')}</h3>
      <p className={styles.words}>
        {t(
          'Write them down or print them, and keep them away from your phone. Each signs you in once, beside your password, when the phone is lost. They are shown this once.',
        )}
      </p>
      <ol ref={list} tabIndex={-1} className={styles.codes} aria-label={t('Your recovery codes')}>
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ol>
      <ButtonRow>
        <Button onClick={() => window.print()}>{t('Print this page')}</Button>
      </ButtonRow>
    </div>
  );
}
