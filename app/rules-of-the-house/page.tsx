import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { Caution } from '@/app/_ui/caution';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { RuleShown } from '@/app/office/rules/rule-shown';
import styles from '@/app/office/rules/rules.module.css';
import { Refused } from '@/app/desk/refused';
import { mayUse } from '@/lib/access/policy';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Rules of the house') };
}

/** The rules in force, for everybody who may meet one. */
export default async function RulesOfTheHousePage() {
  const t = await words();
  const { ref, who } = await requireActor('/rules-of-the-house');
  const result = await readHouseRules(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Rules of the house')} problem={result.problem} />;
  const { inForce, zone } = result.value;
  return (
    <Shell who={who}>
      <PageTitle
        lead={t(
          'Not law: here this operator is stricter than the law. Where one of them decides, the answer says so and names who set it.',
        )}
        side={
          mayUse(who.roles, 'house-rule.set') && (
            <LinkButton href="/office/rules">{t('Set, change or end rules')}</LinkButton>
          )
        }
      >
        {t('Rules of the house')}
      </PageTitle>
      {inForce.length === 0 ? (
        <EmptyState title={t('No rule of the house is in force: the law alone decides.')} />
      ) : (
        <ul className={styles.rules}>
          {inForce.map((rule) => (
            <li key={rule.ruleId}>
              <RuleShown rule={rule} zone={zone} />
            </li>
          ))}
        </ul>
      )}
      <Caution />
    </Shell>
  );
}
