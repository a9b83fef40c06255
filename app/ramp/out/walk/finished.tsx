'use client';

import { useWords } from '#words';
import { useEffect, useRef } from 'react';
import type { FinishedWalk } from '@/lib/walkarounds/finish-walkaround';
import { type PackAircraft } from '@/lib/walkarounds/pack';
import { ProblemNotice } from '../../../_ui/problem-notice';
import { Tag } from '../../../_ui/tag';
import { useOutbox } from '../../_phone/outbox';
import { Go } from '../place';
import styles from './walk.module.css';

/** After the finish: whether the server has it, and what it made of it. Follows the message until it is sent. */
export function Finished({ aircraft, messageId }: { aircraft: PackAircraft; messageId: string }) {
  const t = useWords();
  const message = useOutbox().find(({ id }) => id === messageId);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const isSent = message?.state === 'sent';
  const answer = isSent ? (message.answer as FinishedWalk | null) : null;
  return (
    <section className={styles.known}>
      <h1 ref={heading} tabIndex={-1}>
        {t('Walkaround {registration} finished', { registration: aircraft.registration })}
      </h1>
      <div role="status" className={styles.sheet}>
        {!message ? (
          <p>{t('It is no longer on this phone: it was sent more than a day ago, or taken back.')}</p>
        ) : message.state === 'refused' ? (
          <p>
            <Tag tone="red" size="small">
              {t('Refused')}
            </Tag>
          </p>
        ) : isSent ? (
          <>
            <p>
              <Tag tone="grey" shape="tick" size="small">
                {t('Sent')}
              </Tag>
            </p>
            {answer && <Counts answer={answer} />}
          </>
        ) : (
          <>
            <p>
              <Tag tone="amber" shape="dashes" size="small">
                {t('Kept on this phone, not sent yet')}
              </Tag>
            </p>
            <p>
              {t('It is sent by itself, in order, as soon as there is a connection. You can close the page.')}
            </p>
          </>
        )}
      </div>
      {message?.problem && <ProblemNotice problem={message.problem} />}
      <div className={styles.ways}>
        <Go href={`/ramp/${aircraft.id}`} className={`${styles.press} ${styles.mainPress}`}>
          {isSent
            ? t('See today’s answer')
            : t('Back to {registration}', { registration: aircraft.registration })}
        </Go>
        <Go href="/ramp/out" className={styles.press}>
          {t('What is sent and what is not')}
        </Go>
        <Go href={`/ramp/${aircraft.id}/walk`} className={styles.press}>
          {t('Another walkaround')}
        </Go>
      </div>
    </section>
  );
}

function Counts({ answer }: { answer: FinishedWalk }) {
  const t = useWords();
  return (
    <>
      <p>
        {t('{good} good, {withFinding} with a finding, {notLookedAt} not looked at.', {
          good: answer.good,
          withFinding: answer.withFinding,
          notLookedAt: answer.notLookedAt,
        })}
      </p>
      {answer.raised.length > 0 && (
        <>
          <p>
            <b>{t('Written up by itself:')}</b>
          </p>
          <ul className={styles.plain}>
            {answer.raised.map(({ itemKey, discrepancyId, number, title, words }) => (
              <li key={itemKey}>
                <Go href={`/ramp/write-up/${discrepancyId}`} className={styles.inline}>
                  {number} {title}
                </Go>{' '}
                {words}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
