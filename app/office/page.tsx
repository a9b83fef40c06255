import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { ComesBack } from '@/app/_ui/comes-back';
import { Tag } from '@/app/_ui/tag';
import { Shell } from '@/app/_ui/shell';
import { readSetUp } from '@/lib/set-up/read-set-up';
import { LackingShown } from './_parts/lacking';
import { OfficeNav } from './_parts/office-nav';
import { CallStep } from './call-step';
import styles from './office.module.css';
import { SchoolForm } from './school-form';
import { Steps } from './steps';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Office') };
}

/** The path of setting up, and what the engine still lacks. It can be left and taken up again at any step. */
export default async function OfficePage() {
  const t = await words();
  const { ref, who } = await requireActor('/office');
  const result = await readSetUp(ref, {});
  if (!result.ok) {
    return (
      <Shell who={who}>
        <PageTitle>{t('Office')}</PageTitle>
        {(result.problem.code === 'try_again' || result.problem.code === 'bug') && <ComesBack />}
        <ProblemNotice problem={result.problem} />
      </Shell>
    );
  }
  const { isOpen, school, steps, facts, lacking } = result.value;
  const missing = lacking.reduce((sum, of) => sum + of.lacking.length, 0);
  const left = steps.filter(({ state }) => state !== 'done').length;
  const isComplete = left === 0 && missing === 0;
  return (
    <Shell who={who}>
      <PageTitle
        lead={t('Setting up is done when the engine stops asking. Leave at any step; what is entered stays.')}
      >
        {t('Office')}
      </PageTitle>
      <OfficeNav at="set-up" />
      <div className={styles.page}>
        {missing > 0 && (
          <p className={styles.asks}>
            <Tag tone="grey">{t('Not complete')}</Tag>
            <a href="#lacking">
              {t(
                'The engine still lacks {n, plural, one {# fact} other {# facts}} about {aircraft, plural, one {# aircraft} other {# aircraft}}.',
                {
                  n: missing,
                  aircraft: lacking.filter((of) => of.lacking.length > 0).length,
                },
              )}
            </a>
          </p>
        )}
        {isOpen && isComplete && (
          <Notice tone="blue" title={t('Everything is set up.')}>
            <p>{t('The engine asks for nothing more, and every step is done.')}</p>
            <CallStep
              step="all"
              done
              name={t('Setting up')}
              words={t('Done: start at the desk from now on')}
              weight="main"
              then="/desk"
            />
          </Notice>
        )}
        <Section title={t('Step by step')}>
          <Steps steps={steps} facts={facts} />
        </Section>
        <Section title={t('What the engine still lacks')} id="lacking">
          <LackingShown aircraft={lacking} />
        </Section>
        <Section title={t('The school or club')} id="school">
          <SchoolForm name={school.name} part141={school.part141} />
        </Section>
        {isOpen && !isComplete && (
          <Section title={t('Leave it for now')}>
            <p className={styles.soft}>
              {t(
                'You start here until setting up is done. You can also start at the desk from now on; this page stays under Office.',
              )}
            </p>
            <CallStep
              step="all"
              done
              name={t('Setting up')}
              words={t('Start at the desk from now on')}
              then="/desk"
            />
          </Section>
        )}
      </div>
    </Shell>
  );
}
