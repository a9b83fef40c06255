'use client';

import { useState } from 'react';
import { knockOut } from '../_session/knock';
import { Button } from './button';
import { Notice } from './notice';
import styles from './shell.module.css';

/** Leaves by a full load, so that nothing read before stays in memory. */
function useLeaving() {
  const [failed, setFailed] = useState(false);
  async function leave() {
    setFailed(false);
    if (await knockOut()) window.location.replace('/sign-in');
    else setFailed(true);
  }
  return { failed, leave };
}

const FAILED = 'Not signed out: no connection.';

/** Ends the session of this browser. For the header. */
export function SignOut() {
  const { failed, leave } = useLeaving();
  return (
    <span className={styles.out}>
      <button type="button" onClick={leave} className={styles.outButton}>
        Sign out
      </button>
      <span role="status" className={styles.outFailed}>
        {failed && FAILED}
      </span>
    </span>
  );
}

/** The same as an ordinary button on a page. */
export function SignOutButton() {
  const { failed, leave } = useLeaving();
  return (
    <>
      {failed && <Notice tone="amber" title={FAILED} />}
      <Button weight="main" onClick={leave}>
        Sign out
      </Button>
    </>
  );
}
