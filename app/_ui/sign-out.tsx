'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useState } from 'react';
import { knockOut } from '../_session/knock';
import { Button, ButtonRow } from './button';
import { tellSessionChanged } from './live/line';
import { Notice } from './notice';
import styles from './shell.module.css';

/**
 * Leaves by a full load, so that nothing read before stays in memory, and takes away what the phone took along for this
 * person. What is written and not sent stays on the phone; then it asks first.
 */
function useLeaving() {
  const [failed, setFailed] = useState(false);
  const [unsent, setUnsent] = useState(0);
  async function leave() {
    setFailed(false);
    const waiting = unsent === 0 ? await countUnsent() : 0;
    if (waiting > 0) {
      setUnsent(waiting);
      return;
    }
    if (!(await knockOut())) {
      setFailed(true);
      return;
    }
    tellSessionChanged();
    await forgetWhatWasTakenAlong();
    window.location.replace('/sign-in');
  }
  return { failed, leave, unsent, stay: () => setUnsent(0) };
}

// What the phone keeps weighs something, and few pages have it; it comes with the press.
const countUnsent = async (): Promise<number> =>
  (await import('../ramp/_phone/sign-out')).countUnsent().catch(() => 0);
const forgetWhatWasTakenAlong = async (): Promise<void> =>
  (await import('../ramp/_phone/sign-out')).forgetWhatWasTakenAlong().catch(() => undefined);

const FAILED = said('Not signed out: no connection.');

/** Before somebody leaves with something unsent on the phone. */
function UnsentFirst(props: { unsent: number; onStay: () => void; onLeave: () => void }) {
  const t = useWords();
  const { unsent, onStay, onLeave } = props;
  return (
    <Notice
      tone="amber"
      title={
        unsent === 1 ? t('One thing is not sent yet.') : t('{unsent} things are not sent yet.', { unsent })
      }
    >
      <p>
        {t(
          'They stay on this phone and are sent when you sign in on it again. Nobody else sees them before, here or anywhere.',
        )}
      </p>
      <ButtonRow>
        <Button weight="main" onClick={onStay}>
          {t('Stay signed in')}
        </Button>
        <Button onClick={onLeave}>{t('Sign out all the same')}</Button>
      </ButtonRow>
    </Notice>
  );
}

/** Ends the session of this browser. For the header. */
export function SignOut() {
  const t = useWords();
  const { failed, leave, unsent, stay } = useLeaving();
  return (
    <div className={styles.out}>
      {unsent > 0 && (
        <div className={styles.outAsks}>
          <UnsentFirst unsent={unsent} onStay={stay} onLeave={() => void leave()} />
        </div>
      )}
      <button type="button" onClick={leave} className={styles.outButton}>
        {t('Sign out')}
      </button>
      <span role="status" className={styles.outFailed}>
        {failed && t(FAILED)}
      </span>
    </div>
  );
}

/** The same as an ordinary button on a page. */
export function SignOutButton() {
  const t = useWords();
  const { failed, leave, unsent, stay } = useLeaving();
  return (
    <>
      {unsent > 0 && <UnsentFirst unsent={unsent} onStay={stay} onLeave={() => void leave()} />}
      {failed && <Notice tone="amber" title={t(FAILED)} />}
      <Button weight="main" onClick={leave}>
        {t('Sign out')}
      </Button>
    </>
  );
}
