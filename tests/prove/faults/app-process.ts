/** Starts, asks and kills the application's process (app.ts). */
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { build } from 'esbuild';
import { inRepository } from '@/lib/operate/places.mjs';
import { startChild } from '@/lib/operate/children.mjs';
import type { ActorRef } from '@/lib/access/actor';
import type { Result } from '@/lib/problems';
import type { Act } from './app';

type Child = ReturnType<typeof startChild>;

export interface Call {
  readonly act: Act;
  readonly ref: ActorRef;
  readonly input: Readonly<Record<string, unknown>>;
}

let bundled: Promise<string> | undefined;

/** The process as one file, so that a killed one is replaced in a second; only the packages stay outside. */
async function bundle(): Promise<string> {
  const outfile = inRepository('node_modules', '.cache', 'wheelchock-faults', 'app.mjs');
  await build({
    absWorkingDir: inRepository(),
    entryPoints: ['tests/prove/faults/app.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    conditions: ['react-server'],
    logLevel: 'warning',
  });
  return outfile;
}

export class AppProcess {
  private constructor(
    private readonly child: Child,
    private readonly port: number,
  ) {}

  static async start(appUrl: string): Promise<AppProcess> {
    const program = await (bundled ??= bundle());
    const child = startChild(process.execPath, ['--no-deprecation', '--conditions=react-server', program], {
      env: { ...process.env, DATABASE_URL: undefined, APP_DATABASE_URL: appUrl, LOG_LEVEL: logLevel() },
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    const port = await new Promise<number>((resolve, reject) => {
      child.once('message', (said: { port: number }) => resolve(said.port));
      child.once('exit', (code) => reject(new Error(`The application's process ended at once (${code}).`)));
    });
    return new AppProcess(child, port);
  }

  /** Asks once. Throws when no answer came: then nobody knows what became of it. */
  async ask(call: Call, signal?: AbortSignal): Promise<Result<unknown>> {
    const response = await fetch(`http://127.0.0.1:${this.port}/`, {
      method: 'POST',
      body: JSON.stringify(call),
      signal: AbortSignal.any([AbortSignal.timeout(60_000), ...(signal ? [signal] : [])]),
    });
    if (!response.ok) throw new Error(await response.text());
    return (await response.json()) as Result<unknown>;
  }

  /** Puts its clock off by so many milliseconds, from now on. */
  async setClockOff(clockOffMs: number): Promise<void> {
    const done = once(this.child, 'message');
    this.child.send?.({ clockOffMs });
    await done;
  }

  /** kill -9: nothing is finished, nothing is said. */
  async kill(): Promise<void> {
    if (this.child.exitCode !== null || this.child.signalCode !== null) return;
    const gone = once(this.child, 'exit');
    this.child.kill('SIGKILL');
    await gone;
    // The kernel closes its connections; the servers at their other ends need a moment to see it.
    await pause(20);
  }
}

const logLevel = (): string => process.env['WHEELCHOCK_FAULTS_LOG'] ?? 'silent';

/** Keeps one process started ahead, so that a killed one can be replaced while the load goes on. */
export class Spares {
  private next: Promise<AppProcess>;

  constructor(private readonly appUrl: string) {
    this.next = AppProcess.start(appUrl);
    this.next.catch(() => undefined);
  }

  async take(): Promise<AppProcess> {
    const taken = await this.next;
    this.next = AppProcess.start(this.appUrl);
    this.next.catch(() => undefined);
    return taken;
  }

  async end(): Promise<void> {
    await (await this.next.catch(() => null))?.kill();
  }
}
