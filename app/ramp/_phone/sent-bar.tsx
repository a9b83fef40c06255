'use client';

import { useEffect } from 'react';
import { ShapeMark, type Shape } from '../../_ui/tag';
import { Go } from '../out/place';
import { flush, useIsOutboxRead, useOthersWaiting, useSync } from './outbox';
import { type SyncState } from './shapes';
import styles from './sent-bar.module.css';

/** Says on every page of the ramp what is sent and what is not, and what the person can do about it. */
export function SentBar() {
  const isRead = useIsOutboxRead();
  const sync = useSync();
  const others = useOthersWaiting();
  const said = isRead ? sayHowItStands(sync, others) : LOADING;
  useAskBeforeLeaving(sync.isNotKept && sync.waiting > 0);
  return (
    <section
      className={`${styles.bar} not-on-paper`}
      aria-label="Sent and not sent"
      data-tone={said.tone}
      data-testid="sent-bar"
    >
      <span role="status" className={styles.state}>
        <ShapeMark shape={said.shape} />
        <span>{said.words}</span>
      </span>
      {said.step === 'send' && (
        <button type="button" className={styles.more} onClick={flush}>
          Send now
        </button>
      )}
      {said.step === 'sign-in' && (
        <button type="button" className={styles.more} onClick={signInAndComeBack}>
          Sign in to send
        </button>
      )}
      {said.step === 'see' && (
        <Go href="/ramp/out" className={styles.more}>
          See which
        </Go>
      )}
    </section>
  );
}

interface Said {
  readonly tone: 'plain' | 'blue' | 'amber' | 'red';
  readonly shape: Shape;
  readonly words: string;
  readonly step: 'send' | 'sign-in' | 'see' | null;
}

const LOADING: Said = { tone: 'plain', shape: 'dashes', words: 'Looking what is sent…', step: null };

/** How sending stands, in words. `others` is how many things other persons left on this phone. */
export function sayHowItStands(sync: SyncState, others: number): Said {
  const mine = sync.waiting;
  if (sync.isNotKept) {
    const words =
      mine > 0 ? `${mine} not sent, and this phone keeps nothing: leave this page open.` : KEEPS_NOTHING;
    return { tone: 'red', shape: 'block', words, step: mine > 0 ? 'send' : null };
  }
  if (mine > 0) {
    if (sync.isSending) return { tone: 'blue', shape: 'ring', words: `Sending, ${mine} to go.`, step: null };
    const why = sync.stuck && sync.stuck !== 'other-person' ? WHY[sync.stuck] : '';
    const words = `${mine} not sent yet${why}. Kept on this phone.`;
    if (sync.refused > 0) {
      const both = `${sync.refused} not taken by the server. ${words}`;
      return {
        tone: 'red',
        shape: 'block',
        words: both,
        step: sync.stuck === 'signed-out' ? 'sign-in' : 'see',
      };
    }
    return { tone: 'amber', shape: 'wedge', words, step: sync.stuck === 'signed-out' ? 'sign-in' : 'send' };
  }
  if (sync.refused > 0) {
    return { tone: 'red', shape: 'block', words: `${sync.refused} not taken by the server.`, step: 'see' };
  }
  if (others > 0) {
    const words = `${others} of somebody else not sent: ${others === 1 ? 'it waits' : 'they wait'} until they sign in.`;
    return { tone: 'amber', shape: 'wedge', words, step: null };
  }
  return { tone: 'plain', shape: 'tick', words: 'Everything is sent.', step: null };
}

const KEEPS_NOTHING = 'This phone keeps nothing: what you write is lost when you leave before it is sent.';

const WHY = {
  'no-connection': ': no connection',
  'no-answer': ': the server does not answer',
  'signed-out': ': your session has ended',
} as const;

/** The shell changes the address without a new page, so it is read at the press. */
function signInAndComeBack(): void {
  const here = window.location.pathname + window.location.search;
  // A full load: nothing of whoever was here before stays in memory.
  const signIn = new URL('/sign-in', window.location.href);
  signIn.searchParams.set('next', here);
  window.location.assign(signIn.href);
}

/** Where the phone keeps nothing, what is not sent goes with the page. */
function useAskBeforeLeaving(isToAsk: boolean): void {
  useEffect(() => {
    if (!isToAsk) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [isToAsk]);
}
