/** What Stryker writes, as far as it is read here. */
export interface StrykerReport {
  readonly files: Readonly<Record<string, { readonly mutants: readonly { readonly status: string }[] }>>;
}

export interface Counts {
  /** A test failed, or the program no longer came to an end. */
  readonly killed: number;
  /** No test noticed, or none came by. */
  readonly survived: number;
  /** Left out by the configuration, or by a comment in the source that says why. */
  readonly ignored: number;
}

const NOTICED = ['Killed', 'Timeout'];
const IGNORED = ['Ignored', 'CompileError'];

export function countsOf({ files }: StrykerReport): Map<string, Counts> {
  return new Map(
    Object.entries(files).map(([path, { mutants }]) => {
      const killed = mutants.filter(({ status }) => NOTICED.includes(status)).length;
      const ignored = mutants.filter(({ status }) => IGNORED.includes(status)).length;
      // Whatever else a status says counts against the tests: survived, not covered, broken off.
      return [path, { killed, ignored, survived: mutants.length - killed - ignored }];
    }),
  );
}

export function sum(counts: Iterable<Counts>): Counts {
  let [killed, survived, ignored] = [0, 0, 0];
  for (const one of counts) {
    killed += one.killed;
    survived += one.survived;
    ignored += one.ignored;
  }
  return { killed, survived, ignored };
}

/** Per cent; nothing to judge is 0 and not 100. */
export const score = ({ killed, survived }: Counts): number =>
  killed + survived === 0 ? 0 : (100 * killed) / (killed + survived);
