'use client';

import { Say, useWords } from '#words';
import { Button } from '../../_ui/button';
import { PageTitle } from '../../_ui/page';
import styles from './out.module.css';
import { Go } from './place';

/** Nobody is signed in on this phone, and it keeps nothing to show. */
export function SignInFirst({ next }: { next: string }) {
  const t = useWords();
  return (
    <div className={styles.column}>
      <PageTitle>{t('Sign in first')}</PageTitle>
      <p>
        {t(
          'Nobody is signed in on this phone. Once signed in, it takes along what the ramp needs and works without a connection too.',
        )}
      </p>
      {/* A full load: nothing of whoever was here before stays in memory. */}
      <a className={`${styles.press} ${styles.main}`} href={`/sign-in?next=${encodeURIComponent(next)}`}>
        {t('Sign in')}
      </a>
    </div>
  );
}

/** No connection, and nothing was taken along. */
export function NothingKept({ onTry }: { onTry: () => void }) {
  const t = useWords();
  return (
    <div className={styles.column}>
      <PageTitle>{t('Nothing is kept on this phone yet')}</PageTitle>
      <p>
        {t(
          'There is no connection, and this phone has never fetched the fleet. Open the ramp once where there is a connection; after that it opens without one.',
        )}
      </p>
      <Button weight="main" wide onClick={onTry}>
        {t('Try again')}
      </Button>
    </div>
  );
}

/** A page of the server, asked for with no connection. */
export function NeedsConnection() {
  const t = useWords();
  return (
    <div className={styles.column}>
      <PageTitle>{t('This page needs a connection')}</PageTitle>
      <p>{t('It is made by the server, which does not answer now. The ramp works without it.')}</p>
      <Button weight="main" wide onClick={() => window.location.reload()}>
        {t('Try again')}
      </Button>
      <Go className={styles.press} href="/ramp">
        {t('To the ramp')}
      </Go>
    </div>
  );
}

/** An aircraft the phone does not know. */
export function NotThere({ asOf }: { asOf: string }) {
  const t = useWords();
  return (
    <div className={styles.column}>
      <PageTitle>{t('This aircraft is not kept on this phone')}</PageTitle>
      <p>
        <Say
          text="It is not among what was taken along at <time>{asOf} UTC</time>. Open it once with a connection."
          parts={{ time: <time dateTime={asOf} /> }}
          values={{ asOf: asOf.slice(0, 16).replace('T', ' ') }}
        />
      </p>
      <Go className={`${styles.press} ${styles.main}`} href="/ramp">
        {t('All aircraft')}
      </Go>
    </div>
  );
}
