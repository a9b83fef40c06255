import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import Link from '@/app/_ui/link';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '../../_parts/office-nav';
import { mayUse } from '@/lib/access/policy';
import { emptyRule } from '@/lib/house-rules/form';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';
import { PROBLEMS } from '@/lib/problems';
import { type HouseKind } from '@/lib/rules/house/house-rule';
import { HOUSE_KIND_KEYS, HOUSE_KINDS } from '@/lib/rules/house/kinds';
import { choicesFor } from '../choices-for';
import { RuleForm } from '../rule-form';
import styles from '../rules.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Set a rule of the house') };
}

interface Props {
  searchParams: Promise<{ kind?: string | string[] }>;
}

const isKind = (text: unknown): text is HouseKind => HOUSE_KIND_KEYS.some((kind) => kind === text);

/** First the kind is chosen, each with what it does; then its settings. */
export default async function SetRulePage({ searchParams }: Props) {
  const t = await words();
  const { ref, who } = await requireActor('/office/rules/set');
  const title = t('Set a rule of the house');
  if (!mayUse(who.roles, 'house-rule.set')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  const { kind } = await searchParams;
  if (!isKind(kind)) {
    return (
      <Shell who={who}>
        <PageTitle
          back={{ href: '/office/rules', label: t('Rules of the house') }}
          lead={t(
            'Choose what it is about. These are common practice of schools; the law asks for none of them.',
          )}
        >
          {title}
        </PageTitle>
        <OfficeNav at="rules" />
        <ul className={`${styles.kinds} ${styles.body}`}>
          {HOUSE_KIND_KEYS.map((key) => (
            <li key={key} className={styles.kind}>
              <Link href={`/office/rules/set?kind=${key}`}>{t(HOUSE_KINDS[key].title)}</Link>
              <p>{t(HOUSE_KINDS[key].explains)}</p>
              <p className={styles.soft}>
                {t('Reaches: {reaches}', { reaches: t(HOUSE_KINDS[key].reaches) })}
              </p>
            </li>
          ))}
        </ul>
      </Shell>
    );
  }
  const result = await readHouseRules(ref, {});
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/rules/set', label: t('All kinds of rules') }}
        lead={t(HOUSE_KINDS[kind].explains)}
      >
        {t(HOUSE_KINDS[kind].title)}
      </PageTitle>
      <OfficeNav at="rules" />
      <div className={styles.body}>
        <p className={styles.soft}>{t('Reaches: {reaches}', { reaches: t(HOUSE_KINDS[kind].reaches) })}</p>
        <RuleForm kind={kind} start={emptyRule(kind)} of={null} choices={choicesFor(t, result.value)} />
      </div>
    </Shell>
  );
}
