'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import Link from '@/app/_ui/link';
import { type ProposalView, type FormChange } from '@/lib/releases/proposal-view';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { type ProposalItem } from '@/lib/rules/proposals';
import { counted } from '@/lib/rules/counted';
import { OUTCOME_WORDS } from '../words';
import { callInWords, type CallAbout } from './call-in-words';
import styles from './proposals.module.css';

/**
 * What would make the flight go. Never drawn as an answer: the rules were asked with one thing changed, and what they said
 * is told in words. The answer itself comes when it is taken and asked for.
 */
export function Proposals(props: {
  proposals: readonly ProposalView[];
  flight: CallAbout;
  choices: DeskChoices;
  isAsking: boolean;
  mayBench: boolean;
  onTake: (change: FormChange) => Promise<void>;
}) {
  const { proposals, flight, choices, isAsking, mayBench, onTake } = props;
  if (proposals.length === 0) return null;
  return (
    <section className={styles.proposals} aria-labelledby="proposals">
      <h3 id="proposals">What would make it go</h3>
      <p className={styles.soft}>Proposals, not answers. Taking one changes the form and asks again.</p>
      <ul>
        {proposals.map((proposal) => (
          <li key={`${proposal.kind} ${proposal.because}`}>
            <p className={styles.what}>{proposal.because}</p>
            <p className={styles.soft}>
              {proposal.apply ? 'It would then be' : 'Once that is done it would be'}{' '}
              {OUTCOME_WORDS[proposal.outcome]}
              {proposal.limits.length > 0 && `, with ${counted(proposal.limits.length, 'limit')}`}.
              {standsElsewhere(proposal, flight, choices)}
            </p>
            <Items items={proposal.items} aircraftId={flight.aircraftId} mayBench={mayBench} />
            {proposal.kind === 'call-mechanic' && (
              <Call words={callInWords(flight, proposal.items)} mechanics={choices.mechanics} />
            )}
            {proposal.apply && <Take proposal={proposal} isAsking={isAsking} onTake={onTake} />}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Another aircraft of another base has to be fetched first. */
function standsElsewhere(
  { apply, registration }: ProposalView,
  { fromIdent }: CallAbout,
  { aircraft, bases }: DeskChoices,
): string {
  if (apply?.aircraftId === undefined) return '';
  const baseId = aircraft.find(({ id }) => id === apply.aircraftId)?.baseId;
  const base = bases.find(({ id }) => id === baseId)?.ident;
  return base === undefined || base === fromIdent
    ? ''
    : ` ${registration} is of ${base}: it has to be here first.`;
}

function Take(props: {
  proposal: ProposalView;
  isAsking: boolean;
  onTake: (change: FormChange) => Promise<void>;
}) {
  const { proposal, isAsking, onTake } = props;
  const { apply, kind, registration } = proposal;
  if (!apply) return null;
  const words =
    kind === 'other-aircraft'
      ? `Take ${registration} and ask again`
      : kind === 'earlier-return'
        ? `Back by ${clock(apply.arriveLocal)} and ask again`
        : `Leave at ${clock(apply.departLocal)} and ask again`;
  return (
    <Button aria-disabled={isAsking || undefined} onClick={() => void (isAsking || onTake(apply))}>
      {words}
    </Button>
  );
}

const clock = (local: string | undefined): string => local?.slice(11) ?? '';

/** What it is about, each with the way to it. */
function Items(props: { items: readonly ProposalItem[]; aircraftId: string; mayBench: boolean }) {
  const { items, aircraftId, mayBench } = props;
  if (items.length === 0) return null;
  return (
    <ul className={styles.items}>
      {items.map(({ kind, id, label }) => (
        <li key={id}>
          <Link
            href={
              kind === 'discrepancy'
                ? `${mayBench ? '/bench' : '/ramp'}/write-up/${id}`
                : `/desk/aircraft/${aircraftId}`
            }
          >
            {label}
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** What to say to the mechanic on the telephone or in a message: to read out, to copy, to print with the page. */
function Call({ words, mechanics }: { words: string; mechanics: DeskChoices['mechanics'] }) {
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(words);
      setSaid('Copied.');
    } catch {
      // Not allowed here, or no https: the words stand there to be marked by hand.
      setSaid('This browser does not copy. Mark the words and copy them.');
    }
  };
  return (
    <div className={styles.call}>
      {mechanics.length > 0 && (
        <p className={styles.soft}>
          Whom: {mechanics.map(({ name, holds }) => (holds ? `${name} (${holds})` : name)).join('; ')}.
        </p>
      )}
      <blockquote>{words}</blockquote>
      <div className={`${styles.copy} not-on-paper`}>
        <Button onClick={() => void copy()}>Copy the words</Button>
        <span role="status">{said}</span>
      </div>
    </div>
  );
}
