'use client';

import { English, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import Link from '../_ui/link';
import { useState } from 'react';
import { momentInWords } from '@/app/_ui/moment';
import { EmptyState } from '@/app/_ui/page';
import {
  bookedInWords,
  BOARD_COLUMNS,
  cellsOfRow,
  changeInWords,
  dueInWords,
  flightInWords,
  isFlyableNow,
  laneOfColumn,
  type CellOfBoard,
} from '@/lib/fleet/board-columns';
import { type Board as BoardView, type BoardRow, type LightNow } from '@/lib/fleet/read-board';
import { FreshMark, useIsLost } from '@/app/_ui/freshness';
import styles from './board.module.css';
import { OUTCOME_WORDS } from './words';

/** The board itself. Rows keep their order (registration), so that the eye finds an aircraft where it was. */
export function Board({ board }: { board: BoardView }) {
  const t = useWords();
  const [baseId, setBaseId] = useState('');
  const [flyable, setFlyable] = useState(false);
  const lost = useIsLost();
  const bases = board.bases.filter((base) => baseId === '' || base.id === baseId);
  const lightOf = new Map(board.bases.map((base) => [base.id, base.now.light]));
  const atBase = board.rows.filter((row) => baseId === '' || row.baseId === baseId);
  const canFly = atBase.filter((row) => isFlyableNow(row, lightOf.get(row.baseId) ?? 'night'));
  const shown = flyable && !lost ? canFly : atBase;
  const lights = new Set(bases.map((base) => base.now.light));
  const lightNow = lights.size === 1 ? [...lights][0] : null;
  return (
    <>
      <div className={styles.tools}>
        {board.bases.length > 1 && (
          <fieldset className={styles.bases}>
            <legend className="out-of-sight">{t('Base')}</legend>
            {[{ id: '', ident: t('All bases') }, ...board.bases].map((base) => (
              <label key={base.id} className={styles.pick}>
                <input
                  type="radio"
                  name="base"
                  value={base.id}
                  checked={baseId === base.id}
                  onChange={() => setBaseId(base.id)}
                />
                {base.ident}
              </label>
            ))}
          </fieldset>
        )}
        <label className={styles.pick}>
          <input type="checkbox" checked={flyable} onChange={(event) => setFlyable(event.target.checked)} />
          {t('Flyable now ({which})', { which: lost ? t('not known') : canFly.length })}
        </label>
        <ul className={styles.lights}>
          {bases.map((base) => (
            <li key={base.id}>
              <b>{base.ident}</b> {base.name}: {lightInWords(t, base.now, base.zone)}
            </li>
          ))}
        </ul>
      </div>
      {shown.length === 0 ? (
        <EmptyState
          title={flyable ? t('No aircraft can leave now on its usual use.') : t('No aircraft here.')}
        >
          <p>{t('Take the tick off “Flyable now” or choose another base to see the rest.')}</p>
        </EmptyState>
      ) : (
        <div
          role="table"
          aria-label={t('Fleet')}
          className={`${styles.table} ${lightNow ? styles[lightNow] : ''}`}
        >
          <div role="rowgroup" className={styles.headGroup}>
            <div role="row" className={`${styles.row} ${styles.head}`}>
              <span role="columnheader">{t('Aircraft')}</span>
              {BOARD_COLUMNS.map((column) => (
                <span role="columnheader" key={column.key}>
                  {t(column.name)}
                  {column.light === lightNow && <Now />}
                </span>
              ))}
              <span role="columnheader">{t('Write-ups')}</span>
              <span role="columnheader">{t('Next due')}</span>
            </div>
          </div>
          <div role="rowgroup" className={styles.body}>
            {shown.map((row) => (
              <Row key={row.aircraftId} row={row} light={lightOf.get(row.baseId) ?? null} asOf={board.asOf} />
            ))}
          </div>
        </div>
      )}
      <p className={styles.legend}>
        {t(
          'Each answer is for a local flight of one hour from the aircraft’s base, below 10,000 ft, over land, on its usual use. A smaller line says where the other use has another answer. What comes next is for an aircraft in the air at that moment, hours of booked flights counted, until the end of tomorrow. For a flight of your own, compose it.',
        )}
      </p>
    </>
  );
}

interface OfRow {
  readonly row: BoardRow;
  readonly asOf: string;
}

function Row({ row, light, asOf }: OfRow & { light: LightNow['light'] | null }) {
  const t = useWords();
  const { ahead, nextDue } = row;
  const booked = nextDue && bookedInWords(t, nextDue, ahead?.bookedTenths ?? 0);
  return (
    <div role="row" className={styles.row}>
      <div role="rowheader" className={styles.aircraft}>
        <span className={styles.name}>
          <Link href={`/desk/aircraft/${row.aircraftId}`} className={styles.registration}>
            {row.registration}
          </Link>{' '}
          <span className={styles.use}>{row.forHire ? t('for hire') : t('private')}</span>
        </span>
        <span className={styles.type}>
          {row.typeName}, {row.baseIdent}
        </span>
        {ahead?.flight && (
          <span className={styles[ahead.flight.state]}>{flightInWords(t, ahead.flight, row.zone, asOf)}</span>
        )}
      </div>
      {cellsOfRow(row).map((cell) => (
        <Cell key={cell.column.key} cell={cell} row={row} asOf={asOf} isNow={cell.column.light === light} />
      ))}
      <div role="cell" className={styles.count}>
        <span className={styles.label}>{t('Write-ups')}</span>
        <span>
          {row.openWriteUps === 0
            ? t('None open')
            : t('{openWriteUps} open', { openWriteUps: row.openWriteUps })}
        </span>
        {row.undecided > 0 && <b>{t('{undecided} undecided', { undecided: row.undecided })}</b>}
        {row.deferred > 0 && <span>{t('{deferred} deferred', { deferred: row.deferred })}</span>}
      </div>
      <div role="cell" className={styles.due}>
        <span className={styles.label}>{t('Next due')}</span>
        {nextDue ? (
          <>
            <span>{nextDue.name}</span>
            <b>{dueInWords(t, nextDue)}</b>
            {booked && <span className={styles.booked}>{booked}</span>}
          </>
        ) : (
          <span>{t('Not known')}</span>
        )}
      </div>
    </div>
  );
}

function Cell({ cell, row, asOf, isNow }: OfRow & { cell: CellOfBoard; isNow: boolean }) {
  const t = useWords();
  const { column, usual, other } = cell;
  const lost = useIsLost();
  const lane = laneOfColumn(column, row.ahead);
  // Said once where the same thing decides now and then.
  const headline = lane?.next && lane.next.headline === usual.headline ? null : usual.headline;
  return (
    <div role="cell" className={`${styles.cell} ${isNow || lane ? styles.current : ''}`}>
      <Link
        href={`/desk/aircraft/${row.aircraftId}?kind=${usual.id}`}
        className={styles.open}
        aria-label={`${row.registration} ${usual.name}: ${lost ? t('not known') : t(OUTCOME_WORDS[usual.outcome])}`}
      >
        <span className={styles.label}>
          {t(column.name)}
          {isNow && <Now />}
        </span>
        <FreshMark outcome={usual.outcome} size={isNow ? 'medium' : 'small'} />
      </Link>
      {!lost && headline && (
        <p className={styles.headline}>
          <English>{headline}</English>
        </p>
      )}
      {!lost && lane && row.ahead && (
        <p className={lane.next ? styles.next : styles.same}>
          {changeInWords(t, lane, usual.outcome, { until: row.ahead.until, zone: row.zone, asOf })}
        </p>
      )}
      {!lost && other && (
        <p className={styles.other}>
          {other.use === 'private' ? t('Private') : t('For hire')}: {t(OUTCOME_WORDS[other.outcome])}
        </p>
      )}
    </div>
  );
}

/** Marks the column that a flight of an hour from now falls under. */
const Now = () => {
  const t = useWords();
  return (
    <>
      {' '}
      <span className={styles.now}>{t('now')}</span>
    </>
  );
};

function lightInWords(
  t: Translate,
  { light, sunsetAt, nightFrom, nightUntil }: LightNow,
  zone: string,
): string {
  const clock = (at: string) => momentInWords(at, zone, true);
  // Next dawn before next dusk: it is night at this moment.
  if (nightUntil && (!nightFrom || nightUntil < nightFrom))
    return t('night until {clock}', { clock: clock(nightUntil) });
  const coming = [
    sunsetAt && t('sunset {clock}', { clock: clock(sunsetAt) }),
    nightFrom && t('night from {clock}', { clock: clock(nightFrom) }),
  ];
  const words = ['day', ...coming].filter(Boolean).join(', ');
  return light === 'night' ? t('{words}; a flight of an hour from now counts as night', { words }) : words;
}
