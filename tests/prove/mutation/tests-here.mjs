import { format } from 'node:util';
import {
  chai,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  customMatchers,
  getState,
  setState,
  GLOBAL_EXPECT,
} from '@vitest/expect';

/**
 * What a test file means by "vitest" while mutants are judged: the same `expect` (Vitest's own package), and tests that are only
 * collected here; runner.mjs runs them in its own process, thousands of times.
 */

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect);
expect.getState = () => getState(expect);
setState({ assertionCalls: 0 }, expect);
globalThis[GLOBAL_EXPECT] = expect;
expect.extend(expect, customMatchers);

/** Types say nothing at run time: whatever is asked of one is answered. */
const silent = new Proxy(() => silent, { get: () => silent });
export const expectTypeOf = () => silent;

let groups = [];
let collected = [];
let later = [];

/** Loads one test file and hands back its tests, in order: `{ name, run }`. */
export function collect(load) {
  groups = [{ name: '', beforeAll: [], beforeEach: [], afterEach: [] }];
  collected = [];
  later = [];
  load();
  // Groups open when the file is loaded to its end, as with Vitest: constants below them may be used in them.
  for (const open of later) open();
  return collected;
}

const fullName = (name) =>
  [...groups.map((group) => group.name), name].filter((part) => part !== '').join(' ');

export function describe(name, ...rest) {
  if (groups.length === 1) later.push(() => openGroup(name, rest));
  else openGroup(name, rest);
}

function openGroup(name, rest) {
  groups.push({ name, beforeAll: [], beforeEach: [], afterEach: [] });
  rest.find((part) => typeof part === 'function')();
  groups.pop();
}

export function test(name, ...rest) {
  const body = rest.find((part) => typeof part === 'function');
  const inside = [...groups];
  collected.push({
    name: fullName(name),
    run: async () => {
      for (const group of inside) for (const hook of group.beforeAll.splice(0)) await hook();
      for (const group of inside) for (const hook of group.beforeEach) await hook();
      try {
        await body();
      } finally {
        for (const group of inside.toReversed()) for (const hook of group.afterEach) await hook();
      }
    },
  });
}
export const it = test;

/** Names need only tell the rows apart; runner.mjs numbers those that are alike. */
const named = (name, row) => {
  const first = Array.isArray(row) ? row[0] : row;
  const filled = name.replaceAll(/\$([\w.]+)/g, (whole, path) => {
    const value = path.split('.').reduce((from, key) => from?.[key], first);
    return value === undefined ? whole : String(value);
  });
  return filled.includes('%') ? format(filled, ...(Array.isArray(row) ? row : [row])) : filled;
};
const each =
  (declare) =>
  (rows) =>
  (name, ...rest) => {
    const body = rest.find((part) => typeof part === 'function');
    for (const row of rows) declare(named(name, row), () => (Array.isArray(row) ? body(...row) : body(row)));
  };
describe.each = each(describe);
test.each = each(test);

export const beforeAll = (hook) => groups.at(-1).beforeAll.push(hook);
export const beforeEach = (hook) => groups.at(-1).beforeEach.push(hook);
export const afterEach = (hook) => groups.at(-1).afterEach.push(hook);
