import { Ago, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type DeliveryView, type WebhookView } from '@/lib/feeds/read-feeds';
import { EndWebhook, SendAgain } from './ends';
import styles from './feeds.module.css';

/** Webhooks with what was last told; what was given up stands first. */
export function WebhookList({ webhooks, asOf }: { webhooks: readonly WebhookView[]; asOf: string }) {
  return (
    <ul className={styles.list}>
      {webhooks.map((webhook) => (
        <li key={webhook.id} className={styles.item}>
          <div className={styles.head}>
            <h3>{webhook.name}</h3>
            {webhook.endedAt ? (
              <Tag tone="grey" shape="cross" size="small">
                Ended
              </Tag>
            ) : (
              <Standing webhook={webhook} />
            )}
          </div>
          <p className={styles.address}>{webhook.url}</p>
          <p className={styles.soft}>
            Told of {webhook.events.join(', ')}. Added by {webhook.addedBy},{' '}
            <Moment at={webhook.addedAt} zone="UTC" />.
          </p>
          {webhook.deliveries.length > 0 && (
            <ul className={styles.deliveries} aria-label={`Last told to ${webhook.name}`}>
              {webhook.deliveries.map((delivery) => (
                <li key={delivery.id}>
                  <Delivery delivery={delivery} asOf={asOf} mayAgain={webhook.endedAt === null} />
                </li>
              ))}
            </ul>
          )}
          {!webhook.endedAt && <EndWebhook id={webhook.id} name={webhook.name} />}
        </li>
      ))}
    </ul>
  );
}

function Standing({ webhook: { givenUp, waiting } }: { webhook: WebhookView }) {
  if (givenUp > 0) {
    return (
      <Tag tone="amber" size="small">
        {givenUp} given up
      </Tag>
    );
  }
  return (
    <Tag tone="blue" size="small">
      {waiting > 0 ? `${waiting} waiting` : 'Works'}
    </Tag>
  );
}

function Delivery(props: { delivery: DeliveryView; asOf: string; mayAgain: boolean }) {
  const { delivery, asOf, mayAgain } = props;
  const { event, state, tries, trouble, madeAt } = delivery;
  return (
    <>
      <p>
        <b>{event}</b> <Ago at={madeAt} now={asOf} />: {STATES[state]}
        {tries > 1 && `, ${tries} tries`}
      </p>
      {trouble && <p className={styles.soft}>{trouble}</p>}
      {state === 'given-up' && mayAgain && <SendAgain id={delivery.id} name={event} />}
    </>
  );
}

const STATES = { waiting: 'waiting', sent: 'sent', 'given-up': 'given up' } as const;
