/**
 * Mutation testing of lib/rules (Stryker): every condition, border, sum and block is changed, one at a time, and a test has to notice.
 * By hand, for one file or a few: `WHEELCHOCK_MUTATE=lib/rules/recall.ts npx stryker run tests/prove/mutation.config.mjs`, then
 * `node tests/prove/mutation/survivors.mjs`. As part of the proof: mutation.ts beside this.
 */

const asked = process.env.WHEELCHOCK_MUTATE;
const name = process.env.WHEELCHOCK_MUTATION_NAME ?? 'by-hand';

// The processes started from here have it from here: few random cases, and the zone in which lib/operate/run-tests.ts begins too.
process.env.WHEELCHOCK_CASES = '200';
process.env.TZ = 'UTC';

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
const config = {
  testRunner: 'here',
  plugins: ['./tests/prove/mutation/runner.mjs'],
  mutate: asked === undefined ? ['lib/rules/**/*.ts'] : asked.split(','),
  mutator: {
    // A text becomes an empty text. Left out as a whole, because two kinds of text there are: wording of a sentence or of the law, which a
    // test could only repeat; and names out of a closed list (`'no-go'`, `'mel'`), where an empty one does not compile. Citations
    // are asserted as sets by tests/properties/reference.test.ts and found in the registry by law-registry.test.ts. What is asked of a
    // text (`===`, `if`, which member of a list) is changed by the other mutators. Nothing else is left out, and no file.
    excludedMutations: ['StringLiteral'],
  },
  coverageAnalysis: 'perTest',
  // Two cores here, and others want one; one process also keeps the times of tests comparable.
  concurrency: 1,
  // Wide: on a busy machine a test that is only slow must not count as one that noticed. Endless loops end by their count of rounds.
  timeoutMS: 60_000,
  timeoutFactor: 5,
  dryRunTimeoutMinutes: 20,
  tempDirName: `.data/mutation/copy-${name}`,
  cleanTempDir: 'always',
  // What no test of the rules imports or reads need not be copied.
  ignorePatterns: [
    '.*',
    'public',
    'prisma',
    'lib/db',
    '/app/bench',
    '/app/office',
    '/app/api',
    'tests/services',
    'tests/access',
    'tests/journeys',
    'test-results',
    'playwright-report',
    '*.tsbuildinfo',
  ],
  // By hand only what changed is judged again, and nothing that acts while modules load; the proof begins with none of it
  // (mutation.ts).
  incremental: true,
  incrementalFile: `.data/mutation/so-far-${name}.json`,
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: `.data/mutation/report-${name}.json` },
  allowConsoleColors: false,
  warnings: { slow: false },
};

export default config;
