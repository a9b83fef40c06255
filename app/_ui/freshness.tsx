'use client';

import { Say, useWords } from '#words';
import { useRouter } from 'next/navigation';
import {
  createContext,
  use,
  useEffect,
  useEffectEvent,
  useRef,
  useState,
  useTransition,
  type ReactNode,
} from 'react';
import { type Outcome } from '@/lib/rules/verdict';
import { Age, HowOften } from './age';
import { clocksWithSeconds } from './clock';
import { knockOnServer, TROUBLE_WORDS, type Trouble } from './contact';
import styles from './freshness.module.css';
import { OutcomeMark } from './marks';
import { Tag, type Size } from './tag';
import { useLive } from './use-live';

/** fresh: confirmed lately. late: may be old. lost: too old to show an answer at all. */
type Contact = 'fresh' | 'late' | 'lost';

/** With a stream the server tells of changes, and only the clock goes on; without one every change waits for the next ask. */
const ASK_EVERY_MS = { told: 30_000, untold: 12_000 } as const;
const LATE_AFTER_MS = 45_000;
const LOST_AFTER_MS = 120_000;
/** A redrawing that takes longer is taken for hung, and asked for anew. */
const HUNG_AFTER_MS = 15_000;

const ContactNow = createContext<Contact>('fresh');

/**
 * Keeps the answers inside it fresh and never lets an old one look fresh. Redraws when the server tells of a change, every
 * half minute besides (every twelve seconds where no word of changes gets through, and says so), and at once when the
 * screen comes back into sight. Without an answer it says so and goes grey; after two minutes every `FreshMark` inside says
 * "Not known". `asOf` is the server's time of what is shown: a new one proves contact, and nothing else does. `seq` is how
 * far the records were then; a page that cannot say leaves it out.
 */
export function StaysFresh(props: {
  asOf: string;
  zones: readonly string[];
  seq?: number | undefined;
  children: ReactNode;
}) {
  const t = useWords();
  const { asOf, zones, seq, children } = props;
  const router = useRouter();
  const contactAt = useRef<number | null>(null);
  const first = useRef(true);
  const [shownAt, setShownAt] = useState<number | null>(null);
  const [contact, setContact] = useState<Contact>('fresh');
  const [trouble, setTrouble] = useState<Trouble>('none');
  const [redrawing, startRedrawing] = useTransition();
  const asking = useRef(false);
  const askedAt = useRef(0);
  const wanted = useRef(false);

  const judge = useEffectEvent((failing: Trouble) => {
    const age = contactAt.current === null ? Infinity : Date.now() - contactAt.current;
    // A clock put back makes the age negative: then nothing is known of it.
    if (age < 0 || age > LOST_AFTER_MS) setContact('lost');
    else setContact(failing !== 'none' || age > LATE_AFTER_MS ? 'late' : 'fresh');
  });

  /**
   * Knocks first, also right after the server has told of a change: a redrawing that cannot reach it would put an error in
   * the place of the page, and the last word of a server that stops is such a word.
   */
  const ask = useEffectEvent(async () => {
    const busy = asking.current || redrawing;
    if (busy && Math.abs(Date.now() - askedAt.current) < HUNG_AFTER_MS) {
      wanted.current = true;
      return;
    }
    wanted.current = false;
    asking.current = true;
    askedAt.current = Date.now();
    const failed = await knockOnServer();
    asking.current = false;
    setTrouble(failed);
    judge(failed);
    if (failed !== 'none') return;
    // Whatever came in during the knock is in what is drawn from here on.
    wanted.current = false;
    startRedrawing(() => router.refresh());
  });
  const inSight = useEffectEvent(() => void (document.visibilityState === 'visible' && ask()));

  const [told, setTold] = useState(0);
  const live = useLive(() => setTold((times) => times + 1), seq ?? null).contact === 'live';

  useEffect(() => {
    const now = Date.now();
    // A page brought back from the browser's memory shows an old time: it proves nothing until the server has answered.
    const proves = !first.current || Math.abs(now - Date.parse(asOf)) < LATE_AFTER_MS;
    first.current = false;
    contactAt.current = proves ? now : null;
    setShownAt(contactAt.current);
    judge('none');
    if (!proves) void ask();
  }, [asOf]);

  useEffect(() => {
    if (told > 0) void ask();
  }, [told]);

  // What changed while the page was being redrawn is not in it.
  useEffect(() => {
    if (!redrawing && wanted.current) void ask();
  }, [redrawing]);

  const backInContact = useEffectEvent(() => void (trouble !== 'none' && ask()));
  useEffect(() => {
    if (live) backInContact();
    const timer = setInterval(() => inSight(), live ? ASK_EVERY_MS.told : ASK_EVERY_MS.untold);
    return () => clearInterval(timer);
  }, [live]);

  useEffect(() => {
    const again = () => inSight();
    document.addEventListener('visibilitychange', again);
    window.addEventListener('online', again);
    window.addEventListener('offline', again);
    return () => {
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
        <div className={styles.state}>
          <p className={styles.asOf}>
            <Say
              text="As of <time>{clock}</time>"
              parts={{ time: <time dateTime={asOf} /> }}
              values={{ clock }}
            />
          </p>
          <Age since={shownAt} />
          <HowOften live={live} everySeconds={ASK_EVERY_MS.untold / 1000} />
        </div>
        <div role="alert">
          {contact !== 'fresh' && (
            <div className={contact === 'lost' ? styles.lost : styles.late}>
              <p>
                <b>{t(TROUBLE_WORDS[trouble])}</b>{' '}
                {contact === 'late'
                  ? t('What is shown is from {clock} and may be old.', { clock })
                  : t('Answers from {clock} are no longer shown: not known means no go.', { clock })}
              </p>
              {trouble === 'signed-out' ? (
                <a href="/sign-in?next=/sign-in/done" target="_blank" rel="noopener" className={styles.act}>
                  {t('Sign in in a new tab')}
                </a>
              ) : (
                <button type="button" className={styles.act} onClick={() => void askNow()}>
                  {t('Ask now')}
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
    if (failed === 'none') startRedrawing(() => router.refresh());
  }
}

/** Whether what is shown is too old to give an answer. */
export const useIsLost = (): boolean => use(ContactNow) === 'lost';

/** An outcome as long as it is known; "Not known" once contact is lost. */
export function FreshMark({ outcome, size }: { outcome: Outcome; size?: Size }) {
  const t = useWords();
  if (useIsLost()) {
    return (
      <Tag tone="grey" shape="dashes" size={size}>
        {t('Not known')}
      </Tag>
    );
  }
  return <OutcomeMark outcome={outcome} size={size} />;
}
