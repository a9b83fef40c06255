import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readWriteUp, type WriteUpView } from '@/lib/determinations/read-write-up';
import { eventsOf } from '@/lib/findings/events';
import { isClosedByServicing } from '@/lib/findings/servicing';
import { findingOf } from '@/lib/rules/findings/catalogue';
import { measurementOf } from '@/lib/rules/findings/measurements';
import { sayInUnits } from '@/lib/units/say';
import { requireActor } from '../../../_session/actor-ref';
import { DateText, Moment } from '../../../_ui/moment';
import { Card, FactList, PageTitle, Section } from '../../../_ui/page';
import { RelatedWriteUps, SeenAgain } from '../../../_ui/seen-again';
import { Shell } from '../../../_ui/shell';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { AddPhotos } from '../../_parts/add-photos';
import { Events } from '../../_parts/events';
import { Pictures } from '../../_parts/pictures';
import { Placards } from '../../_parts/placards';
import { PlainProblem } from '../../_parts/plain-problem';
import styles from '../../_parts/ramp.module.css';
import { ServicingForm } from '../../_parts/servicing-form';
import { whereInWords } from '../../_parts/words';
import { CarriedMark } from '@/app/_ui/carried-mark';
import { SeverityOf, StateMark } from '../../_parts/write-up-card';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Write-up') };
}
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ id: string }>;
}

/** One write-up as a pilot reads it: what it is, why it matters, what was done. */
export default async function WriteUpPage({ params }: Props) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/ramp/write-up/${id}`);
  const read = await readWriteUp(ref, { discrepancyId: id });
  if (!read.ok) return <PlainProblem who={who} problem={read.problem} />;
  const view = read.value;
  const { summary, zone } = view;
  const isOpen = summary.state !== 'closed';
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle
          back={{ href: `/ramp/${view.aircraftId}`, label: view.registration }}
          lead={t('{number} on {registration}', { number: summary.number, registration: view.registration })}
        >
          {summary.title}
        </PageTitle>
        <Card>
          <div className={styles.marks}>
            <SeverityOf writeUp={summary} />
            <StateMark writeUp={summary} />
          </div>
          <p className={styles.said}>{summary.words}</p>
          {summary.carried && (
            <p>
              <CarriedMark mark={summary.carried} />
            </p>
          )}
          <FactList facts={factsOf(t, view)} />
          <RelatedWriteUps earlier={view.earlier} later={view.later} from="ramp" />
          <Pictures photos={summary.photos} of={summary.number} />
          {isOpen && summary.reportedById === ref.personId && mayUse(who.roles, 'photo.add') && (
            <AddPhotos findingId={summary.findingId} label={summary.number} />
          )}
        </Card>
        {view.observations.length > 0 && (
          <Section title={t('Seen again')}>
            <Card>
              <SeenAgain observations={view.observations} zone={zone} units={view.units} from="ramp" />
            </Card>
          </Section>
        )}
        {isOpen && (
          <Section title={t('Why it matters')}>
            <Card>
              <VerdictLines lines={view.reasons} />
            </Card>
          </Section>
        )}
        {view.deferral && (
          <Section title={t('Deferred')}>
            <Card edge="blue">
              <p>{view.deferral.methodWords}</p>
              <p className={styles.soft}>
                {t('Under {which},{which2}.', {
                  which:
                    view.deferral.basis === 'mel' ? t('the minimum equipment list') : t('14 CFR 91.213(d)'),
                  which2: view.deferral.method === 'removed' ? t(' removed') : t(' deactivated'),
                })}
                {view.deferral.recordedOn && (
                  <>
                    {' '}
                    {t('Written up')} <DateText date={view.deferral.recordedOn} />.
                  </>
                )}
              </p>
              <Placards placards={summary.placards} mayPlace={mayUse(who.roles, 'placard.place')} />
            </Card>
          </Section>
        )}
        {isOpen &&
          mayUse(who.roles, 'servicing.record') &&
          isClosedByServicing({ findingKey: view.findingKey, kind: summary.kind }) && (
            <Section title={t('Serviced?')}>
              <Card>
                <ServicingForm
                  discrepancyId={summary.id}
                  hint={(view.findingKey && findingOf(view.findingKey)?.usualAction) ?? null}
                />
              </Card>
            </Section>
          )}
        <Section title={t('What became of it')}>
          <Events events={eventsOf(view.determinations, worksOf(view))} zone={zone} />
        </Section>
      </div>
    </Shell>
  );
}

const factsOf = (t: Translate, view: WriteUpView) => [
  { name: t('Where'), value: whereInWords(t, view.summary) },
  { name: t('System'), value: view.jascLabel },
  ...Object.entries(view.measurements).flatMap(([key, value]) => {
    const measurement = measurementOf(key);
    return measurement
      ? [{ name: measurement.label, value: sayInUnits(value, measurement.unit, view.units) }]
      : [];
  }),
  { name: t('Written up by'), value: view.summary.reportedBy },
  { name: t('Found'), value: <Moment at={view.foundAt} zone={view.zone} /> },
];

const worksOf = (view: WriteUpView) =>
  view.work.map(({ forDeferral, state, startedAt, startedBy, entry, signOff }) => ({
    forDeferral,
    state,
    startedAt,
    startedBy,
    description: entry.description ?? entry.title,
    signOff,
  }));
