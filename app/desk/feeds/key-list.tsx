import { Ago, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type KeyView } from '@/lib/feeds/read-feeds';
import { EndKey } from './ends';
import styles from './feeds.module.css';

/** Keys, those that work first. A key that has ended stays to be seen. */
export function KeyList({ keys, asOf }: { keys: readonly KeyView[]; asOf: string }) {
  return (
    <ul className={styles.list}>
      {keys.map((key) => (
        <li key={key.id} className={styles.item}>
          <div className={styles.head}>
            <h3>{key.name}</h3>
            {key.works ? (
              <Tag tone="blue" size="small">
                Works
              </Tag>
            ) : (
              <Tag tone="grey" shape="cross" size="small">
                {standing(key)}
              </Tag>
            )}
          </div>
          <p>
            <code>{key.prefix}…</code> opens {key.scopes.join(', ')}
          </p>
          <p className={styles.soft}>
            Issued <Moment at={key.issuedAt} zone="UTC" />. Acts for {key.actsFor}.{' '}
            {key.endedAt && (
              <>
                Ended <Moment at={key.endedAt} zone="UTC" />.{' '}
              </>
            )}
            {!key.endedAt && key.expiresAt && (
              <>
                Good until <Moment at={key.expiresAt} zone="UTC" />.{' '}
              </>
            )}
            {key.lastUsedAt ? (
              <>
                Last used <Ago at={key.lastUsedAt} now={asOf} />.
              </>
            ) : (
              'Never used.'
            )}
          </p>
          {!key.endedAt && <EndKey id={key.id} name={key.name} />}
        </li>
      ))}
    </ul>
  );
}

function standing({ endedAt, hasLeft }: KeyView): string {
  if (endedAt) return 'Ended';
  return hasLeft ? 'Its person has left' : 'Over';
}
