import { type Metadata } from 'next';
import Link from '@/app/_ui/link';
import { requireActor } from '@/app/_session/actor-ref';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readLists, type ListsOfType } from '@/lib/walkarounds/read-lists';
import { Refused } from '../refused';
import styles from './walkarounds.module.css';

export const metadata: Metadata = { title: 'Walkaround lists' };

/** Which list each aircraft type is walked by. */
export default async function WalkaroundListsPage() {
  const { ref, who } = await requireActor('/desk/walkarounds');
  const lists = await readLists(ref, {});
  if (!lists.ok) return <Refused who={who} title="Walkaround lists" problem={lists.problem} />;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: 'Fleet board' }}
        lead="What is looked at, measured and sampled before flight, type by type. The flight manual of the aircraft governs."
      >
        Walkaround lists
      </PageTitle>
      {lists.value.length === 0 && <EmptyState title="There are no aircraft types here yet." />}
      <ul className={styles.types}>
        {lists.value.map((type) => (
          <li key={type.typeId}>
            <Link href={`/desk/walkarounds/${type.typeId}`} className={styles.type}>
              <b>{type.typeName}</b>
              <span>{standing(type)}</span>
              <span className={styles.soft}>{type.aircraft.join(', ') || 'No aircraft in service'}</span>
            </Link>
          </li>
        ))}
      </ul>
    </Shell>
  );
}

function standing({ current }: ListsOfType): string {
  const items = current.list.stations.reduce((sum, station) => sum + station.items.length, 0);
  const size = `${current.list.stations.length} stations, ${items} items`;
  return current.version === 0
    ? `Starting list, not fitted to this type yet: ${size}`
    : `Version ${current.version}: ${size}`;
}
