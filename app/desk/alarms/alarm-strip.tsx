'use client';

import { English, useWords } from '#words';
import { useCallback, useEffect, useRef, useState } from 'react';
import Link from '@/app/_ui/link';
import { Moment } from '@/app/_ui/moment';
import { ShapeMark } from '@/app/_ui/tag';
import { useLive } from '@/app/_ui/use-live';
import { type AlarmLine } from './alarm-line';
import styles from './alarms.module.css';

const ASK_EVERY_MS = { told: 30_000, untold: 12_000 } as const;
const OLD_AFTER_MS = 45_000;
const PATIENCE_MS = 10_000;

/**
 * Released flights that went void or were warned about, newest first, on whatever page of the desk one is. Asks for itself,
 * so that a page under it, with a half-filled form, is left alone. Alarms that could not be asked for are said to be not
 * known: an empty strip must mean that there are none.
 */
export function AlarmStrip({ drawn }: { drawn: readonly AlarmLine[] | null }) {
  const t = useWords();
  const [alarms, setAlarms] = useState(drawn);
  const [isOld, setOld] = useState(drawn === null);
  const askedAt = useRef<number | null>(null);
  const asked = useRef(0);
  const shown = useRef(0);

  const ask = useCallback(async () => {
    // Answers come in any order: an older one must not put back what a newer one took away, or take away what it brought.
    const number = (asked.current += 1);
    const begun = Date.now();
    try {
      const answer = await fetch('/desk/alarms', {
        cache: 'no-store',
        signal: AbortSignal.timeout(PATIENCE_MS),
      });
      if (!answer.ok) return;
      const told = (await answer.json()) as readonly AlarmLine[];
      if (number < shown.current) return;
      shown.current = number;
      setAlarms(told);
      // What it says is as old as its question.
      askedAt.current = begun;
      setOld(false);
    } catch {
      // Its age tells.
    }
  }, []);
  const live = useLive(() => void ask()).contact === 'live';

  useEffect(() => {
    const timer = setInterval(
      () => void (document.visibilityState === 'visible' && ask()),
      live ? ASK_EVERY_MS.told : ASK_EVERY_MS.untold,
    );
    return () => clearInterval(timer);
  }, [live, ask]);

  useEffect(() => {
    askedAt.current ??= Date.now();
    const judge = () => {
      const age = Date.now() - (askedAt.current ?? 0);
      if (age < 0 || age > OLD_AFTER_MS) setOld(true);
    };
    const seen = () => {
      judge();
      if (document.visibilityState === 'visible') void ask();
    };
    const ageing = setInterval(judge, 1000);
    document.addEventListener('visibilitychange', seen);
    return () => {
      clearInterval(ageing);
      document.removeEventListener('visibilitychange', seen);
    };
  }, [ask]);

  return (
    <aside aria-label={t('Alarms of released flights')} className="not-on-paper">
      <div role="alert">
        {isOld && (
          <p className={`${styles.alarm} ${styles.warned}`}>
            {t('Whether released flights have alarms is not known: no contact.')}
          </p>
        )}
        {alarms?.map((alarm) => (
          <Link
            key={`${alarm.releaseId} ${alarm.at}`}
            href={`/desk/release/${alarm.releaseId}`}
            className={`${styles.alarm} ${alarm.isVoid ? styles.void : styles.warned}`}
          >
            <ShapeMark shape={alarm.isVoid ? 'cross' : 'wedge'} />
            <span>
              <b>
                {alarm.isVoid && t('Do not fly ')}
                {alarm.registration}: {alarm.title}.
              </b>{' '}
              <English>{alarm.because}</English> <Moment at={alarm.at} zone={alarm.zone} clock />
            </span>
          </Link>
        ))}
      </div>
    </aside>
  );
}
