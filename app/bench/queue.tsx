'use client';

import { useWords } from '#words';
import { useSearchParams } from 'next/navigation';
import { useEffect, useState } from 'react';
import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { filterChoices, filterFrom, isShown, NO_FILTER, type QueueFilter } from '@/lib/work/queue-filters';
import { type BenchRow } from '@/lib/work/read-bench';
import { Button } from '../_ui/button';
import { SelectField } from '../_ui/fields';
import { EmptyState } from '../_ui/page';
import { ForVisit } from './for-visit';
import styles from './queue.module.css';
import { QueueList } from './queue-list';

/** The queue with its filters. They act at once and stand in the address, so that going back keeps them. */
export function Queue({ rows, asOf }: { rows: readonly BenchRow[]; asOf: string }) {
  const t = useWords();
  const address = useSearchParams();
  const choices = filterChoices(rows);
  const form = useForm<QueueFilter>({ defaultValues: filterFrom((name) => address.get(name), rows) });
  const [base, aircraft, chapter, age, due] = useWatch({
    control: form.control,
    name: ['base', 'aircraft', 'chapter', 'age', 'due'],
  });
  useEffect(() => keepInAddress({ base, aircraft, chapter, age, due }), [base, aircraft, chapter, age, due]);
  const shown = rows.filter((row) => isShown(row, { base, aircraft, chapter, age, due }));
  const { chosen, tick, clear, said } = useChosen(rows);
  return (
    <>
      <FormProvider {...form}>
        <form
          role="search"
          aria-label={t('Filter the queue')}
          className={styles.filters}
          onSubmit={(event) => event.preventDefault()}
        >
          <SelectField
            name="aircraft"
            label={t('Aircraft')}
            chooseWords={t('All aircraft')}
            choices={[...choices.aircraft]}
          />
          <SelectField
            name="base"
            label={t('Base')}
            chooseWords={t('All bases')}
            choices={[...choices.base]}
          />
          <SelectField
            name="chapter"
            label={t('Chapter')}
            chooseWords={t('All chapters')}
            choices={[...choices.chapter]}
          />
          <SelectField
            name="age"
            label={t('Written up')}
            chooseWords={t('Any day')}
            choices={[...choices.age]}
          />
          <SelectField
            name="due"
            label={t('Deferral ends')}
            chooseWords={t('Any or none')}
            choices={[...choices.due]}
          />
          <p className={styles.count} role="status">
            {shown.length === rows.length
              ? t('{rows} open', { rows: rows.length })
              : t('{shown} of {rows} open', { shown: shown.length, rows: rows.length })}
          </p>
        </form>
      </FormProvider>
      <ForVisit chosen={chosen} said={said} onClear={clear} />
      {shown.length === 0 ? (
        <EmptyState title={t('Nothing open here.')}>
          <p>
            <Button onClick={() => form.reset(NO_FILTER)}>{t('Show all')}</Button>
          </p>
        </EmptyState>
      ) : (
        <QueueList rows={shown} asOf={asOf} chosen={chosen} onTick={tick} />
      )}
    </>
  );
}

/** What is ticked for a visit: write-ups of one aircraft that no open visit holds. What cannot be ticked says why. */
function useChosen(rows: readonly BenchRow[]) {
  const t = useWords();
  const [ids, setIds] = useState<readonly string[]>([]);
  const [said, setSaid] = useState('');
  const chosen = rows.filter((row) => ids.includes(row.writeUp.id) && row.visit === null);
  function tick(row: BenchRow): void {
    const other = chosen.find(({ aircraftId }) => aircraftId !== row.aircraftId);
    const { id, number } = row.writeUp;
    if (row.visit) {
      setSaid(t('{number} is in the visit “{title}” already.', { number, title: row.visit.title }));
    } else if (chosen.some((one) => one.writeUp.id === id)) {
      setIds(ids.filter((one) => one !== id));
      setSaid('');
    } else if (other) {
      setSaid(
        t('A visit is for one aircraft. Clear the choice of {registration} first.', {
          registration: other.registration,
        }),
      );
    } else {
      setIds([...ids, id]);
      setSaid('');
    }
  }
  return {
    chosen,
    said,
    tick,
    clear: () => {
      setIds([]);
      setSaid('');
    },
  };
}

function keepInAddress(filter: QueueFilter): void {
  const asked = Object.entries(filter).filter(([, value]) => value !== '');
  const query = new URLSearchParams(asked).toString();
  window.history.replaceState(null, '', query ? `?${query}` : window.location.pathname);
}
