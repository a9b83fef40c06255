import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readInspection, type InspectionView } from '@/lib/inspections/read-inspection';
import { formatTenths } from '@/lib/rules/hours';
import { RUN_UP_CHECKS } from '@/lib/rules/part-43/43-15-performance';
import { requireActor } from '../../../_session/actor-ref';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { Moment } from '../../../_ui/moment';
import { Card, PageTitle, Section } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { Tag, type Tone } from '../../../_ui/tag';
import { Act, Acting, ActList } from '../../acts';
import { PaperLink } from '../../paper-link';
import { Refused } from '../../refused';
import { InspectionEntryForm } from '../entry-form';
import { GiveUpInspectionForm } from '../give-up-form';
import styles from '../inspection.module.css';
import { APPENDIX_D, inspectionName, nextAsked } from '../words';
import { DeferredItems } from './deferred-items';
import { EntryAsWritten } from './entry-as-written';
import { OpenWriteUps } from './open-write-ups';
import { Parts } from './parts';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Inspection') };
}

/** One inspection: what is asked next, the entry, what is deferred and open, the list, and a signature for each logbook. */
export default async function InspectionPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/inspection/${encodeURIComponent(id)}`);
  const answer = await readInspection(ref, { inspectionId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('Inspection')} />;
  const view = answer.value;
  const isOpen = view.state === 'begun' || view.state === 'entered';
  const acts = isOpen && mayUse(who.roles, 'inspection.sign');
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: `/bench/aircraft/${view.aircraftId}`, label: view.registration }}
        side={<State view={view} />}
        lead={`${view.registration}, ${view.typeName}`}
      >
        {inspectionName(t, view.kind)}
      </PageTitle>
      <Card edge={isOpen ? 'amber' : undefined}>
        <p>
          <b>{nextAsked(t, view)}</b>
        </p>
        <p className={styles.soft}>
          <Say
            text="Begun <moment/> by {begunBy}. Answers: {answers}."
            parts={{ moment: <Moment at={view.begunAt} zone={view.zone} /> }}
            values={{ begunBy: view.begunBy, answers: view.answers.map(({ name }) => name).join(', ') }}
          />
          {isOpen && t(' The aircraft does not fly until every part is signed (14 CFR 91.407(a)).')}
        </p>
        <details>
          <summary className={styles.fold}>{t('The groups of Appendix D, as a reminder')}</summary>
          <ol type="a" className={styles.groups}>
            {APPENDIX_D.map((group) => (
              <li key={group}>{group}</li>
            ))}
          </ol>
          <p className={styles.soft}>
            {t(
              'A reminder, not a checklist: use the maker’s or your own. Progressive inspections and inspection programmes, 14 CFR 43.11(a)(6) and (7), are not offered here.',
            )}
          </p>
        </details>
      </Card>
      <Acting>
        {view.state !== 'begun' && (
          <Section title={t('The entry')}>
            <EntryAsWritten view={view} />
          </Section>
        )}
        {acts && <EntryActs view={view} />}
        {isOpen && <DeferredItems view={view} acts={acts} />}
        {(isOpen || view.list) && <OpenWriteUps view={view} acts={acts} />}
        {view.state !== 'begun' && view.state !== 'given-up' && <Parts view={view} acts={acts} />}
        <Papers view={view} />
        {acts && nothingSigned(view) && (
          <Section title={t('Or not at all')}>
            <ActList>
              <Act title={t('Give up the inspection')} hint={t('Only while nothing of it is signed.')}>
                <GiveUpInspectionForm inspectionId={view.id} />
              </Act>
            </ActList>
          </Section>
        )}
      </Acting>
    </Shell>
  );
}

const nothingSigned = (view: InspectionView) => !view.list && view.parts.every(({ signed }) => !signed);

function EntryActs({ view }: { view: InspectionView }) {
  const t = useWords();
  if (view.parts.some(({ signed }) => signed)) return null;
  const onRecord =
    view.onRecordTenths === null
      ? t('not known')
      : t('{tenths} h', { tenths: formatTenths(view.onRecordTenths) });
  return (
    <Section title={view.state === 'begun' ? t('The entry') : t('Change it')} id="entry">
      <ActList>
        <Act
          title={view.state === 'begun' ? t('Write the entry') : t('Change the entry')}
          hint={t('Extent, checklist, engine run, date, total time in service.')}
        >
          <InspectionEntryForm
            inspectionId={view.id}
            entry={view.entry}
            onRecord={onRecord}
            checks={RUN_UP_CHECKS.map(({ key, name }) => ({ key, name }))}
          />
        </Act>
      </ActList>
    </Section>
  );
}

function State({ view }: { view: InspectionView }) {
  const t = useWords();
  const [tone, words]: readonly [Tone, string] =
    view.state === 'complete'
      ? view.parts.every(({ signed }) => signed?.airworthy)
        ? ['green', t('Complete, airworthy')]
        : ['red', t('Complete, not approved')]
      : view.state === 'given-up'
        ? ['grey', t('Given up')]
        : ['amber', t('Under way')];
  return (
    <Tag tone={tone} size="large">
      {words}
    </Tag>
  );
}

function Papers({ view }: { view: InspectionView }) {
  const t = useWords();
  const signed = view.parts.some((part) => part.signed);
  if (!signed && !view.list) return null;
  return (
    <Section title={t('To print')}>
      <ul className={styles.rows}>
        {signed && (
          <li>
            <PaperLink href={`/api/papers/inspection?id=${view.id}`}>{t('Logbook entries')}</PaperLink>
          </li>
        )}
        {view.list && (
          <li>
            <PaperLink href={`/api/papers/list?id=${view.list.id}`}>{t('List of discrepancies')}</PaperLink>
          </li>
        )}
        {view.deferred.length > 0 && (
          <li>
            <PaperLink href={`/api/papers/placards?aircraft=${view.aircraftId}`}>{t('Placards')}</PaperLink>
          </li>
        )}
      </ul>
      {view.list && (
        <p className={styles.soft}>
          <Say
            text="The list goes to the owner or operator, who keeps it until each item is repaired and approved <cite/>. <link>Aircraft</link>"
            parts={{
              cite: <Cite cite="14cfr91.417(b)(3)" plain />,
              link: <Link href={`/bench/aircraft/${view.aircraftId}`} />,
            }}
          />
        </p>
      )}
    </Section>
  );
}
