import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { EXPORTS } from '@/lib/feeds/export/read-set';
import { readFeeds } from '@/lib/feeds/read-feeds';
import { IN_ADDRESS, SCOPES } from '@/lib/feeds/scopes';
import { Refused } from '../refused';
import { AddWebhook } from './add-webhook';
import { Downloads } from './downloads';
import styles from './feeds.module.css';
import { IssueKey } from './issue-key';
import { KeyList } from './key-list';
import { WebhookList } from './webhook-list';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Feeds') };
}

/** What goes out to other programs: keys, the calendar, webhooks, and files of everything. */
export default async function FeedsPage() {
  const t = await words();
  const { ref, who } = await requireActor('/desk/feeds');
  const feeds = await readFeeds(ref, {});
  if (!feeds.ok) return <Refused who={who} title={t('Feeds')} problem={feeds.problem} />;
  const { asOf, keys, webhooks } = feeds.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t(
          'What other programs may read and are told, and everything that is kept here as files. Times on this page are UTC.',
        )}
      >
        {t('Feeds')}
      </PageTitle>

      <Section title={t('Keys')} id="keys">
        <p className={styles.words}>
          {t('A key lets a program ask as you, for what you choose here and never for more than your role.')}
        </p>
        <p>
          <a href="/api/v1/openapi.json" className={styles.link}>
            {t('What a program can ask (OpenAPI 3.1)')}
          </a>
        </p>
        {keys.length > 0 ? (
          <KeyList keys={keys} asOf={asOf} />
        ) : (
          <EmptyState title={t('No key has been issued.')} />
        )}
        <IssueKey />
      </Section>

      <Section title={t('Calendar of maintenance due')} id="calendar">
        <p className={styles.words}>
          {t(
            'Issue a key with “{scopes}” alone. You then see an address for your calendar program. The key stands in the address, because calendar programs cannot send it any other way: whoever has the address sees what falls due. End the key to shut the address.',
            { scopes: SCOPES[IN_ADDRESS] },
          )}
        </p>
      </Section>

      <Section title={t('Webhooks')} id="webhooks">
        <p className={styles.words}>
          {t(
            'An address of yours that is told when something happens, within seconds. Each message is signed (Standard Webhooks), tried again for about a day, and says which record it is about; the receiver reads the rest with a key.',
          )}
        </p>
        {webhooks.length > 0 ? (
          <WebhookList webhooks={webhooks} asOf={asOf} />
        ) : (
          <EmptyState title={t('Nobody is told.')} />
        )}
        <AddWebhook />
      </Section>

      <Section title={t('Files of everything')} id="files">
        <p className={styles.words}>
          {t(
            'Hours are whole tenths of an hour, instants are UTC. Passwords, keys and pictures are not in them.',
          )}
        </p>
        <Downloads sets={EXPORTS} />
      </Section>
    </Shell>
  );
}
