import { Say } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { notFound } from 'next/navigation';
import { requireActor } from '@/app/_session/actor-ref';
import Link from '@/app/_ui/link';
import { DateText } from '@/app/_ui/moment';
import { Card, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { mayUse } from '@/lib/access/policy';
import { readPermitChoices } from '@/lib/permits/read-permit';
import { Refused } from '../../refused';
import { Application } from '../application';
import styles from '../permit.module.css';
import { STANDING } from '../words';
import { RecordPermitForm } from './record-permit-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Special flight permit') };
}

/** The facts for an application, and the record of the paper that came back. */
export default async function NewPermitPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const t = await words();
  const { aircraft } = await props.searchParams;
  if (typeof aircraft !== 'string') notFound();
  const { ref, who } = await requireActor(`/bench/permit/new?aircraft=${encodeURIComponent(aircraft)}`);
  const read = await readPermitChoices(ref, { aircraftId: aircraft });
  if (!read.ok) return <Refused who={who} problem={read.problem} title={t('Special flight permit')} />;
  const choices = read.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: `/bench/aircraft/${choices.aircraftId}`, label: choices.registration }}
        lead={t(
          'For an aircraft that may not meet its requirements but is capable of safe flight, 14 CFR 21.197(a). The FAA issues it; this records what it says.',
        )}
      >
        {t('Special flight permit for {registration}', { registration: choices.registration })}
      </PageTitle>
      {choices.recorded.length > 0 && (
        <Section title={t('Recorded already')}>
          <ul className={styles.plain}>
            {choices.recorded.map(({ id, reference, goodThrough, standing }) => (
              <li key={id}>
                <Say
                  text="<link>{reference}</link>, good through"
                  parts={{ link: <Link href={`/bench/permit/${id}`} /> }}
                  values={{ reference }}
                />{' '}
                <DateText date={goodThrough} />{' '}
                <Tag tone={STANDING[standing].tone} shape={STANDING[standing].shape} size="small">
                  {t(STANDING[standing].word)}
                </Tag>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section title={t('Facts for the application')}>
        <Application aircraft={choices} facts={choices.application} />
      </Section>
      <Section title={t('Record the permit')}>
        <Card>
          {mayUse(who.roles, 'permit.record') ? (
            <RecordPermitForm choices={choices} />
          ) : (
            <p>{t('Recording a permit is for mechanics and managers.')}</p>
          )}
        </Card>
      </Section>
    </Shell>
  );
}
