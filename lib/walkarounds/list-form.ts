/**
 * Between a walkaround list and the editor's form, where everything is text as typed. Pure. What the form cannot read is
 * said field by field; the service checks the whole list again (schema.ts).
 */
import { readMeasurement } from '../findings/measurement-input';
import { digitsOf, measurementOf, type MeasurementKey } from '../rules/findings/measurements';
import type { AreaKey } from '../rules/walkaround/areas';
import type { ListItem, NumberItem, WalkaroundList } from '../rules/walkaround/plan';

export interface ItemAsTyped {
  readonly key: string;
  readonly kind: ListItem['kind'];
  readonly title: string;
  readonly lookFor: string;
  readonly measurement: string;
  readonly min: string;
  readonly max: string;
  readonly source: string;
  readonly findingKey: string;
  readonly drain: string;
}

export interface StationAsTyped {
  readonly area: string;
  readonly title: string;
  readonly items: ItemAsTyped[];
}

export interface ListAsTyped {
  readonly stations: StationAsTyped[];
  readonly why: string;
}

/** An item nobody has typed anything into yet. */
export const emptyItem = (kind: ListItem['kind'], key: string): ItemAsTyped => ({
  key,
  kind,
  title: '',
  lookFor: '',
  measurement: '',
  min: '',
  max: '',
  source: '',
  findingKey: '',
  drain: '',
});

/** A list as the form shows it. */
export const listAsTyped = (list: WalkaroundList): ListAsTyped => ({
  stations: list.stations.map(({ area, title, items }) => ({ area, title, items: items.map(itemAsTyped) })),
  why: '',
});

function itemAsTyped(item: ListItem): ItemAsTyped {
  const typed = { ...emptyItem(item.kind, item.key), title: item.title, lookFor: item.lookFor };
  if (item.kind === 'sample') return { ...typed, drain: item.drain };
  if (item.kind !== 'number') return typed;
  const unit = measurementOf(item.measurement)?.unit;
  const bound = (value: number | null | undefined) =>
    value === null || value === undefined || !unit ? '' : digitsOf(value, unit);
  return {
    ...typed,
    measurement: item.measurement,
    min: bound(item.limit?.min),
    max: bound(item.limit?.max),
    source: item.limit?.source ?? '',
    findingKey: item.findingKey ?? '',
  };
}

export type ListRead =
  | { readonly ok: true; readonly list: WalkaroundList }
  | { readonly ok: false; readonly fields: Readonly<Record<string, string>> };

/** The list that was typed, or what is wrong with it, by path of the form (`stations.0.items.2.min`). */
export function readList(typed: ListAsTyped): ListRead {
  const fields: Record<string, string> = {};
  const stations = typed.stations.map((station, index) => {
    const at = `stations.${index}`;
    if (station.title.trim() === '') fields[`${at}.title`] = 'The station needs a name.';
    return {
      area: station.area as AreaKey,
      title: station.title.trim(),
      items: station.items.map((item, place) => readItem(item, `${at}.items.${place}`, fields)),
    };
  });
  if (typed.why.trim() === '') fields.why = 'Say why this version is made.';
  return Object.keys(fields).length > 0 ? { ok: false, fields } : { ok: true, list: { stations } };
}

function readItem(item: ItemAsTyped, at: string, fields: Record<string, string>): ListItem {
  const base = { key: item.key, title: item.title.trim(), lookFor: item.lookFor.trim() };
  if (base.title === '') fields[`${at}.title`] = 'Say what it is.';
  if (item.kind === 'look') return { ...base, kind: 'look' };
  if (item.kind === 'sample') {
    const drain = item.drain.trim();
    if (drain === '') fields[`${at}.drain`] = 'Say how the drain is called.';
    return { ...base, kind: 'sample', drain };
  }
  return { ...base, ...readNumber(item, at, fields) };
}

function readNumber(
  item: ItemAsTyped,
  at: string,
  fields: Record<string, string>,
): Omit<NumberItem, 'key' | 'title' | 'lookFor'> {
  const measurement = measurementOf(item.measurement);
  if (!measurement) {
    fields[`${at}.measurement`] = 'Choose what is measured.';
    return { kind: 'number', measurement: item.measurement as MeasurementKey, limit: null, findingKey: null };
  }
  const bound = (side: 'min' | 'max') => {
    if (item[side].trim() === '') return null;
    const read = readMeasurement(item[side], measurement.unit);
    if (read.ok) return read.value;
    fields[`${at}.${side}`] = read.say;
    return null;
  };
  const [min, max] = [bound('min'), bound('max')];
  const hasLimit = item.min.trim() !== '' || item.max.trim() !== '';
  const source = item.source.trim();
  if (min !== null && max !== null && min > max) fields[`${at}.max`] = 'The most is less than the least.';
  if (hasLimit && source === '') fields[`${at}.source`] = 'A limit needs its source: document and section.';
  if (!hasLimit && source !== '') fields[`${at}.min`] = 'There is a source, but no limit.';
  if (hasLimit && item.findingKey === '') {
    fields[`${at}.findingKey`] = 'Say what a value outside the limit is written up as.';
  }
  return {
    kind: 'number',
    measurement: measurement.key as MeasurementKey,
    limit: hasLimit ? { min, max, source } : null,
    findingKey: item.findingKey === '' ? null : item.findingKey,
  };
}
