'use client';

import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { useSearchParams } from 'next/navigation';
import { useEffect, useSyncExternalStore, type ReactNode } from 'react';
import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { DUE_GROUPS, type DueGroup } from '@/lib/rules/due-window';
import { Button } from '../../_ui/button';
import { ChoiceGroup, SelectField } from '../../_ui/fields';
import { Moment } from '../../_ui/moment';
import { EmptyState, Section } from '../../_ui/page';
import styles from './due-sheet.module.css';

/** A line drawn on the server, with what the filters ask of it. */
interface DrawnLine {
  readonly key: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly group: DueGroup;
  readonly card: ReactNode;
}

interface Filter {
  readonly aircraft: string;
  readonly base: string;
  readonly show: string;
}

const TITLES: Readonly<Record<DueGroup, string>> = {
  overdue: said('Overdue'),
  unknown: said('Not known'),
  soon: said('Due in the next 30 days or 25 hours'),
  later: said('Later'),
};

/** The sheet with its filters; they act at once and stand in the address. Printed, it is the list for the wall. */
export function DueSheet(props: { lines: readonly DrawnLine[]; asOf: string; zone: string }) {
  const t = useWords();
  const { lines, asOf, zone } = props;
  const ready = useSyncExternalStore(nothingChanges, isBrowser, isServer);
  const address = useSearchParams();
  const aircraft = choicesOf(lines.map((line) => line.registration));
  const bases = choicesOf(lines.map(({ baseIdent }) => baseIdent));
  const form = useForm<Filter>({
    defaultValues: {
      aircraft: known(aircraft, address.get('aircraft')),
      base: known(bases, address.get('base')),
      show: address.get('show') === 'soon' ? 'soon' : 'all',
    },
  });
  const [registration, base, show] = useWatch({ control: form.control, name: ['aircraft', 'base', 'show'] });
  useEffect(() => keepInAddress({ aircraft: registration, base, show }), [registration, base, show]);
  const shown = lines.filter(
    (line) =>
      (registration === '' || line.registration === registration) &&
      (base === '' || line.baseIdent === base) &&
      (show !== 'soon' || line.group !== 'later'),
  );
  return (
    <>
      <FormProvider {...form}>
        <form
          role="search"
          aria-label={t('Filter what falls due')}
          className="not-on-paper"
          onSubmit={(event) => event.preventDefault()}
        >
          {/* Disabled until the page is alive: what is chosen before that would show and do nothing. */}
          <fieldset className={styles.filters} disabled={!ready}>
            <SelectField
              name="aircraft"
              label={t('Aircraft')}
              chooseWords={t('All aircraft')}
              choices={aircraft}
            />
            <SelectField name="base" label={t('Base')} chooseWords={t('All bases')} choices={bases} />
            <ChoiceGroup
              name="show"
              label={t('How far ahead')}
              sideBySide
              choices={[
                { value: 'all', label: t('All') },
                { value: 'soon', label: t('30 days or 25 hours') },
              ]}
            />
          </fieldset>
        </form>
      </FormProvider>
      <div className={styles.said}>
        <p role="status">{t('{shown} of {lines} shown', { shown: shown.length, lines: lines.length })}</p>
        <p>
          <Say text="As of <moment/>" parts={{ moment: <Moment at={asOf} zone={zone} /> }} />
        </p>
        <span className="not-on-paper">
          <Button onClick={() => window.print()}>{t('Print')}</Button>
        </span>
      </div>
      {shown.length === 0 && (
        <EmptyState title={t('Nothing here.')}>
          <p>
            <Button onClick={() => form.reset({ aircraft: '', base: '', show: 'all' })}>
              {t('Show all')}
            </Button>
          </p>
        </EmptyState>
      )}
      {DUE_GROUPS.map((group) => (
        <Group key={group} title={t(TITLES[group])} lines={shown.filter((line) => line.group === group)} />
      ))}
    </>
  );
}

const nothingChanges = () => () => undefined;
const isBrowser = () => true;
const isServer = () => false;

function Group({ title, lines }: { title: string; lines: readonly DrawnLine[] }) {
  if (lines.length === 0) return null;
  return (
    <Section title={`${title} (${lines.length})`}>
      <ul className={styles.list} aria-label={title}>
        {lines.map((line) => (
          <li key={line.key}>{line.card}</li>
        ))}
      </ul>
    </Section>
  );
}

const choicesOf = (values: readonly string[]) =>
  [...new Set(values)].sort().map((value) => ({ value, label: value }));

/** A filter from an old address that fits nothing any more is none. */
const known = (choices: readonly { value: string }[], asked: string | null): string =>
  choices.some((choice) => choice.value === asked) && asked !== null ? asked : '';

function keepInAddress({ aircraft, base, show }: Filter): void {
  const query = new URLSearchParams();
  if (aircraft !== '') query.set('aircraft', aircraft);
  if (base !== '') query.set('base', base);
  if (show === 'soon') query.set('show', show);
  const wanted = query.size > 0 ? `?${query.toString()}` : '';
  if (window.location.search === wanted) return;
  window.history.replaceState(null, '', wanted || window.location.pathname);
}
