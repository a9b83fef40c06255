'use client';

import { Button } from '../../_ui/button';
import { PageTitle } from '../../_ui/page';
import styles from './out.module.css';
import { Go } from './place';

/** Nobody is signed in on this phone, and it keeps nothing to show. */
export function SignInFirst({ next }: { next: string }) {
  return (
    <div className={styles.column}>
      <PageTitle>Sign in first</PageTitle>
      <p>
        Nobody is signed in on this phone. Once signed in, it takes along what the ramp needs and works
        without a connection too.
      </p>
      {/* A full load: nothing of whoever was here before stays in memory. */}
      <a className={`${styles.press} ${styles.main}`} href={`/sign-in?next=${encodeURIComponent(next)}`}>
        Sign in
      </a>
    </div>
  );
}

/** No connection, and nothing was taken along. */
export function NothingKept({ onTry }: { onTry: () => void }) {
  return (
    <div className={styles.column}>
      <PageTitle>Nothing is kept on this phone yet</PageTitle>
      <p>
        There is no connection, and this phone has never fetched the fleet. Open the ramp once where there is
        a connection; after that it opens without one.
      </p>
      <Button weight="main" wide onClick={onTry}>
        Try again
      </Button>
    </div>
  );
}

/** A page of the server, asked for with no connection. */
export function NeedsConnection() {
  return (
    <div className={styles.column}>
      <PageTitle>This page needs a connection</PageTitle>
      <p>It is made by the server, which does not answer now. The ramp works without it.</p>
      <Button weight="main" wide onClick={() => window.location.reload()}>
        Try again
      </Button>
      <Go className={styles.press} href="/ramp">
        To the ramp
      </Go>
    </div>
  );
}

/** An aircraft the phone does not know. */
export function NotThere({ asOf }: { asOf: string }) {
  return (
    <div className={styles.column}>
      <PageTitle>This aircraft is not kept on this phone</PageTitle>
      <p>
        It is not among what was taken along at{' '}
        <time dateTime={asOf}>{asOf.slice(0, 16).replace('T', ' ')} UTC</time>. Open it once with a
        connection.
      </p>
      <Go className={`${styles.press} ${styles.main}`} href="/ramp">
        All aircraft
      </Go>
    </div>
  );
}
