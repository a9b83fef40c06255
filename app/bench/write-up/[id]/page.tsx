import { useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readWriteUp, type WriteUpView } from '@/lib/determinations/read-write-up';
import { requireActor } from '../../../_session/actor-ref';
import Link from '../../../_ui/link';
import { CarriedMark } from '../../../_ui/carried-mark';
import { SeverityMark } from '../../../_ui/marks';
import { Ago, HoursText, Moment } from '../../../_ui/moment';
import { Measured } from '../../../_ui/measured';
import { Notice } from '@/app/_ui/notice';
import { Card, FactList, PageTitle, Section } from '../../../_ui/page';
import { PhotoList } from '../../../_ui/photo-list';
import { RelatedWriteUps, SeenAgain } from '../../../_ui/seen-again';
import { Shell } from '../../../_ui/shell';
import { Tag } from '../../../_ui/tag';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { Acting } from '../../acts';
import { Eligibility } from '../../eligibility';
import { HouseOnDeferralPart } from '../../house-on-deferral';
import { History } from '../../history';
import { PREVENTIVE_CHOICES } from '../../preventive-choices';
import { Refused } from '../../refused';
import { RepeatNotice } from '../../repeat-notice';
import { severityOf } from '../../severity-of';
import { WorkPart } from '../../work-part';
import { closedWords, kindWords, partWords, stateWords, stationWords } from '../../words';
import { WriteUpActs } from '../../write-up-acts';
import styles from './write-up.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Write-up') };
}

/** One write-up whole: what was reported, what can be done, what 91.213 says, and everything signed so far. */
export default async function WriteUpPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/write-up/${encodeURIComponent(id)}`);
  const answer = await readWriteUp(ref, { discrepancyId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('Write-up')} />;
  const view = answer.value;
  const back = mayUse(who.roles, 'bench.read')
    ? { href: '/bench', label: t('Bench') }
    : { href: '/', label: t('Start') };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        side={<Standing view={view} />}
        lead={
          <>
            {mayUse(who.roles, 'bench.read') ? (
              <Link href={`/bench/aircraft/${view.aircraftId}`}>{view.registration}</Link>
            ) : (
              view.registration
            )}
            , {view.typeName}
          </>
        }
      >
        {view.summary.number} {view.summary.title}
      </PageTitle>
      {view.repeat && <RepeatNotice repeat={view.repeat} zone={view.zone} />}
      <Reported view={view} />
      {view.observations.length > 0 && (
        <Section title={t('Seen again')}>
          <Card>
            <SeenAgain observations={view.observations} zone={view.zone} units={view.units} from="bench" />
          </Card>
        </Section>
      )}
      {view.eligibility && (
        <Section title={t('Why this severity')}>
          <Card>
            <VerdictLines lines={view.reasons} />
          </Card>
        </Section>
      )}
      <Acting>
        {view.work.length > 0 && (
          <Section title={t('Work')}>
            {view.work.map((work) => (
              <WorkPart key={work.id} view={view} work={work} roles={who.roles} items={PREVENTIVE_CHOICES} />
            ))}
          </Section>
        )}
        <Section title={t('What can be done')} id="acts">
          <WriteUpActs view={view} roles={who.roles} items={PREVENTIVE_CHOICES} />
        </Section>
        {view.eligibility && (
          <Section title={t('May it be deferred? 14 CFR 91.213')} id="eligibility">
            {view.deferral && view.deferral.doesNotCount.length > 0 && (
              <Notice tone="red" title={t('The deferral carried over does not count.')}>
                <VerdictLines lines={view.deferral.doesNotCount} />
                <p>{t('Deferring it anew ends it; the record says why.')}</p>
              </Notice>
            )}
            <Eligibility report={view.eligibility} />
            <HouseOnDeferralPart found={view.houseOnDeferral} />
          </Section>
        )}
        <Section title={t('History')}>
          <History view={view} />
        </Section>
      </Acting>
    </Shell>
  );
}

/** How bad it is, as long as it is open. */
function Standing({ view: { summary } }: { view: WriteUpView }) {
  const t = useWords();
  return summary.state === 'closed' ? (
    <Tag tone="grey" shape="tick" size="large">
      {t('Closed')}
    </Tag>
  ) : (
    <SeverityMark severity={severityOf(summary.severity)} size="large" />
  );
}

/** What the reporter saw, in their own words, with what was measured and photographed. */
function Reported({ view }: { view: WriteUpView }) {
  const t = useWords();
  const { summary, zone } = view;
  return (
    <Card>
      <blockquote className={styles.words}>{summary.words}</blockquote>
      {summary.carried && (
        <p>
          <CarriedMark mark={summary.carried} />
        </p>
      )}
      <RelatedWriteUps earlier={view.earlier} later={view.later} from="bench" />
      <Measured measurements={view.measurements} units={view.units} />
      <Photos view={view} />
      <FactList
        facts={[
          {
            name: t('Where'),
            value: summary.place
              ? `${stationWords(t, summary.station)}: ${summary.place}`
              : stationWords(t, summary.station),
          },
          { name: t('Kind'), value: kindWords(t, summary.kind) },
          { name: t('System'), value: view.jascLabel },
          { name: t('Part'), value: view.part ? partWords(t, view.part) : t('Not known yet') },
          { name: t('Equipment'), value: equipmentSaid(t, view) },
          { name: t('Found'), value: <Moment at={view.foundAt} zone={zone} /> },
          { name: t('Reported'), value: t('by {reportedBy}', { reportedBy: summary.reportedBy }) },
          { name: t('Open since'), value: <Ago at={summary.openedAt} now={view.asOf} /> },
          { name: t('Total time in service'), value: <HoursText tenths={view.ttisTenths} /> },
          { name: t('State'), value: <State view={view} /> },
          ...summary.placards.map((placard) => ({
            name: placard.placed ? t('Placard up') : t('Placard owed'),
            value: `${placard.wording}: ${placard.location}`,
          })),
        ]}
      />
    </Card>
  );
}

function State({ view: { summary } }: { view: WriteUpView }) {
  const t = useWords();
  if (summary.closedHow) return <>{closedWords(t, summary.closedHow)}</>;
  return summary.state === 'deferred' ? (
    <Tag tone="blue" size="small">
      {t('Deferred')}
    </Tag>
  ) : (
    <>{stateWords(t, summary.state)}</>
  );
}

function equipmentSaid(t: Translate, { equipment, equipmentId, inoperativeCount }: WriteUpView): string {
  const item = equipment.find((one) => one.id === equipmentId);
  if (!item) return t('None named');
  return inoperativeCount === null
    ? t('{name}, {installed} installed; how many do not work: not known', {
        name: item.name,
        installed: item.installed,
      })
    : t('{name}: {inoperativeCount} of {installed} not working', {
        name: item.name,
        inoperativeCount,
        installed: item.installed,
      });
}

function Photos({ view: { summary } }: { view: WriteUpView }) {
  const t = useWords();
  const { photos, reportedBy, title } = summary;
  return (
    <PhotoList
      photos={photos}
      from="bench"
      alt={(number) =>
        t('{number} of {photos}, by {reportedBy}: {title}', {
          number,
          photos: photos.length,
          reportedBy,
          title,
        })
      }
    />
  );
}
