/** Adds up what the checks after each fault found, and makes a row of it. */
import type { Row } from '../row';
import type { Faulty } from './check';

export const COMMAND = 'node --conditions=react-server --import tsx tests/prove/faults.ts';

/** How many times so many rounds are run: WHEELCHOCK_ROUNDS times as many as usual. */
export const rounds = (usual: number): number =>
  Math.max(1, Math.round(usual * Number(process.env['WHEELCHOCK_ROUNDS'] ?? '1')));

const NAMES = {
  lost: 'acknowledged writes lost',
  doubled: 'double or half effects',
  chain: 'audit faults',
  wrongGo: 'wrong go',
  otherAnswer: 'other answers',
} as const satisfies Record<keyof Faulty, string>;

const KINDS = Object.keys(NAMES) as (keyof Faulty)[];

export class Tally {
  private readonly counts = new Map<keyof Faulty, number>();
  checks = 0;

  add(found: Partial<Faulty>): void {
    this.checks += 1;
    for (const kind of KINDS) {
      const named = found[kind] ?? [];
      this.counts.set(kind, (this.counts.get(kind) ?? 0) + named.length);
      for (const one of named.slice(0, 5)) process.stderr.write(`  ${NAMES[kind]}: ${one}\n`);
    }
  }

  get clean(): boolean {
    return KINDS.every((kind) => (this.counts.get(kind) ?? 0) === 0);
  }

  toString(): string {
    return KINDS.map((kind) => `${this.counts.get(kind) ?? 0} ${NAMES[kind]}`).join(', ');
  }
}

interface Measured {
  readonly what: string;
  /** What was done, in figures. */
  readonly done: string;
  /** What has to have been done for the row to say anything. */
  readonly atLeast: string;
  readonly enough: boolean;
  readonly tally: Tally;
}

export const rowOf = ({ what, done, atLeast, enough, tally }: Measured): Row => ({
  part: 'faults',
  what,
  command: COMMAND,
  measured: `${done}; ${tally.toString()}`,
  wanted: `${atLeast}; 0 of each`,
  good: enough && tally.clean && tally.checks > 0,
});
