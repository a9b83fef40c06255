'use client';

import { English, Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { useEffect, useState } from 'react';
import { type RampPack } from '@/lib/walkarounds/pack';
import { Button, ButtonRow } from '../../_ui/button';
import { Moment } from '../../_ui/moment';
import { Notice } from '../../_ui/notice';
import { Card, EmptyState, PageTitle, Section } from '../../_ui/page';
import { Tag } from '../../_ui/tag';
import { flush, putRight, useOutbox, withdraw } from '../_phone/outbox';
import { type Outgoing } from '../_phone/shapes';
import { PhoneCite } from './phone-lines';
import { Go } from './place';
import styles from './out.module.css';

const KINDS: Readonly<Record<Outgoing['kind'], string>> = {
  'walk-start': said('Walkaround begun'),
  'walk-finish': said('Walkaround finished'),
  finding: said('Finding'),
  observation: said('Seen again'),
  photo: said('Photo'),
  'meters-out': said('Meters at departure'),
  'meters-in': said('Meters at return'),
};

/** What this phone has sent and what it has not: every message, with its state and the ways on. */
export function SentView({ pack }: { pack: RampPack }) {
  const t = useWords();
  const messages = useOutbox();
  useEffect(() => {
    document.title = t('Sent and not sent · Wheelchock');
  }, [t]);
  const refused = messages.filter(({ state }) => state === 'refused');
  const waiting = messages.filter(({ state }) => state === 'waiting' || state === 'sending');
  const sent = messages.filter(({ state }) => state === 'sent').toReversed();
  return (
    <div className={styles.column}>
      <div>
        <Go href="/ramp" className={styles.back}>
          <Say text="<span>←</span> All aircraft" parts={{ span: <span aria-hidden="true" /> }} />
        </Go>
        <PageTitle
          lead={t('What {name} wrote on this phone. Nothing is lost before the server has it.', {
            name: pack.person.name,
          })}
        >
          {t('Sent and not sent')}
        </PageTitle>
        {messages.length === 0 && <EmptyState title={t('Nothing was written on this phone lately.')} />}
      </div>
      {refused.length > 0 && (
        <Section title={t('Refused ({refused})', { refused: refused.length })}>
          <Messages messages={refused} pack={pack} />
        </Section>
      )}
      {waiting.length > 0 && (
        <Section title={t('Not sent yet ({waiting})', { waiting: waiting.length })}>
          <p>{t('They are sent in this order, by themselves, as soon as there is a connection.')}</p>
          <Messages messages={waiting} pack={pack} />
          <Button weight="main" wide onClick={() => flush()}>
            {t('Send now')}
          </Button>
        </Section>
      )}
      {sent.length > 0 && (
        <Section title={t('Sent ({sent})', { sent: sent.length })}>
          <Messages messages={sent} pack={pack} />
        </Section>
      )}
    </div>
  );
}

function Messages({ messages, pack }: { messages: readonly Outgoing[]; pack: RampPack }) {
  return (
    <ul className={styles.messages}>
      {messages.map((message) => (
        <li key={message.id}>
          <Card edge={message.state === 'refused' ? 'red' : message.state === 'sent' ? undefined : 'amber'}>
            <Message message={message} pack={pack} />
          </Card>
        </li>
      ))}
    </ul>
  );
}

function Message({ message, pack }: { message: Outgoing; pack: RampPack }) {
  const t = useWords();
  const aircraft = pack.aircraft.find(({ id }) => id === message.aircraftId);
  const zone = aircraft?.zone ?? pack.bases[0]?.zone ?? 'UTC';
  const number = numberOf(message.answer);
  return (
    <div className={styles.message}>
      <div className={styles.messageHead}>
        <span className={styles.label}>{message.label}</span>
        <StateOf message={message} />
      </div>
      <p className={styles.soft}>
        {t(KINDS[message.kind])}
        {number && `, ${number}`}, <Moment at={message.sentAt ?? message.queuedAt} zone={zone} />
        {message.state === 'waiting' &&
          message.tries > 0 &&
          t(', tried {tries} times', { tries: message.tries })}
      </p>
      {message.state === 'refused' && message.problem && (
        <>
          <p>{message.problem.say}</p>
          {message.problem.fields && (
            <ul className={styles.because}>
              {Object.values(message.problem.fields)
                .flat()
                .map((say) => (
                  <li key={say}>{say}</li>
                ))}
            </ul>
          )}
          {message.problem.lines?.map(({ cite, because }) => (
            <p key={cite + because}>
              <English>{because}</English> <PhoneCite cite={cite} paragraphs={pack.paragraphs} />
            </p>
          ))}
          <WaysOn message={message} />
        </>
      )}
    </div>
  );
}

function StateOf({ message: { state, after } }: { message: Outgoing }) {
  const t = useWords();
  if (state === 'sent') {
    return (
      <Tag tone="grey" shape="tick" size="small">
        {t('Sent')}
      </Tag>
    );
  }
  if (state === 'refused') {
    return (
      <Tag tone="red" size="small">
        {t('Refused')}
      </Tag>
    );
  }
  return (
    <Tag tone="amber" shape="dashes" size="small">
      {state === 'sending' ? t('Sending') : after.length > 0 ? t('Waits its turn') : t('Waiting')}
    </Tag>
  );
}

/** A refused message is the person's to settle: put it right where there is a form for it, or take it back. */
function WaysOn({ message }: { message: Outgoing }) {
  const t = useWords();
  const [asks, setAsks] = useState(false);
  if (asks) {
    return (
      <Notice tone="amber" title={t('Take it back?')}>
        <p>
          {message.kind === 'walk-start'
            ? t(
                'It is not sent and is gone from this phone, with the answers of its walkaround where that is finished. Findings stay.',
              )
            : message.kind === 'walk-finish'
              ? t(
                  'It is not sent and is gone from this phone, with all that was measured and answered on the walkaround.',
                )
              : t('It is not sent and is gone from this phone, with its photos.')}
        </p>
        <ButtonRow>
          <Button onClick={() => void withdraw(message.id)}>{t('Take it back')}</Button>
          <Button weight="quiet" onClick={() => setAsks(false)}>
            {t('Keep it')}
          </Button>
        </ButtonRow>
      </Notice>
    );
  }
  const form = formOf(message);
  return (
    <div className={styles.buttons}>
      {form ? (
        <Go href={form} className={`${styles.press} ${styles.main}`}>
          {t('Put it right')}
        </Go>
      ) : (
        <Button weight="main" onClick={() => void putRight(message.id, message.message)}>
          {t('Send again')}
        </Button>
      )}
      <Button onClick={() => setAsks(true)}>{t('Withdraw')}</Button>
    </div>
  );
}

/** The form that opens a refused message again, or null where there is none. */
function formOf({ kind, id, aircraftId, message }: Outgoing): string | null {
  if (aircraftId === null) return null;
  if (kind === 'finding' || kind === 'observation') {
    return `/ramp/${aircraftId}/finding?right=${encodeURIComponent(id)}`;
  }
  if (kind === 'meters-out' || kind === 'meters-in') {
    const release = typeof message.releaseId === 'string' ? message.releaseId : '';
    const moment = kind === 'meters-out' ? 'out' : 'in';
    return `/ramp/${aircraftId}/meters?release=${encodeURIComponent(release)}&moment=${moment}`;
  }
  return null;
}

function numberOf(answer: unknown): string | null {
  if (typeof answer !== 'object' || answer === null || !('number' in answer)) return null;
  return typeof answer.number === 'string' ? answer.number : null;
}
