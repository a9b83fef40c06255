import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { Cite } from '@/app/_ui/cite';
import Link from '@/app/_ui/link';
import { DateText, Moment } from '@/app/_ui/moment';
import { Card, FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { mayUse } from '@/lib/access/policy';
import { readPermit, type PermitView } from '@/lib/permits/read-permit';
import { Acting } from '../../acts';
import { Refused } from '../../refused';
import { RulingNotice } from '../../ruling-notice';
import { certificateWords } from '../../words';
import styles from '../permit.module.css';
import { PURPOSE_WORDS, STANDING } from '../words';
import { InspectForm } from './inspect-form';

export const metadata: Metadata = { title: 'Special flight permit' };

/** One recorded permit: its conditions, who may be aboard, its days, its inspection, and whether its flight is made. */
export default async function PermitPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/permit/${encodeURIComponent(id)}`);
  const read = await readPermit(ref, { permitId: id });
  if (!read.ok) return <Refused who={who} problem={read.problem} title="Special flight permit" />;
  const permit = read.value;
  const { word, tone, shape } = STANDING[permit.standing];
  return (
    <Shell who={who}>
      <PageTitle
        back={
          mayUse(who.roles, 'bench.read')
            ? { href: `/bench/aircraft/${permit.aircraftId}`, label: permit.registration }
            : { href: '/', label: 'Start' }
        }
        side={
          <Tag tone={tone} shape={shape} size="large">
            {word}
          </Tag>
        }
        lead={`Special flight permit for ${permit.registration}, ${permit.typeName}, serial ${permit.serial}. For one flight.`}
      >
        {permit.reference}
      </PageTitle>
      <Section title="What it says">
        <Card>
          <FactList facts={factsOf(permit)} />
          <h3>Conditions</h3>
          <ul className={styles.plain}>
            {permit.limits.map((limit) => (
              <li key={limit}>{limit}</li>
            ))}
          </ul>
          <h3>Names as not complying</h3>
          <ul className={styles.plain}>
            {permit.covers.map(({ id: covered, kind, label, changed }) => (
              <li key={covered}>
                {kind === 'discrepancy' ? <Link href={`/bench/write-up/${covered}`}>{label}</Link> : label}
                {changed && !permit.releaseId && (
                  <>
                    {' '}
                    <Tag tone="red">Changed since: not covered any more</Tag>
                  </>
                )}
              </li>
            ))}
          </ul>
          <p>
            It stands in for these and for nothing else, <Cite cite="14cfr21.199(a)" plain />. From memory:
            the good days with both ends, and that it is spent with its flight.
          </p>
          <p className={styles.signed}>
            Recorded by {permit.recordedBy} on <Moment at={permit.recordedAt} zone={permit.zone} /> ·{' '}
            <code title={permit.hash}>
              <span className="out-of-sight">hash </span>
              {permit.hash.slice(0, 12)}
            </code>
          </p>
        </Card>
      </Section>
      <Acting>
        <Section title="Inspection before the flight">
          <Inspection permit={permit} mayPress={mayUse(who.roles, 'permit.inspect')} />
        </Section>
      </Acting>
      <Section title="The flight">
        <Flight permit={permit} mayRelease={mayUse(who.roles, 'flight.release')} />
      </Section>
    </Shell>
  );
}

const factsOf = (permit: PermitView) => [
  { name: 'For', value: PURPOSE_WORDS[permit.purpose] ?? permit.purpose },
  { name: 'From, to', value: `${permit.from} to ${permit.to}` },
  { name: 'Good from', value: <DateText date={permit.goodFrom} /> },
  { name: 'Good through', value: <DateText date={permit.goodThrough} /> },
  { name: 'Who may be aboard', value: permit.crew },
  { name: 'Issued by', value: permit.issuedBy },
  { name: 'Issued on', value: <DateText date={permit.issuedOn} /> },
  { name: 'Inspection', value: inspectionSaid(permit) },
];

const inspectionSaid = ({ asksInspection, inspection }: PermitView): string =>
  inspection ? 'Signed' : asksInspection ? 'Owed before the flight' : 'Not asked for';

function Inspection({ permit, mayPress }: { permit: PermitView; mayPress: boolean }) {
  const { inspection, me } = permit;
  if (inspection) {
    return (
      <Card>
        <p>{inspection.statement}</p>
        <p className={styles.signed}>
          Found safe for the flight by {inspection.by} on <Moment at={inspection.at} zone={permit.zone} />,
          under {certificateWords(inspection.certificateKind)} {inspection.certificateNumber} ·{' '}
          <code title={inspection.hash}>
            <span className="out-of-sight">hash </span>
            {inspection.hash.slice(0, 12)}
          </code>
        </p>
      </Card>
    );
  }
  if (!permit.asksInspection) return <p>The permit asks for none.</p>;
  if (permit.standing === 'used' || permit.standing === 'over') return <p>It was never signed.</p>;
  if (!mayPress) return <p>Owed. A mechanic or repair station signs it here.</p>;
  return (
    <Card edge="amber">
      <RulingNotice
        ruling={me.mayInspect}
        allowed="Your certificates allow this inspection."
        refused="Your certificates do not allow this inspection."
      />
      <InspectForm permitId={permit.id} signer={me.name} />
    </Card>
  );
}

function Flight({ permit, mayRelease }: { permit: PermitView; mayRelease: boolean }) {
  if (permit.releaseId) {
    return (
      <p>
        Used: its flight was <Link href={`/desk/release/${permit.releaseId}`}>released</Link>. There is no
        second one under it.
      </p>
    );
  }
  if (permit.standing === 'over') return <p>Its days are over without a flight.</p>;
  if (!mayRelease) return <p>Not used yet. The desk composes its flight and names this permit.</p>;
  return (
    <ButtonRow>
      <LinkButton href={`/desk/flight?aircraft=${permit.aircraftId}`}>Compose its flight</LinkButton>
    </ButtonRow>
  );
}
