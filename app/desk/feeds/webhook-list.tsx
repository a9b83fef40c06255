import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { Ago, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type DeliveryView, type WebhookView } from '@/lib/feeds/read-feeds';
import { EndWebhook, SendAgain } from './ends';
import styles from './feeds.module.css';

/** Webhooks with what was last told; what was given up stands first. */
export function WebhookList({ webhooks, asOf }: { webhooks: readonly WebhookView[]; asOf: string }) {
  const t = useWords();
  return (
    <ul className={styles.list}>
      {webhooks.map((webhook) => (
        <li key={webhook.id} className={styles.item}>
          <div className={styles.head}>
            <h3>{webhook.name}</h3>
            {webhook.endedAt ? (
              <Tag tone="grey" shape="cross" size="small">
                {t('Ended')}
              </Tag>
            ) : (
              <Standing webhook={webhook} />
            )}
          </div>
          <p className={styles.address}>{webhook.url}</p>
          <p className={styles.soft}>
            <Say
              text="Told of {events}. Added by {addedBy}, <moment/>."
              parts={{ moment: <Moment at={webhook.addedAt} zone="UTC" /> }}
              values={{ events: webhook.events.join(', '), addedBy: webhook.addedBy }}
            />
          </p>
          {webhook.deliveries.length > 0 && (
            <ul className={styles.deliveries} aria-label={t('Last told to {name}', { name: webhook.name })}>
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
  const t = useWords();
  if (givenUp > 0) {
    return (
      <Tag tone="amber" size="small">
        {t('{givenUp} given up', { givenUp })}
      </Tag>
    );
  }
  return (
    <Tag tone="blue" size="small">
      {waiting > 0 ? t('{waiting} waiting', { waiting }) : t('Works')}
    </Tag>
  );
}

function Delivery(props: { delivery: DeliveryView; asOf: string; mayAgain: boolean }) {
  const t = useWords();
  const { delivery, asOf, mayAgain } = props;
  const { event, state, tries, trouble, madeAt } = delivery;
  return (
    <>
      <p>
        <b>{event}</b> <Ago at={madeAt} now={asOf} />: {t(STATES[state])}
        {tries > 1 && t(', {tries} tries', { tries })}
      </p>
      {trouble && <p className={styles.soft}>{trouble}</p>}
      {state === 'given-up' && mayAgain && <SendAgain id={delivery.id} name={event} />}
    </>
  );
}

const STATES = { waiting: 'waiting', sent: 'sent', 'given-up': said('given up') } as const;
