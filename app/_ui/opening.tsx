'use client';

import { useWords } from '#words';
// The state of the link around it, not a link.
// eslint-disable-next-line no-restricted-imports
import { useLinkStatus } from 'next/link';
import { createPortal } from 'react-dom';
import styles from './opening.module.css';

/**
 * Stands inside a link and says that its screen is being fetched. Drawn over the page, so that nothing moves; it waits a moment
 * before it shows, because most screens are there before anybody wonders.
 */
export function Opening() {
  const { pending } = useLinkStatus();
  return pending && typeof document !== 'undefined' ? createPortal(<Bar />, document.body) : null;
}

function Bar() {
  const t = useWords();
  return (
    <div role="status" className={`${styles.bar} not-on-paper`}>
      {t('Opening…')}
    </div>
  );
}
