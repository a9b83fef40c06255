import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { ACCEPTANCE_STATEMENT } from '@/lib/releases/accept-release';
import { readMyFlights, type MyFlight } from '@/lib/releases/my-flights';
import { type ReleaseStateName } from '@/lib/rules/release-state';
import { requireActor } from '../../../_session/actor-ref';
import { Caution } from '../../../_ui/caution';
import { LinkButton } from '../../../_ui/button';
import { FreshMark, StaysFresh } from '../../../_ui/freshness';
import { momentInWords } from '../../../_ui/moment';
import { Card, EmptyState, FactList, PageTitle, Section } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { ACCEPTED_BEFORE, isAcceptedBefore } from '../../../_flight/accepted-before';
import { Alarm } from '../../../_flight/alarm';
import { LogFlight } from '../../../_flight/log-form';
import { StateMark } from '../../../_flight/state-mark';
import { Timeline } from '../../../_flight/timeline';
import { WithdrawForm } from '../../../_flight/withdraw-form';
import { PlainProblem } from '../../_parts/plain-problem';
import styles from '../../_parts/ramp.module.css';
import phone from '../../out/out.module.css';
import { Go } from '../../out/place';
import { AcceptForm } from '../accept-form';
import own from '../flight.module.css';
import { WhileFresh } from '../while-fresh';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Your flight') };
}
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ id: string }>;
}

/**
 * A released flight on its pilot's own phone: what was answered, its limits first, and the signature that takes the
 * aircraft. Only ever drawn by the server: without contact nothing here stands as an answer.
 */
export default async function FlightPage({ params }: Props) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/ramp/flight/${encodeURIComponent(id)}`);
  const read = await readMyFlights(ref, { releaseId: id });
  if (!read.ok) return <PlainProblem who={who} problem={read.problem} />;
  const flight = read.value[0];
  const back = { href: '/ramp', label: t('All aircraft') };
  if (!flight) {
    return (
      <Shell who={who}>
        <div className={styles.column}>
          <PageTitle back={back}>{t('Your flight')}</PageTitle>
          <EmptyState title={t('There is no flight of yours under this address.')}>
            <p>{t('A flight is shown here to its pilot in command. The desk sees all of them.')}</p>
          </EmptyState>
        </div>
      </Shell>
    );
  }
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle
          back={back}
          lead={t('{ident} to {ident2}, departs {moment}', {
            ident: flight.from.ident,
            ident2: flight.to.ident,
            moment: momentInWords(flight.departAt, flight.from.zone),
          })}
        >
          {t('Your flight with {registration}', { registration: flight.registration })}
        </PageTitle>
        <StaysFresh asOf={new Date().toISOString()} zones={[flight.from.zone]}>
          <Alarm standing={flight} registration={flight.registration} zone={flight.from.zone}>
            <WhatToDo flight={flight} />
          </Alarm>
          <div className={own.part}>
            <p className={styles.marks}>
              <StateMark state={flight.state} />
            </p>
            {!OVER.includes(flight.state.name) && <ReleasedAs flight={flight} />}
            <NextStep flight={flight} name={who.name} />
          </div>
        </StaysFresh>
        <Section title={t('The flight')}>
          <FactList
            facts={[
              { name: t('Departs'), value: momentInWords(flight.departAt, flight.from.zone) },
              { name: t('Arrives'), value: momentInWords(flight.arriveAt, flight.to.zone) },
              { name: t('Rules'), value: flight.rules },
              { name: t('Released by'), value: flight.dispatcher },
            ]}
          />
        </Section>
        <Section title={t('What happened')}>
          <Timeline release={flight} zone={flight.from.zone} />
        </Section>
      </div>
    </Shell>
  );
}

/** An answer that is no longer to be flown by is not shown as one. */
const OVER: readonly ReleaseStateName[] = ['void', 'withdrawn', 'closed'];

/** Limits stand open and first; every other line, with its paragraph, unfolds. */
function ReleasedAs({ flight }: { flight: MyFlight }) {
  const t = useWords();
  const { outcome, answer } = flight;
  const limits = limitsOf(flight);
  const others = answer.lines.filter(({ effect }) => effect !== 'limits');
  return (
    <Card edge={outcome === 'go' ? 'green' : 'amber'}>
      <section className={styles.answer} aria-label={t('Released as')}>
        <div>
          <FreshMark outcome={outcome} size="large" />
        </div>
        {limits.length > 0 && (
          <>
            <h2>{limits.length === 1 ? t('One limit') : t('{limits} limits', { limits: limits.length })}</h2>
            <VerdictLines lines={limits} />
          </>
        )}
        <details className={styles.fold}>
          <summary>{t('All other lines, with the paragraphs ({others})', { others: others.length })}</summary>
          <VerdictLines lines={others} />
        </details>
        <Caution form="long" />
      </section>
    </Card>
  );
}

/** The limits of the answer, and what its people were warned of since. */
const limitsOf = ({ answer, events }: MyFlight) => [
  ...answer.lines.filter(({ effect }) => effect === 'limits'),
  ...events.filter(({ what }) => what === 'warned').flatMap(({ lines }) => lines),
];

/** The one thing to do next leads; what else can be done follows. */
function NextStep({ flight, name }: { flight: MyFlight; name: string }) {
  const t = useWords();
  const { releaseId, aircraftId, out, state, canAccept, canLog, canWithdraw } = flight;
  // A warning since the release is a limit to be read as well.
  // Landed, what stands there is the return, whether or not anybody read the departure.
  const isBack = out !== null || state.name === 'landed';
  const hasLimits = state.warned || limitsOf(flight).length > 0;
  const acceptedBefore = isAcceptedBefore(flight);
  const logs = canLog.filter((what) => what !== 'closed' || state.name !== 'released');
  return (
    <>
      {canAccept && (
        <Card>
          <h2>{acceptedBefore ? t('Do you still take the aircraft?') : t('Do you take the aircraft?')}</h2>
          {acceptedBefore && (
            <p>
              <b>{t(ACCEPTED_BEFORE)}</b>
            </p>
          )}
          <WhileFresh>
            <AcceptForm
              releaseId={releaseId}
              answerHash={flight.answerHash}
              hasLimits={hasLimits}
              statement={ACCEPTANCE_STATEMENT}
              name={name}
            />
          </WhileFresh>
        </Card>
      )}
      {/* Who took it and was warned since may be in the air already: that must be written down, signed again or not. */}
      {(!canAccept || acceptedBefore) && (
        <LogFlight releaseId={releaseId} canLog={logs} zone={flight.from.zone} />
      )}
      {wantsMeters(flight) && (
        <Go
          href={`/ramp/${aircraftId}/meters?release=${releaseId}&moment=${isBack ? 'in' : 'out'}`}
          className={`${phone.press} ${state.name === 'landed' ? phone.main : ''}`}
        >
          {isBack ? t('Meters at return') : t('Meters at departure')}
        </Go>
      )}
      {canWithdraw && <WithdrawForm releaseId={releaseId} isPilot />}
      {(state.name === 'withdrawn' || state.name === 'closed') && (
        <p>
          <LinkButton href={`/ramp/${aircraftId}`}>
            {t('To {registration}', { registration: flight.registration })}
          </LinkButton>
        </p>
      )}
    </>
  );
}

/** Hours that ran have run, also where a release went void after the meters were read at departure. */
const wantsMeters = ({ state, out }: MyFlight): boolean =>
  state.name !== 'closed' && state.name !== 'withdrawn' && (state.name !== 'void' || out !== null);

function WhatToDo({ flight: { state } }: { flight: MyFlight }) {
  if (state.name !== 'void') {
    return (
      <p>
        <Say
          text="<b>You decide what to do</b> (14 CFR 91.7(b)). Call the desk when you can."
          parts={{ b: <b /> }}
        />
      </p>
    );
  }
  return (
    <p>
      <Say
        text="<b>Stay on the ground and call the desk.</b> If you had taken off before this came in, write down below when: what to do in the air is yours to decide (14 CFR 91.7(b))."
        parts={{ b: <b /> }}
      />
    </p>
  );
}
