'use client';

import Link from '../../../_ui/link';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Button, ButtonRow, LinkButton } from '../../../_ui/button';
import { Moment } from '../../../_ui/moment';
import { Notice } from '../../../_ui/notice';
import { ProblemNotice } from '../../../_ui/problem-notice';
import { Tag } from '../../../_ui/tag';
import { StartWalk } from '../../_parts/start-walk';
import { counted } from '../../_parts/words';
import { keep, useKept, walkKey } from '../../_phone/kept';
import { type Sent } from '../../_phone/send';
import { answerStation, sendFinish, sendStart, type FinishedWalk, type Walk } from '../../_phone/walk';
import styles from './walk.module.css';

interface Station {
  readonly key: string;
  readonly title: string;
  readonly lookFor: string;
  /** How many write-ups are open there, and how they are shown. */
  readonly writtenUp: number;
  readonly known: ReactNode;
}

interface WalkaroundProps {
  readonly personId: string;
  readonly aircraftId: string;
  readonly zone: string;
  readonly stations: readonly Station[];
}

/** A walkaround under way on this phone, or the way to begin one. Reloading or losing the page loses nothing. */
export function Walkaround(props: WalkaroundProps) {
  const { personId, aircraftId, zone } = props;
  const walk = useKept<Walk>(walkKey(personId, aircraftId));
  const [finished, setFinished] = useState<FinishedWalk | null>(null);
  if (finished && !walk) return <Finished finished={finished} aircraftId={aircraftId} />;
  if (walk === undefined) return <p className={styles.loading}>One moment…</p>;
  if (walk === null) return <StartWalk personId={personId} aircraftId={aircraftId} zone={zone} />;
  return <UnderWay key={walk.id} {...props} walk={walk} onFinished={setFinished} />;
}

function UnderWay(props: WalkaroundProps & { walk: Walk; onFinished: (finished: FinishedWalk) => void }) {
  const { personId, aircraftId, zone, stations, walk, onFinished } = props;
  const answerOf = (key: string) => walk.answers[key] ?? null;
  const [open, setOpen] = useState<string | null>(
    () => stations.find((station) => !walk.answers[station.key])?.key ?? null,
  );
  const [said, setSaid] = useState('');
  const heads = useRef(new Map<string, HTMLButtonElement>());
  const done = stations.filter((station) => answerOf(station.key) !== null).length;

  // A start that did not get through is tried again whenever the phone is back.
  useEffect(() => {
    if (walk.isStarted) return;
    const tell = () => void sendStart(personId, walk);
    tell();
    window.addEventListener('online', tell);
    return () => window.removeEventListener('online', tell);
  }, [personId, walk]);

  function answerGood(station: Station, index: number) {
    answerStation(personId, walk, station.key, 'good');
    const next = [...stations.slice(index + 1), ...stations.slice(0, index)].find(
      ({ key }) => answerOf(key) === null,
    );
    setOpen(next?.key ?? null);
    setSaid(`${station.title}: good. ${done + (answerOf(station.key) ? 0 : 1)} of ${stations.length}.`);
    const head = heads.current.get(next?.key ?? station.key);
    head?.focus({ preventScroll: true });
    // After the drawing: the station that closes above would push the place away.
    requestAnimationFrame(() => head?.scrollIntoView({ block: 'start' }));
  }

  return (
    <>
      <div className={styles.progress}>
        <label htmlFor="progress">
          {done} of {stations.length} looked at
        </label>
        <progress id="progress" value={done} max={stations.length} />
      </div>
      <p role="status" className="out-of-sight">
        {said}
      </p>
      <p className={styles.soft}>
        Begun <Moment at={walk.startedAt} zone={zone} />.{' '}
        {walk.isStarted
          ? 'Answers stay on this phone until you finish.'
          : 'The start is not sent yet; go on.'}
      </p>
      <ol className={styles.stations}>
        {stations.map((station, index) => (
          <li key={station.key} className={styles.station}>
            <h2>
              <button
                type="button"
                className={styles.head}
                aria-expanded={open === station.key}
                aria-controls={`at-${station.key}`}
                ref={(head) => {
                  if (head) heads.current.set(station.key, head);
                }}
                onClick={() => setOpen(open === station.key ? null : station.key)}
              >
                <span className={styles.number}>{index + 1}</span>
                <span className={styles.title}>
                  {station.title}
                  {station.writtenUp > 0 && (
                    <span className={styles.writtenUp}>{counted(station.writtenUp, 'write-up')} here</span>
                  )}
                </span>
                <AnswerMark answer={answerOf(station.key)} />
              </button>
            </h2>
            <div id={`at-${station.key}`} hidden={open !== station.key} className={styles.body}>
              {open === station.key && (
                <>
                  <p className={styles.lookFor}>{station.lookFor}</p>
                  {station.known}
                  <div className={styles.answers}>
                    <button
                      type="button"
                      className={styles.good}
                      aria-pressed={answerOf(station.key) === 'good'}
                      onClick={() => answerGood(station, index)}
                    >
                      Good
                    </button>
                    <Link
                      href={`/ramp/${aircraftId}/finding?station=${station.key}&walk=${walk.id}`}
                      className={styles.finding}
                    >
                      {answerOf(station.key) === 'finding' ? 'Another finding' : 'Finding'}
                    </Link>
                  </div>
                  {station.writtenUp > 0 && (
                    <p className={styles.soft}>Good means: nothing beyond what is written up.</p>
                  )}
                  {answerOf(station.key) === 'good' && (
                    <Button weight="quiet" onClick={() => answerStation(personId, walk, station.key, null)}>
                      Back to “not looked at yet”
                    </Button>
                  )}
                </>
              )}
            </div>
          </li>
        ))}
      </ol>
      <Finish {...{ personId, aircraftId, stations, walk, onFinished }} />
    </>
  );
}

function AnswerMark({ answer }: { answer: 'good' | 'finding' | null }) {
  if (answer === 'good') {
    return (
      <Tag tone="grey" shape="tick" size="small">
        Good
      </Tag>
    );
  }
  return answer === 'finding' ? (
    <Tag tone="amber" shape="wedge" size="small">
      Finding
    </Tag>
  ) : (
    <Tag tone="grey" size="small">
      Not yet
    </Tag>
  );
}

/** Sends the answers. Stations not looked at are said first: they are recorded as that, never as good. */
function Finish(props: {
  personId: string;
  aircraftId: string;
  stations: readonly Station[];
  walk: Walk;
  onFinished: (finished: FinishedWalk) => void;
}) {
  const { personId, aircraftId, stations, walk, onFinished } = props;
  const open = stations.filter((station) => !walk.answers[station.key]);
  const [isSure, setSure] = useState(false);
  const [isPending, setPending] = useState(false);
  const [failure, setFailure] = useState<Extract<Sent<unknown>, { ok: false }> | null>(null);
  const [mayThrowAway, setMayThrowAway] = useState(false);

  async function finish() {
    if (isPending) return;
    if (open.length > 0 && !isSure) {
      setSure(true);
      return;
    }
    setPending(true);
    setFailure(null);
    const { sent } = await sendFinish(
      personId,
      walk,
      stations.map((station) => station.key),
    );
    setPending(false);
    if (sent.ok) onFinished(sent.value);
    else setFailure(sent);
  }

  return (
    <section className={styles.finish} aria-label="Finish">
      {isSure && open.length > 0 && (
        <Notice tone="amber" title={`${counted(open.length, 'station')} not looked at.`}>
          <p>They are recorded as not looked at, not as good: {open.map(({ title }) => title).join('; ')}.</p>
        </Notice>
      )}
      {failure?.problem && <ProblemNotice problem={failure.problem} />}
      {failure && !failure.problem && (
        <Notice
          tone="amber"
          title={
            failure.unsent === 'no-connection'
              ? 'Not sent: no connection. All answers are kept on this phone.'
              : 'No usable answer came back. All answers are kept on this phone.'
          }
        >
          <p>Press again when you are connected; it is recorded only once.</p>
        </Notice>
      )}
      <Button weight="main" wide onClick={() => void finish()} aria-disabled={isPending || undefined}>
        {isPending ? 'Sending…' : isSure && open.length > 0 ? 'Finish all the same' : 'Finish the walkaround'}
      </Button>
      {mayThrowAway ? (
        <Notice tone="amber" title="Throw this walkaround away?">
          <p>Its answers are lost. Write-ups that were sent stay.</p>
          <ButtonRow>
            <Button onClick={() => keep(walkKey(personId, aircraftId), null)}>Throw it away</Button>
            <Button weight="quiet" onClick={() => setMayThrowAway(false)}>
              Keep it
            </Button>
          </ButtonRow>
        </Notice>
      ) : (
        <Button weight="quiet" onClick={() => setMayThrowAway(true)}>
          Begin anew
        </Button>
      )}
    </section>
  );
}

function Finished({ finished, aircraftId }: { finished: FinishedWalk; aircraftId: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className={styles.finish}>
      <h2 ref={heading} tabIndex={-1}>
        The walkaround is recorded
      </h2>
      <p>
        {finished.good} good, {finished.withFinding} with a finding, {finished.notLookedAt} not looked at.
      </p>
      <LinkButton href={`/ramp/${aircraftId}`} weight="main" wide>
        See today’s answer
      </LinkButton>
      <LinkButton href="/ramp" wide>
        All aircraft
      </LinkButton>
    </section>
  );
}
