'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { useEffect } from 'react';
import { ShapeMark, type Shape } from '../../_ui/tag';
import { Go } from '../out/place';
import { flush, useIsOutboxRead, useOthersWaiting, useSync } from './outbox';
import { type SyncState } from './shapes';
import styles from './sent-bar.module.css';

/** Says on every page of the ramp what is sent and what is not, and what the person can do about it. */
export function SentBar() {
  const t = useWords();
  const isRead = useIsOutboxRead();
  const sync = useSync();
  const others = useOthersWaiting();
  const said = isRead ? sayHowItStands(t, sync, others) : LOADING;
  useAskBeforeLeaving(sync.isNotKept && sync.waiting > 0);
  return (
    <section
      className={`${styles.bar} not-on-paper`}
      aria-label={t('Sent and not sent')}
      data-tone={said.tone}
      data-testid="sent-bar"
    >
      <span role="status" className={styles.state}>
        <ShapeMark shape={said.shape} />
        <span>{t(said.words)}</span>
      </span>
      {said.step === 'send' && (
        <button type="button" className={styles.more} onClick={flush}>
          {t('Send now')}
        </button>
      )}
      {said.step === 'sign-in' && (
        <button type="button" className={styles.more} onClick={signInAndComeBack}>
          {t('Sign in to send')}
        </button>
      )}
      {said.step === 'see' && (
        <Go href="/ramp/out" className={styles.more}>
          {t('See which')}
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

const LOADING: Said = { tone: 'plain', shape: 'dashes', words: said('Looking what is sent…'), step: null };

/** How sending stands, in words. `others` is how many things other persons left on this phone. */
export function sayHowItStands(t: Translate, sync: SyncState, others: number): Said {
  const mine = sync.waiting;
  if (sync.isNotKept) {
    const words =
      mine > 0
        ? t('{mine} not sent, and this phone keeps nothing: leave this page open.', { mine })
        : t(KEEPS_NOTHING);
    return { tone: 'red', shape: 'block', words, step: mine > 0 ? 'send' : null };
  }
  if (mine > 0) {
    if (sync.isSending)
      return { tone: 'blue', shape: 'ring', words: t('Sending, {mine} to go.', { mine }), step: null };
    const why = sync.stuck && sync.stuck !== 'other-person' ? t(WHY[sync.stuck]) : '';
    const words = t('{mine} not sent yet{why}. Kept on this phone.', { mine, why: t(why) });
    if (sync.refused > 0) {
      const both = t('{refused} not taken by the server. {words}', { refused: sync.refused, words });
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
    return {
      tone: 'red',
      shape: 'block',
      words: t('{refused} not taken by the server.', { refused: sync.refused }),
      step: 'see',
    };
  }
  if (others > 0) {
    const words = t('{others} of somebody else not sent: {which} until they sign in.', {
      others,
      which: others === 1 ? t('it waits') : t('they wait'),
    });
    return { tone: 'amber', shape: 'wedge', words, step: null };
  }
  return { tone: 'plain', shape: 'tick', words: t('Everything is sent.'), step: null };
}

const KEEPS_NOTHING = said(
  'This phone keeps nothing: what you write is lost when you leave before it is sent.',
);

const WHY = {
  'no-connection': said(': no connection'),
  'no-answer': said(': the server does not answer'),
  'signed-out': said(': your session has ended'),
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
