'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { type ObservationAdded } from '@/lib/findings/add-observation';
import { type ReportedFinding } from '@/lib/findings/open-write-up';
import { untilWhat } from '@/lib/findings/until-what';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { SeverityMark } from '../../../_ui/marks';
import { Card } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { useOutbox, useSync, waitFor } from '../../_phone/outbox';
import { type Outgoing } from '../../_phone/shapes';
import outStyles from '../out.module.css';
import { PhoneLines } from '../phone-lines';
import { Go } from '../place';
import { pathAt } from '../walk/where';
import styles from './outcome.module.css';

/** How long the answer is waited for before the screen says that it is only kept. */
const PATIENCE_MS = 4_000;

interface OutcomeProps {
  readonly id: string;
  /** Null for the moment until the outbox has shown it. */
  readonly message: Outgoing | null;
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walkId: string | null;
  readonly onAnother: (() => void) | null;
}

/** What became of what was written: sent with the server's answer, or kept on this phone. It follows what happens. */
export function Outcome(props: OutcomeProps) {
  const t = useWords();
  const { id, message, pack, aircraft, walkId, onAnother } = props;
  const isPatient = usePatience(id);
  const photos = useOutbox().filter((one) => one.kind === 'photo' && one.after.includes(id));
  const sent = message?.state === 'sent' ? message : null;
  const observed = sent?.kind === 'observation' ? (sent.answer as ObservationAdded) : null;
  const answer = observed ?? (sent ? (sent.answer as ReportedFinding) : null);
  const opened = observed && !observed.openedAnew ? null : answer;
  return (
    <section className={styles.outcome}>
      {observed && !observed.openedAnew ? (
        <SeenAgain observed={observed} />
      ) : opened ? (
        <Opened opened={opened} why={observed?.why ?? null} aircraft={aircraft} />
      ) : isPatient ? (
        <Title>{t('Sending…')}</Title>
      ) : (
        <KeptHere aircraft={aircraft} message={message} />
      )}
      {(photos.length > 0 || (!sent && !isPatient)) && <Parts message={message} photos={photos} />}
      <div className={styles.next}>
        <Go
          href={
            walkId ? pathAt(aircraft.id, String(message?.message['station'] ?? '')) : `/ramp/${aircraft.id}`
          }
          className={`${outStyles.press} ${outStyles.main}`}
        >
          {walkId
            ? t('Back to the walkaround')
            : t('Back to {registration}', { registration: aircraft.registration })}
        </Go>
        {answer && (
          <Go href={`/ramp/write-up/${answer.discrepancyId}`} className={outStyles.press}>
            {t('See the write-up')}
          </Go>
        )}
        {onAnother && (
          <button type="button" className={outStyles.press} onClick={onAnother}>
            {t('Another finding here')}
          </button>
        )}
      </div>
      {opened && (
        <Card>
          <PhoneLines lines={opened.reasons} paragraphs={pack.paragraphs} label={t('Why')} />
        </Card>
      )}
    </section>
  );
}

/** False once the answer is there, a try has failed, or one has waited long enough. */
function usePatience(id: string): boolean {
  const [isOver, setOver] = useState(false);
  const { stuck } = useSync();
  useEffect(() => {
    let isWanted = true;
    void waitFor(id, PATIENCE_MS)
      .catch(() => null)
      .then(() => {
        if (isWanted) setOver(true);
      });
    return () => {
      isWanted = false;
    };
  }, [id]);
  return !isOver && stuck === null;
}

/** The server has it as a write-up: its number, and what it means. `why`: it was to be an observation and is not. */
function Opened(props: {
  opened: Pick<ReportedFinding, 'number' | 'title' | 'severity' | 'settledBy'>;
  why: string | null;
  aircraft: PackAircraft;
}) {
  const t = useWords();
  const { opened, why, aircraft } = props;
  return (
    <>
      <Title>{t('Sent: {number} {title}', { number: opened.number, title: opened.title })}</Title>
      <div>
        <SeverityMark severity={opened.severity} />
      </div>
      <p className={styles.until}>{untilWhat(t, aircraft.registration, opened.severity, opened.settledBy)}</p>
      {why !== null && <p>{t('It is a write-up of its own. {why}', { why })}</p>}
    </>
  );
}

/** The server has it: it stands with the write-up that was there. */
function SeenAgain({ observed }: { observed: ObservationAdded }) {
  const t = useWords();
  return (
    <>
      <Title>
        {t('Sent: added to {number} {title}', { number: observed.number, title: observed.title })}
      </Title>
      <p className={styles.until}>
        {t('It counts as seen again. What was decided about it stays as it is.')}
      </p>
    </>
  );
}

/** Not sent: what to do meanwhile is said before anything else. */
function KeptHere({ aircraft, message }: { aircraft: PackAircraft; message: Outgoing | null }) {
  const t = useWords();
  const { isNotKept, stuck } = useSync();
  return (
    <>
      <Title>{isNotKept ? t('Not sent yet') : t('Kept on this phone, not sent yet')}</Title>
      <p>
        {stuck === null && message?.state === 'sending' ? t(STILL_SENDING) : t(WHY[stuck ?? 'no-answer'])}
      </p>
      {isNotKept && (
        <p>
          <b>{t('This phone does not keep it. Leave this page open until it is sent.')}</b>
        </p>
      )}
      <div className={styles.warning}>
        <Tag tone="amber">{t('Nobody else knows of it yet')}</Tag>
        <p>
          {message?.kind === 'observation'
            ? t('Tell the dispatcher, if it matters for the next flight of {registration}.', {
                registration: aircraft.registration,
              })
            : t(
                'Until it is sent, {registration} may look fit to fly to everybody else. Tell the dispatcher.',
                { registration: aircraft.registration },
              )}
        </p>
      </div>
    </>
  );
}

const STILL_SENDING = said('It is on its way, and the answer is slow to come.');
const WHY = {
  'no-connection': said('It is sent by itself when there is a connection.'),
  'no-answer': said('The server does not answer. It is sent by itself as soon as it does.'),
  'signed-out': said('You are not signed in any more. It is sent when you have signed in again.'),
  'other-person': said('Somebody else is signed in on this phone. It is sent when you have signed in again.'),
} as const;

/** Each part with how far it is. */
function Parts({ message, photos }: { message: Outgoing | null; photos: readonly Outgoing[] }) {
  const t = useWords();
  const sent = photos.filter(({ state }) => state === 'sent').length;
  return (
    <div className={styles.parts}>
      {photos.length > 0 && (
        <p role="status">
          {sent === photos.length
            ? t('{sent, plural, one {# photo} other {# photos}} sent.', { sent })
            : t('{sent} of {photos, plural, one {# photo} other {# photos}} sent.', {
                sent,
                photos: photos.length,
              })}
        </p>
      )}
      <ul className={styles.partList} aria-label={t('What is sent')}>
        <Part name={message?.kind === 'observation' ? 'Observation' : 'Finding'} message={message} />
        {photos.map((photo, index) => (
          <Part key={photo.id} name={`Photo ${index + 1}`} message={photo} />
        ))}
      </ul>
    </div>
  );
}

const STATES = {
  waiting: { tone: 'grey', shape: 'dashes', word: said('Not sent yet') },
  sending: { tone: 'blue', shape: 'ring', word: said('Sending…') },
  sent: { tone: 'grey', shape: 'tick', word: said('Sent') },
  refused: { tone: 'amber', shape: 'wedge', word: said('Refused') },
} as const;

function Part({ name, message }: { name: string; message: Outgoing | null }) {
  const t = useWords();
  const { tone, shape, word } = STATES[message?.state ?? 'waiting'];
  return (
    <li>
      <span>{name}</span>
      <Tag tone={tone} shape={shape} size="small">
        {t(word)}
      </Tag>
      {message?.problem && <span className={styles.say}>{sayOf(message.problem)}</span>}
    </li>
  );
}

const sayOf = (problem: NonNullable<Outgoing['problem']>): string =>
  [problem.say, ...Object.values(problem.fields ?? {}).flat()].join(' ');

/** Takes the focus each time it says something new: it is what happened to what one has just sent. */
function Title({ children }: { children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <h2 ref={heading} tabIndex={-1}>
      {children}
    </h2>
  );
}
