import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { Caution } from '@/app/_ui/caution';
import { OutcomeMark } from '@/app/_ui/marks';
import { HoursText, Moment } from '@/app/_ui/moment';
import { Card, FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readRelease, type ReleaseFile } from '@/lib/releases/read-desk';
import { mayUse } from '@/lib/access/policy';
import { type Outcome } from '@/lib/rules/verdict';
import { Reasons } from '../../reasons';
import { Refused } from '../../refused';
import { PURPOSE_WORDS } from '../../words';
import styles from '../release.module.css';
import { Meters } from './meters';

export const metadata: Metadata = { title: 'Release' };

/** A recorded release and the facts it stood on. It is a record: it never changes with the aircraft. */
export default async function ReleasePage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/desk/release/${encodeURIComponent(id)}`);
  const read = await readRelease(ref, { releaseId: id });
  if (!read.ok) return <Refused who={who} title="Release" problem={read.problem} />;
  const release = read.value;
  const { flight, facts } = release;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/releases', label: 'Releases' }}
        side={<OutcomeMark outcome={release.outcome as Outcome} size="large" />}
        lead={
          <>
            Released by {release.dispatcher} on <Moment at={release.releasedAt} zone={flight.from.zone} />. A
            record of that moment, not today’s answer.
          </>
        }
      >
        {release.registration} released
      </PageTitle>
      <Section title={metersTitle(release)} id="meters">
        <Meters
          releaseId={id}
          meters={release.meters}
          last={release.lastOnRecord}
          ttisTenths={release.ttisTenths}
          zone={release.zone}
          mayCorrect={mayUse(who.roles, 'meters.correct')}
          mayWrite={mayUse(who.roles, 'flight.release') || release.pilotId === ref.personId}
        />
      </Section>
      <Section title="The flight">
        <FactList facts={flightFacts(release)} />
      </Section>
      <Section title="The answer it stood on">
        <Card>
          <Reasons lines={release.answer.lines} />
        </Card>
        {release.outcome === 'go-with-limits' && (
          <p>
            {release.limitsPassedOn
              ? `${release.dispatcher} confirmed having passed the limits to the pilot in command.`
              : 'The limits were not confirmed as passed on.'}
          </p>
        )}
        <Caution form="long" />
      </Section>
      <Section title="The aircraft’s facts at that moment">
        <FactList
          facts={[
            {
              name: 'Total time in service',
              value: <HoursText tenths={facts.ttisTenths.known ? facts.ttisTenths.value : null} />,
            },
            { name: 'Open write-ups', value: facts.discrepancies.length },
            { name: 'Version of the facts', value: release.factsVersion },
            { name: 'Version of the rules', value: release.rulesVersion },
          ]}
        />
        {facts.discrepancies.length > 0 && (
          <ul className={styles.plain}>
            {facts.discrepancies.map((one) => (
              <li key={one.id}>
                <b>{one.number}</b> {one.title}
                {one.deferral && ', deferred'}
              </li>
            ))}
          </ul>
        )}
        <p>
          Seal (SHA-256 over flight, facts, answer, versions and dispatcher):{' '}
          <code className={styles.hash}>{release.hash}</code>
        </p>
        <details className={styles.kept}>
          <summary>Everything as it was kept</summary>
          {/* A scrolling frame must be reachable by keyboard (WCAG 2.1.1). */}
          {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
          <pre role="region" aria-label="Everything as it was kept" tabIndex={0}>
            {JSON.stringify({ flight, facts }, null, 2)}
          </pre>
        </details>
      </Section>
      <div className={styles.onward}>
        <ButtonRow>
          <LinkButton href="/desk" weight="main">
            To the board
          </LinkButton>
          <LinkButton href="/desk/flight">Compose another flight</LinkButton>
        </ButtonRow>
      </div>
    </Shell>
  );
}

/** What comes next leads the page: departure, then return. */
const metersTitle = ({ meters: { out, back } }: ReleaseFile): string =>
  back ? 'Meters' : out ? 'Meters at return' : 'Meters at departure';

function flightFacts({ flight, pilot }: ReleaseFile) {
  const said = (fact: { known: true; value: boolean } | { known: false }) =>
    fact.known ? (fact.value ? 'Yes' : 'No') : 'Not said';
  return [
    { name: 'Pilot in command', value: pilot ?? 'Not named' },
    { name: 'From, to', value: `${flight.from.ident} to ${flight.to.ident}` },
    { name: 'Departs', value: <Moment at={flight.departAt} zone={flight.from.zone} /> },
    { name: 'Arrives', value: <Moment at={flight.arriveAt} zone={flight.to.zone} /> },
    { name: 'Rules and purpose', value: `${flight.rules}, ${PURPOSE_WORDS[flight.purpose].toLowerCase()}` },
    { name: 'Planned time in service', value: <HoursText tenths={flight.plannedTenths} /> },
    { name: 'Transponder airspace', value: said(flight.transponderAirspace) },
    { name: 'ADS-B airspace', value: said(flight.adsbAirspace) },
    { name: 'Controlled airspace', value: said(flight.controlledAirspace) },
    { name: 'By VOR', value: said(flight.usesVor) },
    { name: 'Over water beyond glide', value: said(flight.overWaterBeyondGlide) },
    { name: 'Training within 50 NM', value: said(flight.trainingWithin50Nm) },
    { name: 'Only crew aboard', value: said(flight.crewOnly) },
    { name: 'Special flight permit', value: flight.specialFlightPermit?.reference ?? 'None' },
    {
      name: 'Highest altitude',
      value: flight.highestAltitudeFtMsl.known ? `${flight.highestAltitudeFtMsl.value} ft MSL` : 'Not said',
    },
  ];
}
