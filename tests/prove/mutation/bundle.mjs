import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/** All tests that judge lib/rules, and all they import from the repository, as one script that can be evaluated again and again. */

/** These read the source text of lib/rules, which is not itself while it holds mutants. */
const READ_SOURCE = ['purity', 'words', 'signature-table', 'production-files', 'no-markup'];
/** Of screens: nothing of lib/rules is asserted in it, and it costs more than most. */
const OF_SCREENS = ['desk-flight-form'];

/**
 * Of the property tests those that say something with few cases. The others ask for thousands and would have to run to their end for every mutant that survives.
 */
const PROPERTIES = ['lines', 'reference', 'lacking', 'over-time'].map(
  (name) => `tests/properties/${name}.test.ts`,
);

/**
 * These ask through the whole engine or by the hundred, and cost seconds. They judge a mutant only in a file that they import themselves
 * or that is named here, or every survivor would pay for all of them. It can only make the score lower.
 */
const ONLY_THEIR_OWN = Object.fromEntries(
  Object.entries({
    'rules/airports': [],
    'rules/board-ahead': [],
    'properties/lacking': ['lacking', 'where-entered'],
    'properties/over-time': ['over-time', 'moments-over-time', 'light-over-time', 'clock-change'],
    'rules/equipment-confirmed': [],
    'rules/flight-warnings': ['flight-warnings', 'spent-hours', 'planned-hours'],
    'rules/forecast': ['forecast', 'due', 'spent-hours', 'planned-hours'],
    'rules/insight-availability': ['insight/'],
    'rules/lacking': ['lacking', 'where-entered'],
    'rules/over-time': ['over-time', 'moments-over-time', 'light-over-time', 'clock-change', 'zone-fits'],
    'rules/proposals': ['proposals', 'inspect-for-permit', 'signers-for', 'planned-hours'],
    'rules/same-finding': ['findings/'],
    'rules/sun-of-day': ['sun'],
  }).map(([name, starts]) => [`tests/${name}.test.ts`, starts.map((start) => `lib/rules/${start}`)]),
);

export function testFiles(root) {
  return ['rules', 'outside']
    .flatMap((folder) =>
      readdirSync(join(root, 'tests', folder))
        .filter((name) => name.endsWith('.test.ts'))
        .filter((name) => ![...READ_SOURCE, ...OF_SCREENS].includes(name.replace('.test.ts', '')))
        .map((name) => `tests/${folder}/${name}`),
    )
    .filter((path) => readFileSync(join(root, path), 'utf8').includes('lib/rules'))
    .concat(PROPERTIES);
}

export async function bundleTests(root) {
  const files = testFiles(root);
  const { outputFiles, metafile } = await build({
    stdin: {
      contents: files
        .map((file) => `exports[${JSON.stringify(file)}] = () => require('./${file}');`)
        .join('\n'),
      resolveDir: root,
      loader: 'js',
    },
    absWorkingDir: root,
    bundle: true,
    write: false,
    metafile: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    conditions: ['react-server'],
    logLevel: 'error',
    plugins: [
      {
        name: 'tests-here',
        setup(one) {
          const here = (name) => join(root, 'tests/prove/mutation', name);
          one.onResolve({ filter: /^vitest$/ }, () => ({ path: here('tests-here.mjs'), external: true }));
          one.onResolve({ filter: /^fast-check$/ }, ({ importer }) =>
            importer === here('few-cases.ts') ? { external: true } : { path: here('few-cases.ts') },
          );
        },
      },
    ],
  });
  const imports = new Map(
    Object.entries(metafile.inputs).map(([path, input]) => [path, input.imports.map((one) => one.path)]),
  );
  /** Every file that `file` imports, straight or by others, with how many steps it is away. */
  const importedBy = (file) => {
    const steps = new Map([[file, 0]]);
    for (const [from, step] of steps)
      for (const path of imports.get(from) ?? []) if (!steps.has(path)) steps.set(path, step + 1);
    return steps;
  };
  const inputs = Object.keys(metafile.inputs);
  const judged = (file) => {
    const steps = importedBy(file);
    const starts = ONLY_THEIR_OWN[file];
    if (starts === undefined) return steps;
    const own = [
      ...imports.get(file),
      ...inputs.filter((path) => starts.some((start) => path.startsWith(start))),
    ];
    return new Map(own.filter((path) => steps.has(path)).map((path) => [path, steps.get(path)]));
  };
  const judges = new Map(files.map((file) => [file, judged(file)]));
  return {
    code: `(function (module, require, WeakMap) { const exports = module.exports;\n${outputFiles[0].text}\n})`,
    /** The test files that judge one of these files, those nearest to it first; all of them when nothing is said. */
    judgesOf: (paths) => {
      if (paths === undefined) return files;
      const away = (file) => Math.min(...paths.map((path) => judges.get(file).get(path) ?? Infinity));
      return files.filter((file) => away(file) < Infinity).toSorted((one, other) => away(one) - away(other));
    },
  };
}
