'use client';

import { English, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useId, useRef, useState, type FormEvent } from 'react';
import { formatTenths, parseTenths } from '@/lib/rules/hours';
import {
  FUTURE_SLACK_MS,
  judgeReading,
  METERS,
  type LastOnRecord,
  type MeterField,
  type ReadingField,
  type ReadingMoment,
  type ReadingNote,
} from '@/lib/rules/meters';
import { type PackAircraft, type PackFlight } from '@/lib/walkarounds/pack';
import { SubmitButton } from '../../../_ui/button';
import { FieldError } from '../../../_ui/fields';
import fields from '../../../_ui/fields.module.css';
import { Moment } from '../../../_ui/moment';
import { Notice } from '../../../_ui/notice';
import { newRequestId } from '../../../_ui/request-id';
import { instantOfWallClock, wallClockOf } from '../../../_ui/wall-clock';
import { putRight, queue, useOutbox, waitFor } from '../../_phone/outbox';
import { type Outgoing } from '../../_phone/shapes';
import shell from '../out.module.css';
import { useNow } from '../use-now';
import styles from './meters.module.css';
import { around, readingIn, type KnownMeters } from './readings-here';
import { type JustRead } from './written-down';

const PATIENCE_MS = 4_000;

interface FormProps {
  readonly aircraft: PackAircraft;
  readonly flight: PackFlight;
  readonly moment: ReadingMoment;
  readonly known: KnownMeters;
  readonly onRead: (read: JustRead) => void;
}

/** One that the server refused before is put right under its own number, with what was typed still there. */
export function MetersForm(props: FormProps) {
  const { flight, moment } = props;
  const refused = useOutbox().find((message) => {
    const reading = message.state === 'refused' ? readingIn(message) : null;
    return reading?.releaseId === flight.releaseId && reading.moment === moment;
  });
  return <Form key={refused?.id ?? 'new'} {...props} refused={refused ?? null} />;
}

type Typed = Readonly<Record<MeterField, string>>;

function Form({
  aircraft,
  flight,
  moment,
  known,
  onRead,
  refused,
}: FormProps & { refused: Outgoing | null }) {
  const t = useWords();
  const form = useRef<HTMLFormElement>(null);
  const before = refused && readingIn(refused);
  const [typed, setTyped] = useState<Typed>({
    hobbsTenths: before ? formatTenths(before.hobbsTenths) : '',
    tachTenths: before ? formatTenths(before.tachTenths) : '',
  });
  const [left, setLeft] = useState<readonly ReadingField[]>([]);
  const [isNow, setNow] = useState(before === null);
  const [local, setLocal] = useState(() => (before ? wallClockOf(before.at, aircraft.zone) : ''));
  const [isSure, setSure] = useState(false);
  const [isSending, setSending] = useState(false);
  const [messageId] = useState(() => refused?.id ?? newRequestId());
  const minute = useNow();

  const { zone } = aircraft;
  // A time that was not touched stays as it was, to the second.
  const earlier =
    before && wallClockOf(before.at, zone) === local ? before.at : instantOfWallClock(local, zone);
  const judge = (now: number) =>
    judgeTyped(t, { typed, at: isNow ? justNow(known, now) : earlier, moment, known, now });
  const { at, wrong, notes } = judge(minute);
  const shown = (field: ReadingField) =>
    isTypedOut(field, typed) || left.includes(field) ? wrong[field] : undefined;
  const gaps = notes.filter(({ kind }) => kind === 'gap');

  function type(field: MeterField, text: string) {
    setTyped({ ...typed, [field]: text });
    setSure(false);
  }

  async function write(event: FormEvent) {
    event.preventDefault();
    if (isSending) return;
    const judged = judge(Date.now());
    const first = FIELDS.find((field) => judged.wrong[field]);
    if (first || !judged.reading) {
      setLeft(FIELDS);
      const field = form.current?.elements.namedItem(first ?? 'hobbsTenths');
      if (field instanceof HTMLElement) field.focus();
      return;
    }
    if (gaps.length > 0 && !isSure) {
      setSure(true);
      return;
    }
    setSending(true);
    const { hobbsTenths, tachTenths, at: readAt } = judged.reading;
    const message = { releaseId: flight.releaseId, moment, hobbsTenths, tachTenths, readAt };
    if (refused) await putRight(refused.id, message);
    else {
      await queue([
        {
          id: messageId,
          aircraftId: aircraft.id,
          kind: moment === 'out' ? 'meters-out' : 'meters-in',
          label: t('{registration}: meters at {which}', {
            registration: aircraft.registration,
            which: moment === 'out' ? t('departure') : t('return'),
          }),
          path: 'meters',
          message,
          photoId: null,
          // A return must not come in before its departure.
          after: departureWaiting(known),
        },
      ]);
    }
    const sent = await waitFor(messageId, PATIENCE_MS);
    setSending(false);
    // Refused: this form comes back with what the server said and everything typed.
    if (sent.state === 'refused') return;
    onRead({ moment, reading: judged.reading, from: known.departure ?? judged.before, messageId });
  }

  return (
    <form ref={form} noValidate onSubmit={(event) => void write(event)} className={styles.form}>
      {refused?.problem && <Refused problem={refused.problem} />}
      {METERS.map(({ field, name }) => (
        <MeterInput
          key={field}
          {...{ field, name }}
          last={known.last}
          zone={aircraft.zone}
          value={typed[field]}
          error={shown(field)}
          onType={(text) => type(field, text)}
          onLeave={() => setLeft([...left, field])}
        />
      ))}
      <WhenRead
        {...{ isNow, local, at }}
        zone={aircraft.zone}
        error={isNow ? undefined : shown('readAt')}
        onNow={(next) => {
          setNow(next);
          if (!next && local === '') setLocal(wallClockOf(new Date().toISOString(), aircraft.zone));
        }}
        onLocal={setLocal}
      />
      {isNow && wrong.readAt && <Notice tone="red" title={wrong.readAt} />}
      {isSure && gaps.length > 0 && (
        <Notice tone="amber" title={t('Read the meters once more.')}>
          <NoteList notes={gaps} />
          <p>
            {t('If the figures are right, write them down: somebody flew or ran it and left no reading.')}
          </p>
        </Notice>
      )}
      <NoteList notes={notes.filter(({ kind }) => kind !== 'gap' || !isSure)} />
      <SubmitButton wide pending={isSending} pendingWords={t('Writing down…')}>
        {isSure && gaps.length > 0 ? t('They are right, write down') : t('Write down')}
      </SubmitButton>
    </form>
  );
}

const FIELDS: readonly ReadingField[] = ['hobbsTenths', 'tachTenths', 'readAt'];

/** A meter shows one digit behind the point: before that is typed, nothing is wrong yet. */
const isTypedOut = (field: ReadingField, typed: Typed): boolean =>
  field === 'readAt' || /\.\d$/.test(typed[field].trim());

/** This phone's departure of the flight, while the server does not have it. */
const departureWaiting = ({ departure }: KnownMeters): string[] =>
  departure && 'messageId' in departure && typeof departure.messageId === 'string'
    ? [departure.messageId]
    : [];

interface Judged {
  /** Null when the time typed is none. */
  readonly at: string | null;
  readonly before: LastOnRecord | null;
  /** Whole and without fault, or null. */
  readonly reading: { readonly hobbsTenths: number; readonly tachTenths: number; readonly at: string } | null;
  readonly wrong: Partial<Record<ReadingField, string>>;
  readonly notes: readonly ReadingNote[];
}

function judgeTyped(
  t: Translate,
  asked: {
    typed: Typed;
    /** Null: what was typed is no time. */
    at: string | null;
    moment: ReadingMoment;
    known: KnownMeters;
    now: number;
  },
): Judged {
  const { typed, at, moment, known, now } = asked;
  const tenths = {
    hobbsTenths: parseTenths(typed.hobbsTenths.trim()),
    tachTenths: parseTenths(typed.tachTenths.trim()),
  };
  const wrong: Partial<Record<ReadingField, string>> = {};
  if (at === null)
    wrong.readAt = t('Enter a day and a time that is there once: on some days the clocks change.');
  const { before, next } = at === null ? { before: null, next: null } : around(known, at);
  const judged =
    at === null
      ? { refusals: [], notes: [] }
      : judgeReading({ ...tenths, at }, before, {
          moment,
          now: new Date(now).toISOString(),
          departure: moment === 'in' ? known.departure : null,
          back: moment === 'out' ? known.back : null,
          next,
        });
  for (const { field, because } of judged.refusals) wrong[field] ??= because;
  for (const { field, name } of METERS) {
    if (tenths[field] === null)
      wrong[field] = t('Enter {name} in hours and tenths, for example 2123.4.', { name });
  }
  const { hobbsTenths, tachTenths } = tenths;
  const isGood =
    hobbsTenths !== null && tachTenths !== null && at !== null && Object.keys(wrong).length === 0;
  return {
    at,
    before,
    reading: isGood ? { hobbsTenths, tachTenths, at } : null,
    wrong,
    // What was read before the newest reading this phone knows of, only the server knows.
    notes: judged.notes.filter(({ kind }) => kind !== 'first' || next === null),
  };
}

/** Now is after everything that was read before, also by a phone whose clock is a little slow, or looks once a minute. */
function justNow({ readings }: KnownMeters, now: number): string {
  const newest = Math.max(0, ...readings.map(({ at }) => Date.parse(at)));
  return new Date(newest - now <= FUTURE_SLACK_MS ? Math.max(now, newest) : now).toISOString();
}

function MeterInput(props: {
  field: MeterField;
  name: string;
  last: LastOnRecord | null;
  zone: string;
  value: string;
  error: string | undefined;
  onType: (text: string) => void;
  onLeave: () => void;
}) {
  const t = useWords();
  const { field, name, last, zone, value, error, onType, onLeave } = props;
  const id = useId();
  const figure = last?.[field] ?? null;
  return (
    <div className={fields.field}>
      <label htmlFor={id} className={styles.label}>
        {name}
      </label>
      <p id={`${id}-hint`} className={fields.hint}>
        {figure === null ? (
          t('No reading on record.')
        ) : (
          <>
            {t('Last on record {tenths}', { tenths: formatTenths(figure) })}
            {last?.at && (
              <>
                , <Moment at={last.at} zone={zone} />
              </>
            )}
          </>
        )}
      </p>
      <input
        id={id}
        name={field}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        enterKeyHint="next"
        className={`${fields.input} ${styles.figure}`}
        value={value}
        aria-describedby={`${id}-hint ${id}-error`}
        aria-invalid={error ? true : undefined}
        onChange={(event) => onType(event.target.value)}
        onBlur={() => value !== '' && onLeave()}
      />
      <div id={`${id}-error`} aria-live="polite">
        <FieldError>{error}</FieldError>
      </div>
    </div>
  );
}

function WhenRead(props: {
  isNow: boolean;
  local: string;
  at: string | null;
  zone: string;
  error: string | undefined;
  onNow: (isNow: boolean) => void;
  onLocal: (local: string) => void;
}) {
  const t = useWords();
  const { isNow, local, at, zone, error, onNow, onLocal } = props;
  const id = useId();
  return (
    <fieldset className={styles.when}>
      <legend className={fields.label}>{t('When were they read?')}</legend>
      <div className={fields.beside}>
        <label className={fields.choice}>
          <input type="radio" name={`${id}-when`} checked={isNow} onChange={() => onNow(true)} />
          <span className={fields.choiceLabel}>{t('Just now')}</span>
        </label>
        <label className={fields.choice}>
          <input type="radio" name={`${id}-when`} checked={!isNow} onChange={() => onNow(false)} />
          <span className={fields.choiceLabel}>{t('Earlier')}</span>
        </label>
      </div>
      {!isNow && (
        <div className={fields.field}>
          <label htmlFor={id} className={fields.label}>
            {t('Read at')}
          </label>
          <p id={`${id}-hint`} className={fields.hint}>
            {at === null ? t('In the time of the aircraft’s base.') : <Moment at={at} zone={zone} />}
          </p>
          <input
            id={id}
            name="readAt"
            type="datetime-local"
            className={fields.input}
            value={local}
            aria-describedby={`${id}-hint ${id}-error`}
            aria-invalid={error ? true : undefined}
            onChange={(event) => onLocal(event.target.value)}
          />
          <div id={`${id}-error`} aria-live="polite">
            <FieldError>{error}</FieldError>
          </div>
        </div>
      )}
    </fieldset>
  );
}

/** What is told of a reading that can be taken. */
export function NoteList({ notes }: { notes: readonly Pick<ReadingNote, 'because'>[] }) {
  return (
    <ul className={styles.notes} aria-live="polite">
      {notes.map(({ because }) => (
        <li key={because}>
          <English>{because}</English>
        </li>
      ))}
    </ul>
  );
}

function Refused({ problem }: { problem: NonNullable<Outgoing['problem']> }) {
  const t = useWords();
  const messages = Object.values(problem.fields ?? {}).flat();
  return (
    <Notice tone="red" title={t('Not taken. {say}', { say: problem.say })}>
      {messages.length > 0 && (
        <ul className={shell.because}>
          {messages.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      )}
    </Notice>
  );
}
