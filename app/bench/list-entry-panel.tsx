import { type ListEntry } from '@/lib/rules/part-91/91-213-list-entry';
import { Cite } from '../_ui/cite';
import { DateText } from '../_ui/moment';
import { Card, FactList } from '../_ui/page';
import { Tag } from '../_ui/tag';
import styles from './list-entry-panel.module.css';

/** The entry of the minimum equipment list for this item: numbers, clock, conditions and procedures in full. */
export function ListEntryPanel({ entry }: { entry: ListEntry }) {
  const { working, clock, allowed } = entry;
  return (
    <div>
      <h3 className={styles.head}>
        {entry.title}, in {entry.reference}
      </h3>
      <Card edge="blue">
        <FactList
          facts={[
            { name: 'Installed', value: entry.installed },
            { name: 'Required for dispatch', value: entry.requiredForDispatch },
            { name: 'Working now', value: working.known ? working.value : `Not known: ${working.missing}` },
            { name: 'Repair category', value: entry.category },
            { name: 'Written up', value: <DateText date={clock.recordedOn} /> },
            {
              name: 'Repaired by the end of',
              value: clock.lastDay.known ? (
                <>
                  <DateText date={clock.lastDay.value} />
                  {clock.extended && ', extended once'}
                </>
              ) : (
                `Not known: ${clock.lastDay.missing}`
              ),
            },
            { name: 'Days left', value: <DaysLeft clock={clock} /> },
            { name: 'At night', value: allowed.night ? 'Allowed' : 'Not allowed' },
            { name: 'Under IFR', value: allowed.ifr ? 'Allowed' : 'Not allowed' },
            { name: 'For hire', value: allowed.hire ? 'Allowed' : 'Not allowed' },
          ]}
        />
        <dl className={styles.conditions}>
          <Condition name="Proviso" words={entry.proviso.trim() || null} none="The entry has none." />
          <Condition name="(O) Operating procedure" words={entry.operatingProcedure} none="None." />
          <Condition name="(M) Maintenance procedure" words={entry.maintenanceProcedure} none="None." />
        </dl>
        <p className={styles.cites}>
          Described in the records: <Cite cite="14cfr91.213(a)(4)" plain />. Flown under every condition of
          the list: <Cite cite="14cfr91.213(a)(5)" plain />.
        </p>
      </Card>
    </div>
  );
}

function DaysLeft({ clock }: { clock: ListEntry['clock'] }) {
  if (!clock.binds) return <>This operator is not held to intervals</>;
  if (clock.daysLeft === null) return <>Not known</>;
  if (clock.daysLeft < 0) {
    return (
      <Tag tone="red" shape="block" size="small">
        Over since {-clock.daysLeft} {clock.daysLeft === -1 ? 'day' : 'days'}
      </Tag>
    );
  }
  return <>{clock.daysLeft === 0 ? '0, today is the last' : clock.daysLeft}</>;
}

function Condition({ name, words, none }: { name: string; words: string | null; none: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{words ?? none}</dd>
    </div>
  );
}
