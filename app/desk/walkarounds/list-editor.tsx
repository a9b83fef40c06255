'use client';

import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { useFieldArray, useFormContext, useWatch, type Path } from 'react-hook-form';
import { Button, ButtonRow } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { TextArea, TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { newRequestId } from '@/app/_ui/request-id';
import { useCommand } from '@/app/_ui/use-command';
import { emptyItem, listAsTyped, readList, type ListAsTyped } from '@/lib/walkarounds/list-form';
import { type Result } from '@/lib/problems';
import { type WalkaroundList } from '@/lib/rules/walkaround/plan';
import { saveList } from './actions';
import { ItemFields, type MeasuredChoice } from './item-fields';
import styles from './walkarounds.module.css';

interface EditorProps {
  readonly typeId: string;
  /** The version it starts from; a newer one meanwhile is told and nothing is overwritten. */
  readonly fromVersion: number;
  readonly list: WalkaroundList;
  readonly areas: readonly { readonly value: string; readonly label: string }[];
  readonly measurements: readonly MeasuredChoice[];
}

/** The list of a type, to be changed and saved as its next version. Nothing is changed before that. */
export function ListEditor({ typeId, fromVersion, list, areas, measurements }: EditorProps) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState<number | null>(null);
  const [said, setSaid] = useState('');
  const start: ListAsTyped = listAsTyped(list);
  const command = useCommand({
    action: async ({ requestId, ...typed }: ListAsTyped & { requestId: string }) => {
      setSaved(null);
      const read = readList(typed);
      if (!read.ok) {
        const fields = Object.fromEntries(Object.entries(read.fields).map(([path, say]) => [path, [say]]));
        return { ok: false, problem: { code: 'invalid', say: t('Some fields need another look.'), fields } };
      }
      return inThisForm(await saveList({ requestId, typeId, fromVersion, list: read.list, why: typed.why }));
    },
    start,
    afterDone: 'keep',
    onDone: ({ version }: { version: number }) => {
      setSaved(version);
      router.refresh();
    },
  });
  return (
    <CommandForm
      command={command}
      submit={t('Save as version {fromVersion}', { fromVersion: fromVersion + 1 })}
      pendingWords={t('Saving…')}
    >
      <p role="status" className="out-of-sight">
        {said}
      </p>
      <Stations areas={areas} measurements={measurements} onSaid={setSaid} />
      <TextArea
        name="why"
        label={t('Why this version?')}
        hint={t('Whoever reads the list in three years wants to know.')}
        rows={2}
        maxLength={500}
      />
      {saved !== null && (
        <Notice tone="blue" title={t('Saved as version {saved}.', { saved })}>
          <p>{t('Walkarounds begun from now on use it. One under way keeps the version it began with.')}</p>
        </Notice>
      )}
    </CommandForm>
  );
}

/** The service names fields as they stand in its message, where the list is a part. */
function inThisForm<T>(result: Result<T>): Result<T> {
  if (result.ok || !result.problem.fields) return result;
  const fields = Object.entries(result.problem.fields).map(([path, say]) => [
    path.replace(/^list\./, '').replace('.limit.', '.'),
    say,
  ]);
  return { ok: false, problem: { ...result.problem, fields: Object.fromEntries(fields) } };
}

interface StationsProps extends Pick<EditorProps, 'areas' | 'measurements'> {
  readonly onSaid: (words: string) => void;
}

function Stations({ areas, measurements, onSaid }: StationsProps) {
  const t = useWords();
  const { control, setFocus, formState } = useFormContext<ListAsTyped>();
  const { fields, move, remove, append } = useFieldArray({ control, name: 'stations' });
  const wrong = formState.errors.stations;
  const stations = useWatch({ control, name: 'stations' });
  const [open, setOpen] = useState<string | null>(null);
  const [area, setArea] = useState('');
  const free = areas.filter(({ value }) => !stations.some((station) => station.area === value));
  const titleOf = (index: number) => stations[index]?.title || t('Station without a name');

  // A station with something wrong in it opens by itself: an error nobody sees cannot be put right.
  const isOpen = (key: string, index: number) => open === key || wrong?.[index] !== undefined;

  function shift(from: number, to: number) {
    move(from, to);
    onSaid(
      t('{titleOf} is now number {to} of {fields}.', {
        titleOf: titleOf(from),
        to: to + 1,
        fields: fields.length,
      }),
    );
  }

  function add() {
    const chosen = areas.find(({ value }) => value === area);
    if (!chosen) return;
    append(
      { area: chosen.value, title: chosen.label, items: [] },
      { focusName: `stations.${fields.length}.title` },
    );
    setArea('');
    onSaid(t('{label} is added at the end.', { label: chosen.label }));
    requestAnimationFrame(() => setFocus(`stations.${fields.length}.title` as Path<ListAsTyped>));
  }

  return (
    <>
      <ol className={styles.stations}>
        {fields.map((field, index) => (
          <li key={field.id} className={styles.station}>
            <div className={styles.stationHead}>
              <h3>
                <button
                  type="button"
                  className={styles.unfold}
                  aria-expanded={isOpen(field.area, index)}
                  onClick={() => setOpen(open === field.area ? null : field.area)}
                >
                  <span className={styles.number}>{index + 1}</span>
                  {titleOf(index)}
                  <span className={styles.soft}>
                    {stations[index]?.items.length ?? 0}{' '}
                    {stations[index]?.items.length === 1 ? t('item') : t('items')}
                  </span>
                </button>
              </h3>
              <Shift index={index} count={fields.length} what={titleOf(index)} onShift={shift} />
            </div>
            <div hidden={!isOpen(field.area, index)} className={styles.stationBody}>
              <TextField name={`stations.${index}.title`} label={t('Name of the station')} maxLength={80} />
              <Items station={index} measurements={measurements} onSaid={onSaid} />
              <Button
                weight="quiet"
                onClick={() => {
                  onSaid(t('{titleOf} is taken out.', { titleOf: titleOf(index) }));
                  remove(index);
                }}
              >
                {t('Take out this station')}
              </Button>
            </div>
          </li>
        ))}
      </ol>
      {free.length > 0 && (
        <div className={styles.add}>
          <label>
            <span>{t('Another station at')}</span>
            <select value={area} onChange={(event) => setArea(event.target.value)}>
              <option value="">{t('Choose…')}</option>
              {free.map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          <Button onClick={add} aria-disabled={area === ''}>
            {t('Add the station')}
          </Button>
        </div>
      )}
    </>
  );
}

function Items(props: {
  station: number;
  measurements: EditorProps['measurements'];
  onSaid: (words: string) => void;
}) {
  const t = useWords();
  const { station, measurements, onSaid } = props;
  const { control, setFocus } = useFormContext<ListAsTyped>();
  const name = `stations.${station}.items` as const;
  const { fields, move, remove, append } = useFieldArray({ control, name });
  const items = useWatch({ control, name });
  const titleOf = (index: number) => items[index]?.title || t('Item without a name');

  function add(kind: 'look' | 'number' | 'sample') {
    append(emptyItem(kind, `item-${newRequestId().slice(0, 13)}`), {
      shouldFocus: false,
    });
    requestAnimationFrame(() => setFocus(`${name}.${fields.length}.title` as Path<ListAsTyped>));
  }

  return (
    <>
      <ol className={styles.items}>
        {fields.map((field, index) => (
          <li key={field.id} className={styles.item}>
            <div className={styles.itemHead}>
              <span className={styles.kind}>{t(KINDS[field.kind])}</span>
              <Shift
                index={index}
                count={fields.length}
                what={titleOf(index)}
                onShift={(from, to) => {
                  move(from, to);
                  onSaid(
                    t('{titleOf} is now number {to} of {fields} here.', {
                      titleOf: titleOf(from),
                      to: to + 1,
                      fields: fields.length,
                    }),
                  );
                }}
              />
            </div>
            <ItemFields name={`${name}.${index}`} kind={field.kind} measurements={measurements} />
            <Button
              weight="quiet"
              onClick={() => {
                onSaid(t('{titleOf} is taken out.', { titleOf: titleOf(index) }));
                remove(index);
              }}
            >
              <Say
                text="Take out<span> {titleOf}</span>"
                parts={{ span: <span className="out-of-sight" /> }}
                values={{ titleOf: titleOf(index) }}
              />
            </Button>
          </li>
        ))}
      </ol>
      <ButtonRow>
        <Button onClick={() => add('look')}>{t('Add something to look at')}</Button>
        <Button onClick={() => add('number')}>{t('Add a number')}</Button>
        <Button onClick={() => add('sample')}>{t('Add a drain')}</Button>
      </ButtonRow>
    </>
  );
}

const KINDS = { look: said('To look at'), number: 'A number', sample: said('A drain to sample') } as const;

/** Up and down by buttons: works by keyboard, by voice, and with gloves. */
function Shift(props: {
  index: number;
  count: number;
  what: string;
  onShift: (from: number, to: number) => void;
}) {
  const t = useWords();
  const { index, count, what, onShift } = props;
  return (
    <span className={styles.shift}>
      <button
        type="button"
        aria-label={t('{what}: up', { what })}
        aria-disabled={index === 0 || undefined}
        onClick={() => index > 0 && onShift(index, index - 1)}
      >
        ↑
      </button>
      <button
        type="button"
        aria-label={t('{what}: down', { what })}
        aria-disabled={index === count - 1 || undefined}
        onClick={() => index < count - 1 && onShift(index, index + 1)}
      >
        ↓
      </button>
    </span>
  );
}
