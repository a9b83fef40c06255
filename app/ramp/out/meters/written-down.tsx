'use client';

import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useRef } from 'react';
import { formatTenths } from '@/lib/rules/hours';
import { hoursBetween, type LastOnRecord, type MeterReading, type ReadingMoment } from '@/lib/rules/meters';
import { type ReadingTaken } from '@/lib/releases/record-meters';
import { type PackAircraft, type PackFlight, type RampPack } from '@/lib/walkarounds/pack';
import { Button } from '../../../_ui/button';
import { Card, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { useOutbox } from '../../_phone/outbox';
import { findingPath } from '../finding-path';
import shell from '../out.module.css';
import { PhoneLines } from '../phone-lines';
import { Go } from '../place';
import { Figures } from './as-read';
import { NoteList } from './meters-form';
import styles from './meters.module.css';

/** A reading this phone has just written down. */
export interface JustRead {
  readonly moment: ReadingMoment;
  readonly reading: MeterReading;
  /** What its hours are counted from: the departure, else the last reading. */
  readonly from: LastOnRecord | null;
  readonly messageId: string;
}

/** After the reading: whether it is sent, the hours flown, and what comes next. */
export function WrittenDown(props: {
  pack: RampPack;
  aircraft: PackAircraft;
  flight: PackFlight;
  justRead: JustRead;
  onPutRight: () => void;
}) {
  const t = useWords();
  const { pack, aircraft, flight, justRead, onPutRight } = props;
  const { moment, reading, from, messageId } = justRead;
  const message = useOutbox().find(({ id }) => id === messageId);
  const answer = message?.state === 'sent' ? (message.answer as ReadingTaken | null) : null;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const flown = answer?.flown ?? (from ? hoursBetween(from, reading) : null);
  const path = `/ramp/${aircraft.id}`;
  return (
    <>
      <Card>
        <div className={styles.part}>
          <h2 ref={heading} tabIndex={-1}>
            {moment === 'out' ? t('Departure written down') : t('Return written down')}
          </h2>
          <Figures reading={reading} />
          {moment === 'in' && flown && (
            <p className={styles.strong}>
              {t('Flown: {ran}, {ran2}', {
                ran: ran(t, 'Hobbs', flown.hobbsTenths),
                ran2: ran(t, 'Tach', flown.tachTenths),
              })}
            </p>
          )}
          <p role="status">
            {message?.state === 'sent' ? (
              <Tag tone="grey" shape="tick">
                {t('Sent')}
              </Tag>
            ) : message?.state === 'refused' ? (
              <>
                <Say text="Not taken by the server: {say}" values={{ say: message.problem?.say }} />{' '}
                <Button onClick={onPutRight}>{t('Put it right')}</Button>
              </>
            ) : (
              <Tag tone="amber" shape="wedge">
                {t('Kept on this phone, not sent yet')}
              </Tag>
            )}
          </p>
          {answer && <NoteList notes={answer.notes} />}
        </div>
      </Card>
      {moment === 'out' && flight.limits.length > 0 && (
        <Section title={t('Limits on this flight')}>
          <PhoneLines lines={flight.limits} paragraphs={pack.paragraphs} label={t('Limits on this flight')} />
        </Section>
      )}
      {moment === 'in' ? (
        <Section title={t('Anything to write up?')}>
          <div className={shell.buttons}>
            <Go href={findingPath(aircraft.id, { phase: 'in-flight' })} className={shell.press}>
              {t('It showed in flight')}
            </Go>
            <Go href={findingPath(aircraft.id, { phase: 'after-flight' })} className={shell.press}>
              {t('I saw it after the flight')}
            </Go>
            <Go href={path} className={shell.press}>
              {t('Nothing to write up')}
            </Go>
          </div>
        </Section>
      ) : (
        <div className={shell.buttons}>
          <Go href={path} className={`${shell.press} ${shell.main}`}>
            {t('Back to {registration}', { registration: aircraft.registration })}
          </Go>
        </div>
      )}
    </>
  );
}

const ran = (t: Translate, name: string, tenths: number | null): string =>
  tenths === null
    ? t('{name} not known', { name })
    : t('{name} {tenths} h', { name, tenths: formatTenths(tenths) });
