import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type Metadata } from 'next';
import Link from '@/app/_ui/link';
import { requireActor } from '@/app/_session/actor-ref';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { BackToSetUp } from '@/app/office/_parts/back-to-set-up';
import { readLists, type ListsOfType } from '@/lib/walkarounds/read-lists';
import { Refused } from '../refused';
import styles from './walkarounds.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Walkaround lists') };
}

/** Which list each aircraft type is walked by. */
export default async function WalkaroundListsPage() {
  const t = await words();
  const { ref, who } = await requireActor('/desk/walkarounds');
  const lists = await readLists(ref, {});
  if (!lists.ok) return <Refused who={who} title={t('Walkaround lists')} problem={lists.problem} />;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t(
          'What is looked at, measured and sampled before flight, type by type. The flight manual of the aircraft governs.',
        )}
      >
        {t('Walkaround lists')}
      </PageTitle>
      <BackToSetUp />
      {lists.value.length === 0 && <EmptyState title={t('There are no aircraft types here yet.')} />}
      <ul className={styles.types}>
        {lists.value.map((type) => (
          <li key={type.typeId}>
            <Link href={`/desk/walkarounds/${type.typeId}`} className={styles.type}>
              <b>{type.typeName}</b>
              <span>{standing(t, type)}</span>
              <span className={styles.soft}>{type.aircraft.join(', ') || t('No aircraft in service')}</span>
            </Link>
          </li>
        ))}
      </ul>
    </Shell>
  );
}

function standing(t: Translate, { current }: ListsOfType): string {
  const items = current.list.stations.reduce((sum, station) => sum + station.items.length, 0);
  const size = t('{stations} stations, {items} items', { stations: current.list.stations.length, items });
  return current.version === 0
    ? t('Starting list, not fitted to this type yet: {size}', { size })
    : t('Version {version}: {size}', { version: current.version, size });
}
