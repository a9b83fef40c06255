/** What is wanted, set on 2026-11-27 before anything was measured, and what the measured times come to. */
import type { Row } from '../row';
import { exponent, p50, p95 } from './figures';
import { KINDS, type Kind, type Times } from './measure';
import { ASKED, totals, writeUpsOf, type Asked, type Size } from './sizes';

/** Other operators' rows must not slow anybody: over the whole range this is at most a doubling or so. */
const FROM_OTHERS = 0.15;

/** Nor must what an aircraft has behind it. */
const FROM_HISTORY = 0.15;

/** A board judges every aircraft, and a no go asks every sister ship: in line with their number, and no worse. */
const FROM_AIRCRAFT: Readonly<Record<Kind, number>> = { board: 1.05, answer: 1.05, write: 0.15 };

/** How many times an empty page, and how many times the bare SQL: eight aircraft, p95. */
const TIMES_EMPTY: Readonly<Record<Kind, number>> = { board: 20, answer: 20, write: 10 };
const TIMES_BARE: Readonly<Record<Kind, number>> = { board: 50, answer: 50, write: 15 };

const NAMES: Readonly<Record<Kind, string>> = {
  board: 'board (/desk)',
  answer: 'answer (go or no go of a flight)',
  write: 'write (a write-up by /api/sync/findings)',
};

const shown = (value: number): string => value.toFixed(value < 10 ? 2 : value < 100 ? 1 : 0);

export function rowsOf(all: readonly Times[], sizes: readonly Size[], command: string): Row[] {
  const row = (what: string, measured: string, wanted: string, good: boolean): Row => ({
    part: 'scale',
    what,
    command,
    measured,
    wanted,
    good,
  });
  const at = (size: string, asked: Asked) => all.find((one) => one.size === size && one.asked === asked);
  const largest = sizes.at(-1)!;
  const rows: Row[] = [];
  const lost = all.filter(({ failed }) => failed.count > 0);
  const count = lost.reduce((sum, { failed }) => sum + failed.count, 0);
  const words = lost.map(({ size, asked, failed }) => ` (${size}, ${asked}: ${failed.words})`).join('');
  rows.push(
    row(
      'requests that were not answered as they should be, cold or warm',
      `${count}${words}`,
      '0',
      count === 0,
    ),
  );
  for (const times of all) {
    for (const kind of KINDS) rows.push(row(...ratios(times, kind, sizes)));
  }
  for (const kind of KINDS) {
    for (const asked of ['eight', 'fifty'] as const) {
      const points = sizes.flatMap((size) => {
        const times = at(size.name, asked);
        return times ? [[totals(size).writeUps, times.served[kind]] as const] : [];
      });
      if (points.length < 2) continue;
      const what = `${NAMES[kind]}: growth with all operators' write-ups, ${ASKED[asked].aircraft} aircraft`;
      rows.push(row(what, ...grown(points, FROM_OTHERS)));
    }
    const inside = (['eight', 'twenty', 'fifty'] as const).flatMap((asked) => {
      const times = at(largest.name, asked);
      return times ? [[ASKED[asked].aircraft, times.served[kind]] as const] : [];
    });
    rows.push(
      row(`${NAMES[kind]}: growth with the operator's aircraft`, ...grown(inside, FROM_AIRCRAFT[kind])),
    );
    const behind = (['eight', 'old'] as const).flatMap((asked) => {
      const times = at(largest.name, asked);
      return times ? [[writeUpsOf(ASKED[asked]), times.served[kind]] as const] : [];
    });
    rows.push(
      row(
        `${NAMES[kind]}: growth with closed write-ups of the same aircraft`,
        ...grown(behind, FROM_HISTORY),
      ),
    );
  }
  return rows;
}

/** Of one place: p95 as times an empty page of the same server and times the bare SQL of the same database. */
function ratios(times: Times, kind: Kind, sizes: readonly Size[]): [string, string, string, boolean] {
  const { size, asked } = times;
  const { operators, aircraft, writeUps } = totals(sizes.find(({ name }) => name === size)!);
  const [served, empty, bare] = [times.served[kind], times.empty[kind], times.bare[kind]];
  const [overEmpty, overBare] = [p95(served) / p95(empty), p95(served) / p95(bare)];
  const what = `${NAMES[kind]}: ${asked} (${ASKED[asked].aircraft} aircraft, ${writeUpsOf(ASKED[asked])} write-ups) among ${operators} operators, ${aircraft} aircraft, ${writeUps} write-ups`;
  const measured =
    `p95 ${shown(overEmpty)} x empty page, ${shown(overBare)} x bare SQL (p50 ${shown(p50(served))}, p95 ${shown(p95(served))} ms; ` +
    `empty p95 ${shown(p95(empty))}, bare p95 ${shown(p95(bare))} ms; n ${served.length})`;
  // The bounds are for eight aircraft; of more aircraft the growth is judged.
  if (ASKED[asked].aircraft > 8) return [what, measured, 'stated; its growth is judged below', true];
  const [most, mostBare] = [TIMES_EMPTY[kind], TIMES_BARE[kind]];
  return [
    what,
    measured,
    `at most ${most} x empty page and ${mostBare} x bare SQL`,
    overEmpty <= most && overBare <= mostBare,
  ];
}

function grown(
  points: readonly (readonly [x: number, times: readonly number[]])[],
  most: number,
): [measured: string, wanted: string, good: boolean] {
  const of = (figure: (times: readonly number[]) => number) =>
    exponent(points.map(([x, times]) => [x, figure(times)] as const));
  const [middle, slow] = [of(p50), of(p95)];
  const range = `${points[0]![0]} to ${points.at(-1)![0]}`;
  return [
    `exponent ${middle.toFixed(2)} of p50, ${slow.toFixed(2)} of p95 (${range}, ${points.length} points)`,
    `both at most ${most}`,
    middle <= most && slow <= most,
  ];
}
