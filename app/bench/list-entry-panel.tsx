import { Say, useWords } from '#words';
import { type ListEntry } from '@/lib/rules/part-91/91-213-list-entry';
import { Cite } from '../_ui/cite';
import { DateText } from '../_ui/moment';
import { Card, FactList } from '../_ui/page';
import { Tag } from '../_ui/tag';
import styles from './list-entry-panel.module.css';

/** The entry of the minimum equipment list for this item: numbers, clock, conditions and procedures in full. */
export function ListEntryPanel({ entry }: { entry: ListEntry }) {
  const t = useWords();
  const { working, clock, allowed } = entry;
  return (
    <div>
      <h3 className={styles.head}>
        {t('{title}, in {reference}', { title: entry.title, reference: entry.reference })}
      </h3>
      <Card edge="blue">
        <FactList
          facts={[
            { name: t('Installed'), value: entry.installed },
            { name: t('Required for dispatch'), value: entry.requiredForDispatch },
            {
              name: t('Working now'),
              value: working.known ? working.value : t('Not known: {missing}', { missing: working.missing }),
            },
            { name: t('Repair category'), value: entry.category },
            { name: t('Written up'), value: <DateText date={clock.recordedOn} /> },
            {
              name: t('Repaired by the end of'),
              value: clock.lastDay.known ? (
                <>
                  <DateText date={clock.lastDay.value} />
                  {clock.extended && t(', extended once')}
                </>
              ) : (
                t('Not known: {missing}', { missing: clock.lastDay.missing })
              ),
            },
            { name: t('Days left'), value: <DaysLeft clock={clock} /> },
            { name: t('At night'), value: allowed.night ? t('Allowed') : t('Not allowed') },
            { name: t('Under IFR'), value: allowed.ifr ? t('Allowed') : t('Not allowed') },
            { name: t('For hire'), value: allowed.hire ? t('Allowed') : t('Not allowed') },
          ]}
        />
        <dl className={styles.conditions}>
          <Condition
            name={t('Proviso')}
            words={entry.proviso.trim() || null}
            none={t('The entry has none.')}
          />
          <Condition name={t('(O) Operating procedure')} words={entry.operatingProcedure} none={t('None.')} />
          <Condition
            name={t('(M) Maintenance procedure')}
            words={entry.maintenanceProcedure}
            none={t('None.')}
          />
        </dl>
        <p className={styles.cites}>
          <Say
            text="Described in the records: <cite/>. Flown under every condition of the list: <cite2/>."
            parts={{
              cite: <Cite cite="14cfr91.213(a)(4)" plain />,
              cite2: <Cite cite="14cfr91.213(a)(5)" plain />,
            }}
          />
        </p>
      </Card>
    </div>
  );
}

function DaysLeft({ clock }: { clock: ListEntry['clock'] }) {
  const t = useWords();
  if (!clock.binds) return <>{t('This operator is not held to intervals')}</>;
  if (clock.daysLeft === null) return <>{t('Not known')}</>;
  if (clock.daysLeft < 0) {
    return (
      <Tag tone="red" shape="block" size="small">
        {t('Over since {value} {which}', {
          value: -clock.daysLeft,
          which: clock.daysLeft === -1 ? t('day') : t('days'),
        })}
      </Tag>
    );
  }
  return <>{clock.daysLeft === 0 ? t('0, today is the last') : clock.daysLeft}</>;
}

function Condition({ name, words, none }: { name: string; words: string | null; none: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{words ?? none}</dd>
    </div>
  );
}
