import { Say } from '#words';
import { type ReactNode } from 'react';
import { LanguageSwitch } from '../_words/language-switch';
import { Caution } from './caution';
import styles from './shell.module.css';
import { WheelMark } from './wheel-mark';

/**
 * The frame where nobody is signed in: sign-in, not found, something went wrong. Light on purpose: the error page comes with
 * every screen.
 */
export function BareShell({ children }: { children: ReactNode }) {
  return (
    <div className={styles.shell}>
      <header className={styles.header}>
        <div className={styles.strip}>
          <span className={styles.home}>
            <WheelMark size={30} />
            <span className={`${styles.name} ${styles.always}`}>Wheelchock</span>
          </span>
        </div>
      </header>
      <main id="content" tabIndex={-1} className={`${styles.content} ${styles.narrow}`}>
        {children}
      </main>
      <footer className={styles.foot}>
        <Caution />
        {/* By a full load: the framework's link would come with every error page, and the ramp counts its bytes. */}
        {/* eslint-disable-next-line @next/next/no-html-link-for-pages */}
        <a href="/guide" className={`${styles.guides} not-on-paper`}>
          <Say text="Guides" />
        </a>
        <LanguageSwitch />
      </footer>
    </div>
  );
}
