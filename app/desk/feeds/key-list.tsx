import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { Ago, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type KeyView } from '@/lib/feeds/read-feeds';
import { EndKey } from './ends';
import styles from './feeds.module.css';

/** Keys, those that work first. A key that has ended stays to be seen. */
export function KeyList({ keys, asOf }: { keys: readonly KeyView[]; asOf: string }) {
  const t = useWords();
  return (
    <ul className={styles.list}>
      {keys.map((key) => (
        <li key={key.id} className={styles.item}>
          <div className={styles.head}>
            <h3>{key.name}</h3>
            {key.works ? (
              <Tag tone="blue" size="small">
                {t('Works')}
              </Tag>
            ) : (
              <Tag tone="grey" shape="cross" size="small">
                {standing(t, key)}
              </Tag>
            )}
          </div>
          <p>
            <Say
              text="<code>{prefix}…</code> opens {scopes}"
              parts={{ code: <code /> }}
              values={{ prefix: key.prefix, scopes: key.scopes.join(', ') }}
            />
          </p>
          <p className={styles.soft}>
            <Say
              text="Issued <moment/>. Acts for {actsFor}."
              parts={{ moment: <Moment at={key.issuedAt} zone="UTC" /> }}
              values={{ actsFor: key.actsFor }}
            />{' '}
            {key.endedAt && (
              <>
                <Say
                  text="Ended <moment/>."
                  parts={{ moment: <Moment at={key.endedAt} zone="UTC" /> }}
                />{' '}
              </>
            )}
            {!key.endedAt && key.expiresAt && (
              <>
                <Say
                  text="Good until <moment/>."
                  parts={{ moment: <Moment at={key.expiresAt} zone="UTC" /> }}
                />{' '}
              </>
            )}
            {key.lastUsedAt ? (
              <>
                <Say text="Last used <ago/>." parts={{ ago: <Ago at={key.lastUsedAt} now={asOf} /> }} />
              </>
            ) : (
              t('Never used.')
            )}
          </p>
          {!key.endedAt && <EndKey id={key.id} name={key.name} />}
        </li>
      ))}
    </ul>
  );
}

function standing(t: Translate, { endedAt, hasLeft }: KeyView): string {
  if (endedAt) return t('Ended');
  return hasLeft ? t('Its person has left') : t('Over');
}
