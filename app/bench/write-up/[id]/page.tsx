import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readWriteUp, type WriteUpView } from '@/lib/determinations/read-write-up';
import { requireActor } from '../../../_session/actor-ref';
import Link from '../../../_ui/link';
import { SeverityMark } from '../../../_ui/marks';
import { Ago, HoursText, Moment } from '../../../_ui/moment';
import { Measured } from '../../../_ui/measured';
import { Card, FactList, PageTitle, Section } from '../../../_ui/page';
import { PhotoList } from '../../../_ui/photo-list';
import { RelatedWriteUps, SeenAgain } from '../../../_ui/seen-again';
import { Shell } from '../../../_ui/shell';
import { Tag } from '../../../_ui/tag';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { Acting } from '../../acts';
import { Eligibility } from '../../eligibility';
import { History } from '../../history';
import { PREVENTIVE_CHOICES } from '../../preventive-choices';
import { Refused } from '../../refused';
import { RepeatNotice } from '../../repeat-notice';
import { severityOf } from '../../severity-of';
import { WorkPart } from '../../work-part';
import { closedWords, kindWords, partWords, stateWords, stationWords } from '../../words';
import { WriteUpActs } from '../../write-up-acts';
import styles from './write-up.module.css';

export const metadata: Metadata = { title: 'Write-up' };

/** One write-up whole: what was reported, what can be done, what 91.213 says, and everything signed so far. */
export default async function WriteUpPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/write-up/${encodeURIComponent(id)}`);
  const answer = await readWriteUp(ref, { discrepancyId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title="Write-up" />;
  const view = answer.value;
  const back = mayUse(who.roles, 'bench.read')
    ? { href: '/bench', label: 'Bench' }
    : { href: '/', label: 'Start' };
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
        <Section title="Seen again">
          <Card>
            <SeenAgain observations={view.observations} zone={view.zone} from="bench" />
          </Card>
        </Section>
      )}
      {view.eligibility && (
        <Section title="Why this severity">
          <Card>
            <VerdictLines lines={view.reasons} />
          </Card>
        </Section>
      )}
      <Acting>
        {view.work.length > 0 && (
          <Section title="Work">
            {view.work.map((work) => (
              <WorkPart key={work.id} view={view} work={work} roles={who.roles} items={PREVENTIVE_CHOICES} />
            ))}
          </Section>
        )}
        <Section title="What can be done" id="acts">
          <WriteUpActs view={view} roles={who.roles} items={PREVENTIVE_CHOICES} />
        </Section>
        {view.eligibility && (
          <Section title="May it be deferred? 14 CFR 91.213" id="eligibility">
            <Eligibility report={view.eligibility} />
          </Section>
        )}
        <Section title="History">
          <History view={view} />
        </Section>
      </Acting>
    </Shell>
  );
}

/** How bad it is, as long as it is open. */
function Standing({ view: { summary } }: { view: WriteUpView }) {
  return summary.state === 'closed' ? (
    <Tag tone="grey" shape="tick" size="large">
      Closed
    </Tag>
  ) : (
    <SeverityMark severity={severityOf(summary.severity)} size="large" />
  );
}

/** What the reporter saw, in their own words, with what was measured and photographed. */
function Reported({ view }: { view: WriteUpView }) {
  const { summary, zone } = view;
  return (
    <Card>
      <blockquote className={styles.words}>{summary.words}</blockquote>
      <RelatedWriteUps earlier={view.earlier} later={view.later} from="bench" />
      <Measured measurements={view.measurements} />
      <Photos view={view} />
      <FactList
        facts={[
          {
            name: 'Where',
            value: summary.place
              ? `${stationWords(summary.station)}: ${summary.place}`
              : stationWords(summary.station),
          },
          { name: 'Kind', value: kindWords(summary.kind) },
          { name: 'System', value: view.jascLabel },
          { name: 'Part', value: view.part ? partWords(view.part) : 'Not known yet' },
          { name: 'Equipment', value: equipmentSaid(view) },
          { name: 'Found', value: <Moment at={view.foundAt} zone={zone} /> },
          { name: 'Reported', value: `by ${summary.reportedBy}` },
          { name: 'Open since', value: <Ago at={summary.openedAt} now={view.asOf} /> },
          { name: 'Total time in service', value: <HoursText tenths={view.ttisTenths} /> },
          { name: 'State', value: <State view={view} /> },
          ...summary.placards.map((placard) => ({
            name: placard.placed ? 'Placard up' : 'Placard owed',
            value: `${placard.wording}: ${placard.location}`,
          })),
        ]}
      />
    </Card>
  );
}

function State({ view: { summary } }: { view: WriteUpView }) {
  if (summary.closedHow) return <>{closedWords(summary.closedHow)}</>;
  return summary.state === 'deferred' ? (
    <Tag tone="blue" size="small">
      Deferred
    </Tag>
  ) : (
    <>{stateWords(summary.state)}</>
  );
}

function equipmentSaid({ equipment, equipmentId, inoperativeCount }: WriteUpView): string {
  const item = equipment.find((one) => one.id === equipmentId);
  if (!item) return 'None named';
  return inoperativeCount === null
    ? `${item.name}, ${item.installed} installed; how many do not work: not known`
    : `${item.name}: ${inoperativeCount} of ${item.installed} not working`;
}

function Photos({ view: { summary } }: { view: WriteUpView }) {
  const { photos, reportedBy, title } = summary;
  return (
    <PhotoList
      photos={photos}
      from="bench"
      alt={(number) => `${number} of ${photos.length}, by ${reportedBy}: ${title}`}
    />
  );
}
