'use client';

import { English, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import Link from '@/app/_ui/link';
import { type ProposalView, type FormChange } from '@/lib/releases/proposal-view';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { type ProposalItem } from '@/lib/rules/proposals';
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
  const t = useWords();
  const { proposals, flight, choices, isAsking, mayBench, onTake } = props;
  if (proposals.length === 0) return null;
  return (
    <section className={styles.proposals} aria-labelledby="proposals">
      <h3 id="proposals">{t('What would make it go')}</h3>
      <p className={styles.soft}>
        {t('Proposals, not answers. Taking one changes the form and asks again.')}
      </p>
      <ul>
        {proposals.map((proposal) => (
          <li key={`${proposal.kind} ${proposal.because}`}>
            <p className={styles.what}>
              <English>{proposal.because}</English>
            </p>
            <p className={styles.soft}>
              {proposal.apply ? t('It would then be') : t('Once that is done it would be')}{' '}
              {t(OUTCOME_WORDS[proposal.outcome])}
              {proposal.limits.length > 0 &&
                t(', with {limits, plural, one {# limit} other {# limits}}', {
                  limits: proposal.limits.length,
                })}
              .{standsElsewhere(t, proposal, flight, choices)}
            </p>
            <Items items={proposal.items} aircraftId={flight.aircraftId} mayBench={mayBench} />
            {proposal.kind === 'call-mechanic' && (
              <Call words={callInWords(t, flight, proposal.items)} mechanics={choices.mechanics} />
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
  t: Translate,
  { apply, registration }: ProposalView,
  { fromIdent }: CallAbout,
  { aircraft, bases }: DeskChoices,
): string {
  if (apply?.aircraftId === undefined) return '';
  const baseId = aircraft.find(({ id }) => id === apply.aircraftId)?.baseId;
  const base = bases.find(({ id }) => id === baseId)?.ident;
  return base === undefined || base === fromIdent
    ? ''
    : t(' {registration} is of {base}: it has to be here first.', { registration: registration ?? '', base });
}

function Take(props: {
  proposal: ProposalView;
  isAsking: boolean;
  onTake: (change: FormChange) => Promise<void>;
}) {
  const t = useWords();
  const { proposal, isAsking, onTake } = props;
  const { apply, kind, registration } = proposal;
  if (!apply) return null;
  const words =
    kind === 'other-aircraft'
      ? t('Take {registration} and ask again', { registration: registration ?? '' })
      : kind === 'earlier-return'
        ? t('Back by {clock} and ask again', { clock: clock(apply.arriveLocal) })
        : t('Leave at {clock} and ask again', { clock: clock(apply.departLocal) });
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
  const t = useWords();
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(words);
      setSaid('Copied.');
    } catch {
      // Not allowed here, or no https: the words stand there to be marked by hand.
      setSaid(t('This browser does not copy. Mark the words and copy them.'));
    }
  };
  return (
    <div className={styles.call}>
      {mechanics.length > 0 && (
        <p className={styles.soft}>
          {t('Whom: {mechanics}.', {
            mechanics: mechanics.map(({ name, holds }) => (holds ? `${name} (${holds})` : name)).join('; '),
          })}
        </p>
      )}
      <blockquote>{words}</blockquote>
      <div className={`${styles.copy} not-on-paper`}>
        <Button onClick={() => void copy()}>{t('Copy the words')}</Button>
        <span role="status">{said}</span>
      </div>
    </div>
  );
}
