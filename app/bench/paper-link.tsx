import { useWords } from '#words';
import { type ReactNode } from 'react';
import styles from './paper-link.module.css';

/**
 * A link to a paper to print (`/api/papers/…`). It opens beside the page, so that nothing typed here is lost, and it is
 * a plain anchor: the router must not try to show a PDF as a page. `kind` says what comes, for papers that are no PDF.
 */
export function PaperLink(props: { href: string; children: ReactNode; kind?: string }) {
  const t = useWords();
  const { href, children, kind = 'PDF' } = props;
  return (
    <a href={href} target="_blank" rel="noopener" className={`${styles.paper} not-on-paper`}>
      {children} <span className={styles.kind}>{t('({kind}, opens beside this page)', { kind })}</span>
    </a>
  );
}
