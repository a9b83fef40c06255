import { English, Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
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

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Special flight permit') };
}

/** One recorded permit: its conditions, who may be aboard, its days, its inspection, and whether its flight is made. */
export default async function PermitPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/permit/${encodeURIComponent(id)}`);
  const read = await readPermit(ref, { permitId: id });
  if (!read.ok) return <Refused who={who} problem={read.problem} title={t('Special flight permit')} />;
  const permit = read.value;
  const { word, tone, shape } = STANDING[permit.standing];
  return (
    <Shell who={who}>
      <PageTitle
        back={
          mayUse(who.roles, 'bench.read')
            ? { href: `/bench/aircraft/${permit.aircraftId}`, label: permit.registration }
            : { href: '/', label: t('Start') }
        }
        side={
          <Tag tone={tone} shape={shape} size="large">
            {t(word)}
          </Tag>
        }
        lead={t('Special flight permit for {registration}, {typeName}, serial {serial}. For one flight.', {
          registration: permit.registration,
          typeName: permit.typeName,
          serial: permit.serial,
        })}
      >
        {permit.reference}
      </PageTitle>
      <Section title={t('What it says')}>
        <Card>
          <FactList facts={factsOf(t, permit)} />
          <h3>{t('Conditions')}</h3>
          <ul className={styles.plain}>
            {permit.limits.map((limit) => (
              <li key={limit}>{limit}</li>
            ))}
          </ul>
          <h3>{t('Names as not complying')}</h3>
          <ul className={styles.plain}>
            {permit.covers.map(({ id: covered, kind, label, changed }) => (
              <li key={covered}>
                {kind === 'discrepancy' ? <Link href={`/bench/write-up/${covered}`}>{label}</Link> : label}
                {changed && !permit.releaseId && (
                  <>
                    {' '}
                    <Tag tone="red">{t('Changed since: not covered any more')}</Tag>
                  </>
                )}
              </li>
            ))}
          </ul>
          <p>
            <Say
              text="It stands in for these and for nothing else, <cite/>. From memory: the good days with both ends, and that it is spent with its flight."
              parts={{ cite: <Cite cite="14cfr21.199(a)" plain /> }}
            />
          </p>
          <p className={styles.signed}>
            <Say
              text="Recorded by {recordedBy} on <moment/> · <code><span>hash </span>{hash}</code>"
              parts={{
                moment: <Moment at={permit.recordedAt} zone={permit.zone} />,
                code: <code title={permit.hash} />,
                span: <span className="out-of-sight" />,
              }}
              values={{ recordedBy: permit.recordedBy, hash: permit.hash.slice(0, 12) }}
            />
          </p>
        </Card>
      </Section>
      <Acting>
        <Section title={t('Inspection before the flight')}>
          <Inspection permit={permit} mayPress={mayUse(who.roles, 'permit.inspect')} />
        </Section>
      </Acting>
      <Section title={t('The flight')}>
        <Flight permit={permit} mayRelease={mayUse(who.roles, 'flight.release')} />
      </Section>
    </Shell>
  );
}

const factsOf = (t: Translate, permit: PermitView) => [
  { name: t('For'), value: PURPOSE_WORDS[permit.purpose] ?? permit.purpose },
  { name: t('From, to'), value: t('{from} to {to}', { from: permit.from, to: permit.to }) },
  { name: t('Good from'), value: <DateText date={permit.goodFrom} /> },
  { name: t('Good through'), value: <DateText date={permit.goodThrough} /> },
  { name: t('Who may be aboard'), value: permit.crew },
  { name: t('Issued by'), value: permit.issuedBy },
  { name: t('Issued on'), value: <DateText date={permit.issuedOn} /> },
  { name: t('Inspection'), value: inspectionSaid(t, permit) },
];

const inspectionSaid = (t: Translate, { asksInspection, inspection }: PermitView): string =>
  inspection ? t('Signed') : asksInspection ? t('Owed before the flight') : t('Not asked for');

function Inspection({ permit, mayPress }: { permit: PermitView; mayPress: boolean }) {
  const t = useWords();
  const { inspection, me } = permit;
  if (inspection) {
    return (
      <Card>
        <p>
          <English>{inspection.statement}</English>
        </p>
        <p className={styles.signed}>
          <Say
            text="Found safe for the flight by {by} on <moment/>, under {certificate} {certificateNumber} · <code><span>hash </span>{hash}</code>"
            parts={{
              moment: <Moment at={inspection.at} zone={permit.zone} />,
              code: <code title={inspection.hash} />,
              span: <span className="out-of-sight" />,
            }}
            values={{
              by: inspection.by,
              certificate: certificateWords(t, inspection.certificateKind),
              certificateNumber: inspection.certificateNumber,
              hash: inspection.hash.slice(0, 12),
            }}
          />
        </p>
      </Card>
    );
  }
  if (!permit.asksInspection) return <p>{t('The permit asks for none.')}</p>;
  if (permit.standing === 'used' || permit.standing === 'over') return <p>{t('It was never signed.')}</p>;
  if (!mayPress) return <p>{t('Owed. A mechanic or repair station signs it here.')}</p>;
  return (
    <Card edge="amber">
      <RulingNotice
        ruling={me.mayInspect}
        allowed={t('Your certificates allow this inspection.')}
        refused={t('Your certificates do not allow this inspection.')}
      />
      <InspectForm permitId={permit.id} signer={me.name} />
    </Card>
  );
}

function Flight({ permit, mayRelease }: { permit: PermitView; mayRelease: boolean }) {
  const t = useWords();
  if (permit.releaseId) {
    return (
      <p>
        <Say
          text="Used: its flight was <link>released</link>. There is no second one under it."
          parts={{ link: <Link href={`/desk/release/${permit.releaseId}`} /> }}
        />
      </p>
    );
  }
  if (permit.standing === 'over') return <p>{t('Its days are over without a flight.')}</p>;
  if (!mayRelease) return <p>{t('Not used yet. The desk composes its flight and names this permit.')}</p>;
  return (
    <ButtonRow>
      <LinkButton href={`/desk/flight?aircraft=${permit.aircraftId}`}>{t('Compose its flight')}</LinkButton>
    </ButtonRow>
  );
}
