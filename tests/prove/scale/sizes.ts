/** The sizes that are measured against one another. In all of them an aircraft has the same number of write-ups. */
import type { OperatorSize } from './copy';

export interface Size {
  readonly name: string;
  readonly operators: readonly OperatorSize[];
}

/** Of an aircraft: 3 of 100 write-ups are open, 2 are deferred, the others closed. */
export const AN_AIRCRAFT = { open: 6, deferred: 4, closed: 190 } as const;

/** Operators that stand in every size but the smallest, and are the ones that are asked. Their place is their number. */
export const ASKED = {
  /** Eight aircraft, as the small size has. */
  eight: { number: 1, aircraft: 8, writeUps: AN_AIRCRAFT },
  twenty: { number: 2, aircraft: 20, writeUps: AN_AIRCRAFT },
  fifty: { number: 3, aircraft: 50, writeUps: AN_AIRCRAFT },
  /** Eight aircraft with as much open, and eight times as much behind them. */
  old: { number: 4, aircraft: 8, writeUps: { ...AN_AIRCRAFT, closed: 1590 } },
} as const satisfies Record<string, OperatorSize>;
export type Asked = keyof typeof ASKED;

const all = Object.values(ASKED);

/** Operators, aircraft and write-ups of a size. */
export const totals = ({ operators }: Size) => ({
  operators: operators.length,
  aircraft: sum(operators.map(({ aircraft }) => aircraft)),
  writeUps: sum(operators.map(writeUpsOf)),
});

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

export const writeUpsOf = ({ aircraft, writeUps: { open, deferred, closed } }: OperatorSize): number =>
  aircraft * (open + deferred + closed);

/** The asked operators and as many others as make the count; what is left of aircraft and write-ups is shared out evenly. */
function sizeOf(name: string, operators: number, aircraft: number, writeUps: number): Size {
  const others = operators - all.length;
  const left = {
    aircraft: aircraft - sum(all.map((one) => one.aircraft)),
    writeUps: writeUps - sum(all.map(writeUpsOf)),
  };
  const each = Math.ceil(left.writeUps / left.aircraft);
  const { open, deferred } = AN_AIRCRAFT;
  const rest = Array.from({ length: others }, (_, at): OperatorSize => {
    const upTo = (n: number) => Math.round((left.aircraft * n) / others);
    return {
      number: all.length + 1 + at,
      aircraft: upTo(at + 1) - upTo(at),
      writeUps: { open, deferred, closed: each - open - deferred },
    };
  });
  return { name, operators: [...all, ...rest] };
}

/**
 * `middle` ends within minutes; `full` is the size the issue names. WHEELCHOCK_SCALE_OPERATORS, _AIRCRAFT and _WRITE_UPS set
 * the largest size by hand.
 */
export function sizesToMeasure(env: Record<string, string | undefined> = process.env): readonly Size[] {
  const isFull = env['WHEELCHOCK_SCALE'] === 'full';
  const given = (name: string, otherwise: number) => Number(env[`WHEELCHOCK_SCALE_${name}`] ?? otherwise);
  const largest = {
    operators: given('OPERATORS', isFull ? 200 : 12),
    aircraft: given('AIRCRAFT', isFull ? 10_000 : 500),
    writeUps: given('WRITE_UPS', isFull ? 2_000_000 : 111_200),
  };
  return [
    { name: 'small', operators: [ASKED.eight] },
    { name: 'few', operators: all },
    ...(isFull ? [sizeOf('middle', 20, 1_000, 211_200)] : []),
    sizeOf('large', largest.operators, largest.aircraft, largest.writeUps),
  ];
}
