/** One way out for the operating scripts: programs they started end first, servers they started after them. */
import { stopChildren } from './children.mjs';
import { explain, say } from './say.mjs';

/** @type {(() => Promise<void>)[]} */
const lastActs = [];

/** @type {Promise<never> | undefined} */
let ending;

/**
 * Something to do on the way out, in reverse order of asking, after the started programs have left.
 * @param {() => Promise<void>} act
 */
export function atEnd(act) {
  lastActs.push(act);
}

/** Is the script on its way out? Failures then are only the echo of stopping. */
export function isEnding() {
  return ending !== undefined;
}

/**
 * Stops everything and leaves. Called again it waits for the first call.
 * @param {number} code exit code
 * @returns {Promise<never>}
 */
export function end(code) {
  ending ??= (async () => {
    let worst = code;
    for (const act of [stopChildren, ...lastActs.reverse()]) {
      await act().catch((error) => {
        console.error(explain(error));
        worst = worst || 1;
      });
    }
    process.exit(worst);
  })();
  return ending;
}

/**
 * Stops everything when the person or the system asks for it.
 * @param {number} code exit code then: 0 where being stopped is the normal end, else not 0
 */
export function endOnSignals(code) {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGBREAK']) {
    process.on(signal, () => {
      if (!isEnding()) {
        say('\nStopping ...');
        void end(code);
      }
    });
  }
}

/**
 * Stops everything when npm is gone: npm passes a signal to its shell only, and the shell passes it to nobody.
 * Started without npm, the script lives until it is stopped itself.
 * @param {number} code exit code then
 */
export function endWithNpm(code) {
  if (!process.env.npm_lifecycle_event) {
    return;
  }
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) {
      void end(code);
    }
  }, 500).unref();
}

/**
 * Runs the script's work. What goes wrong is said in plain words and everything is stopped.
 * @param {() => Promise<number>} work gives the exit code
 */
export async function runScript(work) {
  try {
    await end(await work());
  } catch (error) {
    if (!isEnding()) {
      console.error(`\n${explain(error)}`);
      await end(1);
    }
  }
}
