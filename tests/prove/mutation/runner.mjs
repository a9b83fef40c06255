import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { bundleTests } from './bundle.mjs';
import { forget, ForgetfulWeakMap } from './forgetful.mjs';

/**
 * Runs the tests of lib/rules for Stryker in one process. The runner that comes with Stryker starts a worker and loads every module
 * anew for each mutant, which costs seconds; the rules are pure, so here a mutant is switched on, the tests that reach it run, and it
 * is switched off again. A mutant that acts while modules load gets all modules evaluated anew, with it switched on.
 */

const world = (globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {});

const fileOf = (id) => id.slice(0, id.indexOf('#'));

class RunsHere {
  /** The copy of the repository; the process goes there only after this file is loaded. */
  #root;
  #script;
  #judgesOf;
  #collect;
  /** Test file -> its tests, of the modules as they are loaded now. */
  #loaded = new Map();
  #load;
  #times = {};

  get #timesKept() {
    return join(this.#root, 'test-times.json');
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.#root = process.cwd();
    // Nobody is left to report to.
    process.on('disconnect', () => process.exit(1));
    const { code, judgesOf } = await bundleTests(this.#root);
    this.#script = new Script(code, { filename: join(this.#root, 'all-tests.cjs') });
    this.#judgesOf = judgesOf;
    ({ collect: this.#collect } = await import(join(this.#root, 'tests/prove/mutation/tests-here.mjs')));
    if (existsSync(this.#timesKept)) this.#times = JSON.parse(readFileSync(this.#timesKept, 'utf8'));
    this.#forget();
  }

  /** Modules are loaded anew from here on. */
  #forget() {
    const exported = { exports: {} };
    this.#script.runInThisContext()(
      exported,
      createRequire(join(this.#root, 'all-tests.cjs')),
      ForgetfulWeakMap,
    );
    this.#load = exported.exports;
    this.#loaded.clear();
  }

  #testsOf(file) {
    const known = this.#loaded.get(file);
    if (known !== undefined) return known;
    const seen = new Map();
    const tests = this.#collect(this.#load[file]).map(({ name, run }) => {
      const before = seen.get(name) ?? 0;
      seen.set(name, before + 1);
      return { id: `${file}#${name}${before === 0 ? '' : ` (${before + 1})`}`, file, name, run };
    });
    this.#loaded.set(file, tests);
    return tests;
  }

  async dryRun({ files }) {
    world.activeMutant = undefined;
    const tests = [];
    const mutated = files?.map((file) => relative(this.#root, file));
    for (const file of this.#judgesOf(mutated)) {
      for (const test of this.#testsOf(file)) {
        world.currentTestId = test.id;
        tests.push(await this.#run(test));
        world.currentTestId = undefined;
      }
    }
    this.#times = Object.fromEntries(tests.map(({ id, timeSpentMs }) => [id, timeSpentMs]));
    writeFileSync(this.#timesKept, JSON.stringify(this.#times));
    return { status: 'complete', tests, mutantCoverage: world.mutantCoverage };
  }

  async #run({ id, file, name, run }) {
    forget();
    const start = performance.now();
    try {
      await run();
      return {
        id,
        name,
        fileName: join(this.#root, file),
        status: 0,
        timeSpentMs: performance.now() - start,
      };
    } catch (error) {
      const failureMessage = error instanceof Error ? error.message : String(error);
      return { id, name, fileName: join(this.#root, file), status: 1, failureMessage, timeSpentMs: 0 };
    }
  }

  async mutantRun({
    activeMutant,
    testFilter,
    hitLimit,
    mutantActivation,
    reloadEnvironment,
    sandboxFileName,
  }) {
    const whileLoading = mutantActivation === 'static';
    Object.assign(world, { activeMutant: whileLoading ? activeMutant.id : undefined, hitCount: 0, hitLimit });
    if (whileLoading || reloadEnvironment) this.#forget();
    const judges = this.#judgesOf([relative(this.#root, sandboxFileName)]);
    const results = whileLoading
      ? await this.#untilFailure(judges)
      : await this.#untilFailureOf(
          testFilter.filter((id) => judges.includes(fileOf(id))),
          activeMutant.id,
        );
    world.activeMutant = undefined;
    const tooOften = determineHitLimitReached(world.hitCount, hitLimit);
    return toMutantRunResult(tooOften ?? { status: 'complete', tests: results });
  }

  /** The mutant acts while modules load: file by file, the nearest first, and a file that cannot be loaded any more has noticed it. */
  async #untilFailure(files) {
    const results = [];
    for (const file of files) {
      let tests;
      try {
        tests = this.#testsOf(file);
      } catch (error) {
        const id = Object.keys(this.#times).find((known) => known.startsWith(`${file}#`)) ?? `${file}#`;
        return [...results, { id, name: file, status: 1, failureMessage: String(error), timeSpentMs: 0 }];
      }
      // A row that is gone is a test that is gone: the file has noticed nothing by that, only what fails counts.
      for (const test of tests) {
        results.push(await this.#run(test));
        if (results.at(-1).status === 1) return results;
      }
    }
    return results;
  }

  /** The mutant acts in functions: everything is loaded without it, then only the tests that come by run with it. */
  async #untilFailureOf(ids, mutant) {
    const wanted = ids.toSorted((one, other) => (this.#times[one] ?? 0) - (this.#times[other] ?? 0));
    const byId = new Map();
    for (const file of new Set(wanted.map((id) => fileOf(id))))
      for (const test of this.#testsOf(file)) byId.set(test.id, test);
    world.activeMutant = mutant;
    const results = [];
    for (const id of wanted) {
      results.push(await this.#run(byId.get(id)));
      if (results.at(-1).status === 1) return results;
    }
    return results;
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'here', RunsHere)];
