/**
 * The board's four columns out of the eight kinds of operation. Wording and choice of what to show only: the answers
 * are those of the rules.
 */
import { formatTenths } from '../rules/hours';
import type { Instant } from '../rules/facts';
import type { OperationId } from '../rules/operations';
import type { Outcome } from '../rules/verdict';
import type { FlightAhead, LaneAhead, RowAhead } from './board-ahead';
import type { BoardCell, BoardRow, NextDue } from './read-board';
import { said } from '../words/said';
import { type Translate } from '../words/translate';

export interface ColumnOfBoard {
  readonly key: 'day-vfr' | 'night-vfr' | 'day-ifr' | 'night-ifr';
  readonly name: string;
  readonly light: 'day' | 'night';
}

export const BOARD_COLUMNS: readonly ColumnOfBoard[] = [
  { key: 'day-vfr', name: said('Day VFR'), light: 'day' },
  { key: 'night-vfr', name: said('Night VFR'), light: 'night' },
  { key: 'day-ifr', name: said('Day IFR'), light: 'day' },
  { key: 'night-ifr', name: said('Night IFR'), light: 'night' },
];

/** What one column says of one aircraft: its usual use, and the other use where that has another outcome. */
export interface CellOfBoard {
  readonly column: ColumnOfBoard;
  readonly usual: BoardCell;
  readonly other: (BoardCell & { readonly use: 'private' | 'for hire' }) | null;
}

/** The four cells of a row, in the order of `BOARD_COLUMNS`. */
export function cellsOfRow(row: Pick<BoardRow, 'cells' | 'forHire'>): CellOfBoard[] {
  return BOARD_COLUMNS.map((column) => {
    const usual = cellOf(row, `${column.key}-${row.forHire ? 'hire' : 'private'}`);
    const other = cellOf(row, `${column.key}-${row.forHire ? 'private' : 'hire'}`);
    return {
      column,
      usual,
      other: other.outcome === usual.outcome ? null : { ...other, use: row.forHire ? 'private' : 'for hire' },
    };
  });
}

/** Whether the aircraft may leave now on its usual use, VFR or IFR, in `light`. A go with limits counts. */
export const isFlyableNow = (row: Pick<BoardRow, 'cells' | 'forHire'>, light: 'day' | 'night'): boolean =>
  cellsOfRow(row).some(({ column, usual }) => column.light === light && usual.outcome !== 'no-go');

/** The lane that a column stands for at this moment, if any: a night column stands for none by day. */
export const laneOfColumn = ({ key }: ColumnOfBoard, ahead: RowAhead | null): LaneAhead | null =>
  ahead?.lanes.find(({ rules, light }) => key === `${light}-${rules.toLowerCase()}`) ?? null;

const OUTCOMES: Record<Outcome, string> = {
  go: said('go'),
  'go-with-limits': said('go with limits'),
  'no-go': said('no go'),
};
const HOW_GOOD: Record<Outcome, number> = { 'no-go': 0, 'go-with-limits': 1, go: 2 };

/**
 * "until 16:58, then no go: Landing light dead". `shown` is the cell's answer, which is for a flight of an hour: where an
 * aircraft in the air at this moment has another, only what comes is said ("from 16:58 no go: …"). A better answer is
 * said to come a minute late rather than early.
 */
export function changeInWords(
  t: Translate,
  { outcome, next }: LaneAhead,
  shown: Outcome,
  { until, zone, asOf }: { readonly until: Instant; readonly zone: string; readonly asOf: Instant },
): string {
  if (!next) return t('no change before {clock}', { clock: clockAt(t, until, zone, asOf) });
  const better = HOW_GOOD[next.outcome] > HOW_GOOD[outcome];
  const at = clockAt(t, better ? nextFullMinute(next.at) : next.at, zone, asOf);
  const becomes = t(next.outcome === outcome ? said('other limits') : OUTCOMES[next.outcome]);
  const why = next.headline === null ? becomes : `${becomes}: ${next.headline}`;
  return outcome === shown ? t('until {at}, then {why}', { at, why }) : t('from {at} {why}', { at, why });
}

/** "Out until 15:40", "Released 16:00", "Planned Fri 09:00". */
export function flightInWords(t: Translate, flight: FlightAhead, zone: string, asOf: Instant): string {
  const departs = clockAt(t, flight.departAt, zone, asOf);
  if (flight.state === 'out') {
    const arrives = clockAt(t, flight.arriveAt, zone, asOf);
    return Date.parse(flight.arriveAt) < Date.parse(asOf)
      ? t('Out, was due {arrives}', { arrives })
      : t('Out until {arrives}', { arrives });
  }
  return flight.state === 'released'
    ? t('Released {departs}', { departs })
    : t('Planned {departs}', { departs });
}

/** The time on the wall at the base, with the weekday when it is not today's. */
export function clockAt(t: Translate, at: Instant, zone: string, asOf: Instant): string {
  const day = new Intl.DateTimeFormat('en-CA', { timeZone: zone });
  const isToday = day.format(Date.parse(at)) === day.format(Date.parse(asOf));
  const parts = new Intl.DateTimeFormat(t.language === 'en' ? 'en-US' : t.language, {
    timeZone: zone,
    weekday: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(Date.parse(at));
  const part = (kind: Intl.DateTimeFormatPartTypes) => parts.find(({ type }) => type === kind)?.value ?? '';
  const time = `${part('hour')}:${part('minute')}`;
  return isToday ? time : `${part('weekday')} ${time}`;
}

const A_MINUTE = 60_000;
const nextFullMinute = (at: Instant): Instant =>
  new Date(Math.ceil(Date.parse(at) / A_MINUTE) * A_MINUTE).toISOString();

/** "1.1 h of it booked": of the hours that are left, how many flights already booked will take; null when none. */
export function bookedInWords(
  t: Translate,
  { remainingTenths: left }: NextDue,
  bookedTenths: number,
): string | null {
  if (bookedTenths === 0 || left === null || left < 0) return null;
  const booked = formatTenths(bookedTenths);
  return bookedTenths > left ? t('{booked} h booked', { booked }) : t('{booked} h of it booked', { booked });
}

/** "in 1.4 h", "in 12 days", "in 1.4 h or 12 days", "1 day over". Days are whole days after today at the base. */
export function dueInWords(t: Translate, due: Pick<NextDue, 'remainingDays' | 'remainingTenths'>): string {
  const { remainingDays: days, remainingTenths: tenths } = due;
  const over = [
    tenths !== null && tenths < 0 ? `${formatTenths(-tenths)} h` : null,
    days !== null && days < 0 ? t('{n, plural, one {# day} other {# days}}', { n: -days }) : null,
  ].filter((part) => part !== null);
  if (over.length > 0) return t('over by {over}', { over: over.join(t(' and ')) });
  const left = [
    tenths === null ? null : t('in {hours} h', { hours: formatTenths(tenths) }),
    days === null
      ? null
      : days === 0
        ? t('today is the last day')
        : t('{n, plural, one {in # day} other {in # days}}', { n: days }),
  ].filter((part) => part !== null);
  return left.length > 0 ? left.join(', ') : t('not known when');
}

function cellOf(row: Pick<BoardRow, 'cells'>, id: OperationId): BoardCell {
  const cell = row.cells.find((one) => one.id === id);
  if (!cell) throw new Error(`The board has no cell ${id}`);
  return cell;
}
