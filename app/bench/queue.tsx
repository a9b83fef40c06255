'use client';

import Link from '../_ui/link';
import { useSearchParams } from 'next/navigation';
import { useEffect } from 'react';
import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { type BenchRow } from '@/lib/work/read-bench';
import { Button } from '../_ui/button';
import { SelectField } from '../_ui/fields';
import { SeverityMark } from '../_ui/marks';
import { Ago } from '../_ui/moment';
import { EmptyState } from '../_ui/page';
import { Tag } from '../_ui/tag';
import styles from './queue.module.css';
import { severityOf } from './severity-of';

interface Filter {
  readonly aircraft: string;
  readonly base: string;
}

/** The queue with its two filters. They act at once and stand in the address, so that going back keeps them. */
export function Queue({ rows, asOf }: { rows: readonly BenchRow[]; asOf: string }) {
  const address = useSearchParams();
  const aircraftChoices = choicesOf(rows.map((row) => row.registration));
  const baseChoices = choicesOf(rows.map((row) => row.baseIdent));
  const form = useForm<Filter>({
    defaultValues: {
      aircraft: known(aircraftChoices, address.get('aircraft')),
      base: known(baseChoices, address.get('base')),
    },
  });
  const [aircraft, base] = useWatch({ control: form.control, name: ['aircraft', 'base'] });
  useEffect(() => keepInAddress({ aircraft, base }), [aircraft, base]);
  const shown = rows.filter(
    (row) => (aircraft === '' || row.registration === aircraft) && (base === '' || row.baseIdent === base),
  );
  return (
    <>
      <FormProvider {...form}>
        <form
          role="search"
          aria-label="Filter the queue"
          className={styles.filters}
          onSubmit={(event) => event.preventDefault()}
        >
          <SelectField
            name="aircraft"
            label="Aircraft"
            chooseWords="All aircraft"
            choices={aircraftChoices}
          />
          <SelectField name="base" label="Base" chooseWords="All bases" choices={baseChoices} />
          <p className={styles.count} role="status">
            {shown.length === rows.length ? `${rows.length} open` : `${shown.length} of ${rows.length} open`}
          </p>
        </form>
      </FormProvider>
      {shown.length === 0 ? (
        <EmptyState title="Nothing open here.">
          <p>
            <Button onClick={() => form.reset({ aircraft: '', base: '' })}>Show all</Button>
          </p>
        </EmptyState>
      ) : (
        <ol className={styles.queue} aria-label="Write-ups, most pressing first">
          {shown.map((row) => (
            <li key={row.writeUp.id}>
              <Row row={row} asOf={asOf} />
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

function Row({ row, asOf }: { row: BenchRow; asOf: string }) {
  const { writeUp } = row;
  const severity = severityOf(writeUp.severity);
  return (
    <Link
      href={`/bench/write-up/${writeUp.id}`}
      className={`${styles.row} ${styles[severity ?? 'undecided']}`}
    >
      <span className={styles.mark}>
        <SeverityMark severity={severity} size="small" />
      </span>
      <span className={styles.aircraft}>
        {row.registration} <span className={styles.base}>{row.baseIdent}</span>
      </span>
      <span className={styles.what}>
        <span className={styles.title}>{writeUp.title}</span>
        <span className={styles.more}>
          {writeUp.number} · {row.jascLabel} · <Ago at={writeUp.openedAt} now={asOf} />
        </span>
      </span>
      <span className={styles.next}>
        {writeUp.state === 'deferred' && row.next !== 'Deferred' && (
          <Tag tone="blue" size="small">
            Deferred
          </Tag>
        )}
        <span>{row.next}</span>
      </span>
    </Link>
  );
}

const choicesOf = (values: readonly string[]) =>
  [...new Set(values)].sort().map((value) => ({ value, label: value }));

/** A filter from an old address that fits nothing any more is none. */
const known = (choices: readonly { value: string }[], asked: string | null): string =>
  choices.some((choice) => choice.value === asked) && asked !== null ? asked : '';

function keepInAddress(filter: Filter): void {
  const chosen = Object.entries(filter).filter(([, value]) => value !== '');
  const query = new URLSearchParams(chosen).toString();
  window.history.replaceState(null, '', query ? `?${query}` : window.location.pathname);
}
