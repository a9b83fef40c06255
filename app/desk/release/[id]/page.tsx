import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { Caution } from '@/app/_ui/caution';
import { StaysFresh } from '@/app/_ui/freshness';
import { OutcomeMark } from '@/app/_ui/marks';
import { HoursText, Moment, momentInWords } from '@/app/_ui/moment';
import { Card, FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { type SpentAhead } from '@/lib/releases/hours-ahead';
import { readRelease, type ReleaseFile } from '@/lib/releases/read-desk';
import { mayUse } from '@/lib/access/policy';
import { type Outcome } from '@/lib/rules/verdict';
import { ACCEPTED_BEFORE, isAcceptedBefore } from '../../../_flight/accepted-before';
import { Alarm } from '../../../_flight/alarm';
import { LogFlight } from '../../../_flight/log-form';
import { StateMark } from '../../../_flight/state-mark';
import { Timeline } from '../../../_flight/timeline';
import { WithdrawForm } from '../../../_flight/withdraw-form';
import { Reasons } from '../../reasons';
import { Refused } from '../../refused';
import { OUTCOME_WORDS } from '../../words';
import styles from '../release.module.css';
import { flightFacts } from './flight-facts';
import { Meters } from './meters';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Release') };
}

/**
 * A release: what has become of it, live, and the facts it stood on. Those are a record and never change with the aircraft;
 * what happened since stands beside it.
 */
export default async function ReleasePage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/desk/release/${encodeURIComponent(id)}`);
  const read = await readRelease(ref, { releaseId: id });
  if (!read.ok) return <Refused who={who} title={t('Release')} problem={read.problem} />;
  const release = read.value;
  const { flight, facts } = release;
  const meters = (
    <Meters
      releaseId={id}
      meters={release.meters}
      last={release.lastOnRecord}
      ttisTenths={release.ttisTenths}
      zone={release.zone}
      mayCorrect={mayUse(who.roles, 'meters.correct')}
      mayWrite={mayUse(who.roles, 'flight.release') || release.pilotId === ref.personId}
    />
  );
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/releases', label: t('Releases') }}
        lead={
          <>
            <Say
              text="Released by {dispatcher} on <moment/>. A record of that moment, not today’s answer."
              parts={{ moment: <Moment at={release.releasedAt} zone={flight.from.zone} /> }}
              values={{ dispatcher: release.dispatcher }}
            />
          </>
        }
      >
        {titleOf(t, release)}
      </PageTitle>
      <StaysFresh asOf={new Date().toISOString()} zones={[release.zone]}>
        <Alarm standing={release} registration={release.registration} zone={release.zone}>
          <WhatToDo release={release} />
        </Alarm>
        <Card edge={release.state.name === 'void' ? 'red' : undefined}>
          <div className={styles.marks}>
            <StateMark state={release.state} size="large" />
          </div>
          <p>
            {sinceInWords(t, release)} <ReleasedAs release={release} />
          </p>
          <Timeline release={release} meters={release.meters} zone={release.zone} />
          {(release.canLog.length > 0 || release.canWithdraw) && (
            <div className={styles.acts}>
              <LogFlight releaseId={id} canLog={release.canLog} zone={release.zone} />
              {release.canWithdraw && <WithdrawForm releaseId={id} isPilot={false} />}
            </div>
          )}
        </Card>
      </StaysFresh>
      <Section title={metersTitle(t, release)} id="meters">
        {isGone(release) && !release.meters.out && !release.meters.back ? (
          <details className={styles.kept}>
            <summary>{t('It flew all the same: write the meters down')}</summary>
            {meters}
          </details>
        ) : (
          meters
        )}
      </Section>
      <Section title={t('The flight')}>
        <FactList facts={flightFacts(t, release)} />
      </Section>
      <Section title={t('The answer it stood on')}>
        <Card>
          <Reasons lines={release.answer.lines} />
        </Card>
        {release.outcome === 'go-with-limits' && (
          <p>
            {release.limitsPassedOn
              ? t('{dispatcher} confirmed having passed the limits to the pilot in command.', {
                  dispatcher: release.dispatcher,
                })
              : t('The limits were not confirmed as passed on.')}
          </p>
        )}
        <Caution form="long" />
      </Section>
      <Section title={t('The aircraft’s facts at that moment')}>
        <FactList
          facts={[
            {
              name: t('Total time in service'),
              value: <HoursText tenths={facts.ttisTenths.known ? facts.ttisTenths.value : null} />,
            },
            { name: t('Open write-ups'), value: facts.discrepancies.length },
            { name: t('Version of the facts'), value: release.factsVersion },
            { name: t('Version of the rules'), value: release.rulesVersion },
            ...(release.spentAhead
              ? [
                  {
                    name: t('Hours counted ahead'),
                    value: <HoursText tenths={aheadTenths(release.spentAhead)} />,
                  },
                ]
              : []),
          ]}
        />
        {facts.discrepancies.length > 0 && (
          <ul className={styles.plain}>
            {facts.discrepancies.map((one) => (
              <li key={one.id}>
                <b>{one.number}</b> {one.title}
                {one.deferral && t(', deferred')}
              </li>
            ))}
          </ul>
        )}
        <p>
          <Say
            text="Seal (SHA-256 over flight, facts, answer, versions and dispatcher): <code>{hash}</code>"
            parts={{ code: <code className={styles.hash} /> }}
            values={{ hash: release.hash }}
          />
        </p>
        <details className={styles.kept}>
          <summary>{t('Everything as it was kept')}</summary>
          {/* A scrolling frame must be reachable by keyboard (WCAG 2.1.1). */}
          {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
          <pre role="region" aria-label={t('Everything as it was kept')} tabIndex={0}>
            {JSON.stringify({ flight, facts }, null, 2)}
          </pre>
        </details>
      </Section>
      <div className={styles.onward}>
        <ButtonRow>
          <LinkButton href="/desk" weight="main">
            {t('To the board')}
          </LinkButton>
          <LinkButton href={`/desk/flight?release=${id}`}>{t('Release anew')}</LinkButton>
          <LinkButton href="/desk/flight">{t('Compose another flight')}</LinkButton>
        </ButtonRow>
      </div>
    </Shell>
  );
}

/** What the desk does about a void release, or one whose facts changed, in order. */
function WhatToDo({ release }: { release: ReleaseFile }) {
  const t = useWords();
  const pilot = release.pilot ?? t('the pilot');
  const again = (
    <p>
      <LinkButton href={`/desk/flight?release=${release.id}`}>{t('Release anew')}</LinkButton>
    </p>
  );
  if (release.state.name !== 'void') {
    return (
      <p>
        <b>{t('Tell {pilot}.', { pilot })}</b>{' '}
        {release.state.name === 'airborne'
          ? t('In the air it is for the pilot in command to decide what to do (14 CFR 91.7(b)).')
          : t('Whether to fly is for the pilot in command to decide (14 CFR 91.7(b)).')}
      </p>
    );
  }
  return (
    <>
      <p>
        <b>{t('Now:')}</b>
      </p>
      <ol className={styles.doNow}>
        <li>{t('Call {pilot}, and make sure that the flight does not depart.', { pilot })}</li>
        <li>{t('If it took off before this came in, write down when: “Airborne”, below.')}</li>
        <li>{t('Release anew once the aircraft can go, or with another aircraft.')}</li>
      </ol>
      {again}
    </>
  );
}

/** Nobody departs on it. */
const isGone = ({ state }: ReleaseFile): boolean => state.name === 'void' || state.name === 'withdrawn';

/** How it was answered then. Of a release that is gone in words alone: no mark of a go stands beside it. */
function ReleasedAs({ release }: { release: ReleaseFile }) {
  const t = useWords();
  const { outcome } = release;
  if (isGone(release))
    return (
      <>{t('It was released as {outcome_words}.', { outcome_words: t(OUTCOME_WORDS[outcome as Outcome]) })}</>
    );
  return (
    <>
      <Say
        text="Released as <outcomeMark/>"
        parts={{ outcomeMark: <OutcomeMark outcome={outcome as Outcome} size="small" /> }}
      />
    </>
  );
}

/** A release that is gone does not stand as one over the page. */
function titleOf(t: Translate, { registration, state: { name } }: ReleaseFile): string {
  if (name === 'void') return t('{registration}: release void', { registration });
  return name === 'withdrawn'
    ? t('{registration}: release withdrawn', { registration })
    : t('{registration} released', { registration });
}

/** Since when it is so, and whether its pilot took it. */
function sinceInWords(t: Translate, release: ReleaseFile): string {
  const { state, acceptance, pilot, zone } = release;
  const since = t('Since {moment}.', { moment: momentInWords(state.since, zone) });
  if (isAcceptedBefore(release)) return `${since} ${t(ACCEPTED_BEFORE)}`;
  if (acceptance || state.name !== 'released') return since;
  return t('{since} {pilot} has not accepted it yet.', { since, pilot: pilot ?? t('The pilot in command') });
}

/** What comes next leads the page: departure, then return. */
const metersTitle = (t: Translate, release: ReleaseFile): string => {
  const { out, back } = release.meters;
  return back || (isGone(release) && !out)
    ? t('Meters')
    : out
      ? t('Meters at return')
      : t('Meters at departure');
};

/** Hours that flights released before it were to spend before its departure. */
const aheadTenths = ({ flights }: SpentAhead): number => flights.reduce((sum, { tenths }) => sum + tenths, 0);
