import { type InspectionView, type OpenWriteUpView } from '@/lib/inspections/read-inspection';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { DateText } from '../../../_ui/moment';
import { Card, EmptyState, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { Act, ActList } from '../../acts';
import { RulingNotice } from '../../ruling-notice';
import { ListForm } from '../list-form';
import styles from '../inspection.module.css';

const STANDING = {
  'repair-owed': 'Neither repaired, deferred nor found within limits: list it, or settle it first.',
  'within-limits': 'Found within limits.',
  cosmetic: 'Cosmetic.',
  deferred: 'Deferred.',
} as const;

/** What is written up and open, and the signed list of 43.11(b) over it. */
export function OpenWriteUps({ view, acts }: { view: InspectionView; acts: boolean }) {
  const somethingToList = view.open.length > 0 || view.deferred.length > 0;
  return (
    <Section
      title="Discrepancies"
      side={acts && <Link href={`/ramp/${view.aircraftId}/finding`}>Write up what you found</Link>}
    >
      {acts && view.open.length === 0 && <EmptyState title="Nothing else is written up and open." />}
      {view.open.length > 0 && (
        <Card>
          <ul className={styles.rows}>
            {view.open.map((one) => (
              <li key={one.id} className={styles.row}>
                <Tag tone={one.standing === 'repair-owed' ? 'red' : 'blue'} size="small">
                  {one.standing === 'repair-owed' ? 'Repair owed' : 'May stay'}
                </Tag>
                <Link href={`/bench/write-up/${one.id}`}>
                  {one.number} {one.title}
                </Link>
                <span className={styles.soft}>{standingSaid(one)}</span>
              </li>
            ))}
          </ul>
        </Card>
      )}
      {view.list && <ListInForce list={view.list} />}
      {acts && somethingToList && (
        <ActList>
          <Act
            title={view.list ? 'Sign a new list' : 'Sign the list'}
            hint="What makes it unairworthy, and what stays deferred and placarded: 14 CFR 43.11(b)."
          >
            <RulingNotice
              ruling={view.me.mayGiveList}
              allowed="Your certificates reach this inspection, and so its list."
              refused="The list is signed by whoever makes the inspection."
            />
            <ListForm
              inspectionId={view.id}
              signer={view.me.name}
              seen={view.openHash}
              asked={view.open.map((one) => ({
                id: one.id,
                label: `${one.number} ${one.title}`,
                standing: standingSaid(one),
              }))}
            />
          </Act>
        </ActList>
      )}
    </Section>
  );
}

const standingSaid = ({ standing, withinLimits }: OpenWriteUpView): string =>
  withinLimits && standing === 'within-limits' ? `Found within limits: ${withinLimits}` : STANDING[standing];

function ListInForce({ list }: { list: NonNullable<InspectionView['list']> }) {
  return (
    <Card>
      <h3>
        List dated <DateText date={list.dated} />, signed by {list.by}
      </h3>
      <ul className={styles.rows}>
        {list.items.map((item) => (
          <li key={item.discrepancyId} className={styles.row}>
            <Tag tone={item.standing === 'unairworthy' ? 'red' : 'blue'} size="small">
              {item.standing === 'unairworthy' ? 'Unairworthy' : 'Inoperative, placarded'}
            </Tag>
            <Link href={`/bench/write-up/${item.discrepancyId}`}>
              {item.number} {item.title}
            </Link>
            {item.placard && <span className={styles.soft}>{item.placard}</span>}
          </li>
        ))}
      </ul>
      <p className={styles.soft}>
        Each unairworthy item is cleared by an entry of anybody rated for it; no second inspection is needed.
      </p>
      <Cite cite="14cfr43.11(a)(5)" />
    </Card>
  );
}
