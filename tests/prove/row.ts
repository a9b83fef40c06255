/**
 * What a part of `npm run prove` hands on: one row for each thing it measured. `good` is the part's own judgement of
 * `measured` against `wanted`; whoever reads the table sees all three and can judge again.
 */
export interface Row {
  readonly part: string;
  readonly what: string;
  /** The command that measures this again, from a clone. */
  readonly command: string;
  readonly measured: string;
  readonly wanted: string;
  /** Null: this machine cannot measure it, and `measured` says why. */
  readonly good: boolean | null;
}

/** Starts a line of standard output that holds a part's rows; everything else a part prints is for a person. */
export const ROWS = 'rows of the proof: ';

/** Hands a part's rows on. A row that is not good makes the part's exit code 1, so a part run alone says so too. */
export function report(rows: readonly Row[]): void {
  process.stdout.write(`${ROWS}${JSON.stringify(rows)}\n`);
  if (rows.length === 0 || rows.some(({ good }) => good === false)) process.exitCode = 1;
}

/** The rows in what a part printed; empty when it ended before it handed any on. */
export function rowsIn(output: string): Row[] {
  return output
    .split('\n')
    .filter((line) => line.startsWith(ROWS))
    .flatMap((line) => JSON.parse(line.slice(ROWS.length)) as Row[]);
}
