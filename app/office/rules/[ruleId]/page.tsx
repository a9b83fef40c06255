import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { notFound } from 'next/navigation';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '../../_parts/office-nav';
import { mayUse } from '@/lib/access/policy';
import { typedOf } from '@/lib/house-rules/form';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';
import { PROBLEMS } from '@/lib/problems';
import { HOUSE_KINDS } from '@/lib/rules/house/kinds';
import { choicesFor } from '../choices-for';
import { EndRule } from '../end-rule';
import { RuleForm } from '../rule-form';
import { RuleShown } from '../rule-shown';
import styles from '../rules.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Change a rule of the house') };
}

interface Props {
  params: Promise<{ ruleId: string }>;
}

/** One rule: its versions, a new one, its end. */
export default async function RulePage({ params }: Props) {
  const t = await words();
  const { ruleId } = await params;
  const { ref, who } = await requireActor(`/office/rules/${ruleId}`);
  const title = t('Change a rule of the house');
  if (!mayUse(who.roles, 'house-rule.set')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  const result = await readHouseRules(ref, {});
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  const { inForce, ended, zone } = result.value;
  const rule = [...inForce, ...ended].find((one) => one.ruleId === ruleId);
  if (!rule) notFound();
  const { setting, reach, version, holds } = rule.newest;
  return (
    <Shell who={who}>
      <PageTitle back={{ href: '/office/rules', label: t('Rules of the house') }}>
        {setting.kind === 'unreadable' ? title : t(HOUSE_KINDS[setting.kind].title)}
      </PageTitle>
      <OfficeNav at="rules" />
      <div className={styles.body}>
        <RuleShown rule={rule} zone={zone} />
      </div>
      {setting.kind !== 'unreadable' && (
        <Section title={holds ? t('A new version') : t('Set it again')}>
          <RuleForm
            key={version}
            kind={setting.kind}
            start={typedOf(setting, reach)}
            of={{ ruleId, seenVersion: version }}
            choices={choicesFor(t, result.value)}
          />
        </Section>
      )}
      {holds && (
        <Section title={t('End it')}>
          <EndRule ruleId={ruleId} version={version} />
        </Section>
      )}
    </Shell>
  );
}
