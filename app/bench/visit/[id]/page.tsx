import { useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '../../../_session/actor-ref';
import { DateText, Moment } from '../../../_ui/moment';
import { Notice } from '../../../_ui/notice';
import { EmptyState, FactList, PageTitle, Section } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { Tag } from '../../../_ui/tag';
import { readVisitChoices } from '@/lib/visits/read-choices';
import { readVisit, type VisitView } from '@/lib/visits/read-visit';
import { Acting, ActList } from '../../acts';
import { PaperLink } from '../../paper-link';
import { Refused } from '../../refused';
import styles from '../visit.module.css';
import { RequirementItem, WriteUpItem } from './items';
import { VisitActs } from './visit-acts';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Visit') };
}

/** One visit: what is still to do, what is done, and the papers of it. */
export default async function VisitPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/visit/${id}`);
  const read = await readVisit(ref, { visitId: id });
  if (!read.ok) return <Refused who={who} problem={read.problem} title={t('Visit')} />;
  const visit = read.value;
  const choices = visit.closedAt ? null : await readVisitChoices(ref, { aircraftId: visit.aircraftId });
  const open = [...visit.writeUps, ...visit.requirements].filter((item) => !item.done).length;
  const all = visit.writeUps.length + visit.requirements.length;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/bench', label: t('Bench') }}
        lead={visit.words === '' ? undefined : visit.words}
        side={<VisitState visit={visit} />}
      >
        {visit.registration}: {visit.title}
      </PageTitle>
      <Facts visit={visit} done={all - open} all={all} />
      {visit.closedAt !== null && open > 0 && (
        <div className={styles.apart}>
          <Notice tone="blue" title={t('Closed with {open} of {all} not done.', { open, all })}>
            <p>{t('What is not done stays open in the queue and in what falls due.')}</p>
          </Notice>
        </div>
      )}
      <Acting>
        <Items visit={visit} done={false} title={t('Still to do')} empty={t('Nothing is left to do.')} />
        <Items visit={visit} done title={t('Done')} empty={t('Nothing is done yet.')} />
        {choices?.ok && (
          <div className={`${styles.apart} not-on-paper`}>
            <Section title={t('What you can do')}>
              <ActList>
                <VisitActs visit={visit} choices={choices.value} />
              </ActList>
            </Section>
          </div>
        )}
      </Acting>
      <Papers visit={visit} />
    </Shell>
  );
}

const VisitState = ({ visit: { closedAt } }: { visit: VisitView }) => {
  const t = useWords();
  return closedAt === null ? (
    <Tag tone="blue">{t('Open')}</Tag>
  ) : (
    <Tag tone="grey" shape="tick">
      {t('Closed')}
    </Tag>
  );
};

function Facts({ visit, done, all }: { visit: VisitView; done: number; all: number }) {
  const t = useWords();
  return (
    <FactList
      facts={[
        { name: t('Base'), value: visit.baseIdent },
        {
          name: t('Planned for'),
          value: visit.plannedOn ? <DateText date={visit.plannedOn} /> : t('No day set'),
        },
        { name: t('Next flight'), value: visit.nextFlight ?? t('None planned') },
        { name: t('Done'), value: t('{done} of {all}', { done, all }) },
        {
          name: t('Opened'),
          value: (
            <>
              <Moment at={visit.openedAt} zone={visit.zone} />, {visit.openedBy}
            </>
          ),
        },
        ...(visit.closedAt === null
          ? []
          : [
              {
                name: t('Closed'),
                value: (
                  <>
                    <Moment at={visit.closedAt} zone={visit.zone} />, {visit.closedBy}
                  </>
                ),
              },
            ]),
      ]}
    />
  );
}

function Items(props: { visit: VisitView; done: boolean; title: string; empty: string }) {
  const { visit, done, title, empty } = props;
  const writeUps = visit.writeUps.filter((item) => item.done === done);
  const requirements = visit.requirements.filter((item) => item.done === done);
  return (
    <Section title={title}>
      {writeUps.length + requirements.length === 0 ? (
        <EmptyState title={empty} />
      ) : (
        <ul className={styles.items}>
          {writeUps.map((item) => (
            <WriteUpItem key={item.itemId} item={item} />
          ))}
          {requirements.map((item) => (
            <RequirementItem key={item.itemId} item={item} aircraftId={visit.aircraftId} />
          ))}
        </ul>
      )}
    </Section>
  );
}

function Papers({ visit }: { visit: VisitView }) {
  const t = useWords();
  const entries = visit.writeUps.flatMap(({ number, signedWorkIds }) =>
    signedWorkIds.map((workId) => ({ number, workId })),
  );
  return (
    <div className={`${styles.apart} not-on-paper`}>
      <Section title={t('Papers')}>
        <ul className={styles.papers}>
          {entries.map(({ number, workId }) => (
            <li key={workId}>
              <PaperLink href={`/api/papers/entry?work=${workId}`}>
                {t('Logbook entry for {number}', { number })}
              </PaperLink>
            </li>
          ))}
          <li>
            <PaperLink href={`/api/papers/placards?aircraft=${visit.aircraftId}`}>
              {t('Placards of {registration}', { registration: visit.registration })}
            </PaperLink>
          </li>
          <li>
            <PaperLink href={`/api/papers/deferrals?aircraft=${visit.aircraftId}`}>
              {t('Deferral list of {registration}', { registration: visit.registration })}
            </PaperLink>
          </li>
        </ul>
      </Section>
    </div>
  );
}
