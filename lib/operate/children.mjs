/**
 * Programs that these scripts start. Each one is on a list, so that stopping the script stops all of them.
 */
import { spawn } from 'node:child_process';
import { ROOT } from './places.mjs';
import { Trouble, diskFull, speaksOfFullDisk } from './say.mjs';

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();

/** Set when everything is being stopped: nothing new may start behind the back of that. */
let closing = false;

/** How long a program may take to leave after it was asked to. */
const PATIENCE_MS = 8000;

/**
 * Starts a program that is ended by `stopChildren` at the latest.
 * @param {string} command
 * @param {string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 */
export function startChild(command, args, options = {}) {
  if (closing) {
    throw new Trouble('Nothing more is started while everything is being stopped.');
  }
  const child = spawn(command, args, { cwd: ROOT, ...options });
  running.add(child);
  const gone = () => running.delete(child);
  child.once('exit', gone);
  child.once('error', gone);
  return child;
}

/**
 * Runs a program to its end.
 * @param {string} command
 * @param {string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, cwd?: string, show?: boolean, timeoutMs?: number, shell?: boolean }} [options]
 *   `show` lets the program write to the terminal; otherwise its words are only kept.
 * @returns {Promise<{ code: number, output: string }>} `code` is 127 when it could not be started
 */
export function runToEnd(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = startChild(command, args, {
      cwd: options.cwd ?? ROOT,
      env: { ...process.env, ...options.env },
      shell: options.shell ?? false,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const timer = options.timeoutMs ? setTimeout(() => child.kill('SIGKILL'), options.timeoutMs) : undefined;
    let output = '';
    /** @param {Buffer} chunk @param {NodeJS.WriteStream} to */
    const take = (chunk, to) => {
      output = (output + chunk.toString('utf8')).slice(-400_000);
      if (options.show) {
        to.write(chunk);
      }
    };
    child.stdout?.on('data', (chunk) => take(chunk, process.stdout));
    child.stderr?.on('data', (chunk) => take(chunk, process.stderr));
    child.once('error', (error) => {
      clearTimeout(timer);
      resolve({ code: 127, output: `${output}\n${error.message}` });
    });
    child.once('close', (code, signal) => {
      clearTimeout(timer);
      resolve({ code: code ?? (signal ? 130 : 1), output });
    });
  });
}

/**
 * Runs a program that must succeed.
 * @param {string} what the step in plain words, for the message
 * @param {string} command
 * @param {string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, cwd?: string, show?: boolean, shell?: boolean }} [options]
 */
export async function runOrStop(what, command, args, options = {}) {
  const { code, output } = await runToEnd(command, args, options);
  if (code === 0) {
    return output;
  }
  if (speaksOfFullDisk(output)) {
    throw diskFull();
  }
  const tail = options.show ? '' : `\n${output.trim().split('\n').slice(-25).join('\n')}`;
  throw new Trouble(`${what} failed (exit ${code}).${tail}`);
}

/**
 * Asks one program to leave and waits; takes it away when it will not.
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<void>}
 */
export function stopChild(child) {
  if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) {
    return Promise.resolve();
  }
  return new Promise((resolve) => {
    const timer = setTimeout(() => child.kill('SIGKILL'), PATIENCE_MS);
    child.once('exit', () => {
      clearTimeout(timer);
      resolve();
    });
    child.kill('SIGTERM');
  });
}

/** Ends everything still running and lets nothing more start. */
export async function stopChildren() {
  closing = true;
  await Promise.all([...running].map(stopChild));
}
