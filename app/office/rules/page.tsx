import { type ComponentProps } from 'react';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { Notice } from '@/app/_ui/notice';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '../_parts/office-nav';
import { mayUse } from '@/lib/access/policy';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';
import { RuleShown } from './rule-shown';
import { UnitsForm } from './units-form';
import styles from './rules.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Rules of the house') };
}

interface Props {
  searchParams: Promise<{ set?: string | string[] }>;
}

/** Where the operator is stricter than the law. */
export default async function HouseRulesPage({ searchParams }: Props) {
  const t = await words();
  const { ref, who } = await requireActor('/office/rules');
  const { set } = await searchParams;
  const result = await readHouseRules(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Rules of the house')} problem={result.problem} />;
  const { inForce, ended, zone, units } = result.value;
  const maySet = mayUse(who.roles, 'house-rule.set');
  return (
    <Shell who={who}>
      <PageTitle
        lead={t(
          'Stricter than the law, never looser: a rule of the house can only turn an answer to the worse. It counts from the moment it is set, for every answer and every release.',
        )}
        side={
          maySet && (
            <LinkButton href="/office/rules/set" weight="main">
              {t('Set a rule')}
            </LinkButton>
          )
        }
      >
        {t('Rules of the house')}
      </PageTitle>
      <OfficeNav at="rules" />
      {inForce.some(({ ruleId }) => ruleId === set) && (
        <Notice tone="blue" title={t('The rule is set.')}>
          <p>{t('Releases were asked about again; whoever holds one that is void now has been told.')}</p>
        </Notice>
      )}
      <Section title={t('In force')}>
        {inForce.length === 0 ? (
          <EmptyState title={t('No rule of the house is in force: the law alone decides.')}>
            {maySet && <p>{t('Many schools need none. If yours is stricter somewhere, set a rule.')}</p>}
          </EmptyState>
        ) : (
          <Rules rules={inForce} zone={zone} act={maySet ? t('Change or end') : null} />
        )}
      </Section>
      {ended.length > 0 && (
        <Section title={t('Ended')}>
          <details className={styles.fold}>
            <summary>
              {t('{count, plural, one {One rule} other {# rules}} ended', { count: ended.length })}
            </summary>
            <Rules rules={ended} zone={zone} act={maySet ? t('Set it again') : null} />
          </details>
        </Section>
      )}
      {mayUse(who.roles, 'operator.change') && (
        <Section title={t('Units')} id="units">
          <UnitsForm units={units} />
        </Section>
      )}
    </Shell>
  );
}

/** Rules with a way to each; `act` says what is done there, null where nobody may. */
function Rules(props: {
  rules: readonly ComponentProps<typeof RuleShown>['rule'][];
  zone: string;
  act: string | null;
}) {
  const { rules, zone, act } = props;
  return (
    <ul className={styles.rules}>
      {rules.map((rule) => (
        <li key={rule.ruleId}>
          <RuleShown
            rule={rule}
            zone={zone}
            acts={
              act && (
                <div>
                  <LinkButton href={`/office/rules/${rule.ruleId}`}>{act}</LinkButton>
                </div>
              )
            }
          />
        </li>
      ))}
    </ul>
  );
}
