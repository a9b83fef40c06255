import { useEnglish, useWords } from '#words';
import { type ReactNode } from 'react';
import { HouseShape } from '@/app/_ui/house-mark';
import { Moment } from '@/app/_ui/moment';
import { Card } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { type HouseRuleView, type HouseVersionView } from '@/lib/house-rules/read-house-rules';
import styles from './rules.module.css';

/** One rule of the house: what it asks, of which aircraft, who set it, when and why, and every version before. */
export function RuleShown(props: { rule: HouseRuleView; zone: string; acts?: ReactNode }) {
  const t = useWords();
  const english = useEnglish();
  const { rule, zone, acts } = props;
  const { newest, earlier } = rule;
  return (
    <Card>
      <div className={styles.head} id={`rule-${rule.ruleId}`}>
        <p className={styles.asks}>
          <HouseShape /> <span {...english}>{newest.asks}</span>
        </p>
        {!newest.holds && (
          <Tag tone="grey" shape="cross" size="small">
            {t('Ended')}
          </Tag>
        )}
      </div>
      <p>{forWhich(t, newest)}</p>
      <Version version={newest} zone={zone} />
      {earlier.length > 0 && (
        <details className={styles.fold}>
          <summary>
            {t('{count, plural, one {One version} other {# versions}} before', { count: earlier.length })}
          </summary>
          <ol className={styles.versions} reversed start={newest.version - 1}>
            {earlier.map((version) => (
              <li key={version.version}>
                <p {...english}>{version.holds ? version.asks : t('Ended')}</p>
                <p>{forWhich(t, version)}</p>
                <Version version={version} zone={zone} />
              </li>
            ))}
          </ol>
        </details>
      )}
      {acts}
    </Card>
  );
}

function Version({ version, zone }: { version: HouseVersionView; zone: string }) {
  const t = useWords();
  return (
    <p className={styles.soft}>
      {version.holds
        ? t('Version {version}, set by {by}', { version: version.version, by: version.by })
        : t('Ended by {by}', { by: version.by })}
      , <Moment at={version.at} zone={zone} />. {version.why}
    </p>
  );
}

const forWhich = (t: ReturnType<typeof useWords>, { named }: HouseVersionView): string =>
  named === null ? t('For the whole fleet.') : t('Only for {named}.', { named: named.join(', ') });
