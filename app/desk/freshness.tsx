'use client';

import { useRouter } from 'next/navigation';
import { createContext, use, useEffect, useEffectEvent, useRef, useState, type ReactNode } from 'react';
import { OutcomeMark } from '@/app/_ui/marks';
import { Tag, type Size } from '@/app/_ui/tag';
import { type Outcome } from '@/lib/rules/verdict';
import { clocksWithSeconds } from './clock';
import styles from './freshness.module.css';

/** fresh: confirmed lately. late: may be old. lost: too old to show an answer at all. */
type Contact = 'fresh' | 'late' | 'lost';
type Trouble = 'none' | 'no-contact' | 'signed-out' | 'server';

const ASK_EVERY_MS = 30_000;
const LATE_AFTER_MS = 45_000;
const LOST_AFTER_MS = 120_000;
const PATIENCE_MS = 10_000;

const ContactNow = createContext<Contact>('fresh');

/**
 * Keeps the answers inside it fresh and never lets an old one look fresh. Asks the server every half minute, and at once
 * when the screen comes back into sight. Without an answer it says so and goes grey; after two minutes every
 * `FreshMark` inside says "Not known". `asOf` is the server's time of what is shown: a new one proves contact.
 */
export function StaysFresh(props: { asOf: string; zones: readonly string[]; children: ReactNode }) {
  const { asOf, zones, children } = props;
  const router = useRouter();
  const contactAt = useRef<number | null>(null);
  const first = useRef(true);
  const [contact, setContact] = useState<Contact>('fresh');
  const [trouble, setTrouble] = useState<Trouble>('none');

  const judge = useEffectEvent((failing: Trouble) => {
    const age = contactAt.current === null ? Infinity : Date.now() - contactAt.current;
    // A clock put back makes the age negative: then nothing is known of it.
    if (age < 0 || age > LOST_AFTER_MS) setContact('lost');
    else setContact(failing !== 'none' || age > LATE_AFTER_MS ? 'late' : 'fresh');
  });

  const ask = useEffectEvent(async () => {
    const failed = await knockOnServer();
    setTrouble(failed);
    judge(failed);
    if (failed === 'none') router.refresh();
  });

  useEffect(() => {
    const now = Date.now();
    // A page brought back from the browser's memory shows an old time: it proves nothing until the server has answered.
    const proves = !first.current || Math.abs(now - Date.parse(asOf)) < LATE_AFTER_MS;
    first.current = false;
    contactAt.current = proves ? now : null;
    judge('none');
    if (!proves) void ask();
  }, [asOf]);

  useEffect(() => {
    const asking = setInterval(() => void (document.visibilityState === 'visible' && ask()), ASK_EVERY_MS);
    const again = () => void (document.visibilityState === 'visible' && ask());
    document.addEventListener('visibilitychange', again);
    window.addEventListener('online', again);
    window.addEventListener('offline', again);
    return () => {
      clearInterval(asking);
      document.removeEventListener('visibilitychange', again);
      window.removeEventListener('online', again);
      window.removeEventListener('offline', again);
    };
  }, []);

  useEffect(() => {
    const ageing = setInterval(() => judge(trouble), 1000);
    const seen = () => judge(trouble);
    document.addEventListener('visibilitychange', seen);
    return () => {
      clearInterval(ageing);
      document.removeEventListener('visibilitychange', seen);
    };
  }, [trouble]);

  const clock = clocksWithSeconds(asOf, zones);
  return (
    <ContactNow value={contact}>
      <div className={styles.line}>
        <p className={styles.asOf}>
          As of <time dateTime={asOf}>{clock}</time>
        </p>
        <div role="alert">
          {contact !== 'fresh' && (
            <div className={contact === 'lost' ? styles.lost : styles.late}>
              <p>
                <b>{WORDS[trouble]}</b>{' '}
                {contact === 'late'
                  ? `What is shown is from ${clock} and may be old.`
                  : `Answers from ${clock} are no longer shown: not known means no go.`}
              </p>
              {trouble === 'signed-out' ? (
                <a href="/sign-in?next=/sign-in/done" target="_blank" rel="noopener" className={styles.act}>
                  Sign in in a new tab
                </a>
              ) : (
                <button type="button" className={styles.act} onClick={() => void askNow()}>
                  Ask now
                </button>
              )}
            </div>
          )}
        </div>
      </div>
      <div className={contact === 'fresh' ? undefined : styles.old}>{children}</div>
    </ContactNow>
  );

  async function askNow() {
    const failed = await knockOnServer();
    setTrouble(failed);
    if (failed === 'none') router.refresh();
  }
}

const WORDS: Record<Trouble, string> = {
  none: 'Asking the server.',
  'no-contact': 'No contact with the server.',
  'signed-out': 'You are signed out.',
  server: 'The server cannot answer just now.',
};

async function knockOnServer(): Promise<Trouble> {
  try {
    const answer = await fetch('/desk/contact', {
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (answer.ok) return 'none';
    return answer.status === 401 ? 'signed-out' : 'server';
  } catch {
    return 'no-contact';
  }
}

/** Whether what is shown is too old to give an answer. */
export const useIsLost = (): boolean => use(ContactNow) === 'lost';

/** An outcome as long as it is known; "Not known" once contact is lost. */
export function FreshMark({ outcome, size }: { outcome: Outcome; size?: Size }) {
  if (useIsLost()) {
    return (
      <Tag tone="grey" shape="dashes" size={size}>
        Not known
      </Tag>
    );
  }
  return <OutcomeMark outcome={outcome} size={size} />;
}
