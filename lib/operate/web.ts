import type { ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { startChild, stopChild } from './children.mjs';
import { photosIn } from './photos-in';
import { inRepository } from './places.mjs';
import { Trouble } from './say.mjs';

/** What the web server is told. */
export interface WebOptions {
  port: number;
  /** Address to listen on; this machine only unless somebody asks for more. */
  host: string;
  appUrl: string;
  /** Signs the sessions. */
  sessionSecret: string;
  /** Folder that letters are laid into; left out, the environment says what becomes of them. */
  outbox?: string | undefined;
  /** Folder of the photos, whatever the environment says; without it PHOTO_DIR and PHOTO_S3_… of the environment hold. */
  photoDir?: string;
  /** Passes the server's log on to standard output, for whoever collects it there. */
  showLog?: boolean;
}

/** A running web server. */
export interface WebServer {
  address: string;
  /** Resolves with its last words when it ends without having been asked to. */
  died: Promise<string>;
  stop(): Promise<void>;
}

const READY_WITHIN_MS = 90_000;
const LAST_WORDS = 60;

/** The settings the web server reads. The owner's DATABASE_URL is kept from it on purpose. */
export function webSettings(options: WebOptions): Record<string, string | undefined> {
  return {
    DATABASE_URL: undefined,
    APP_DATABASE_URL: options.appUrl,
    NEXTAUTH_URL: process.env['NEXTAUTH_URL'] ?? `http://localhost:${options.port}`,
    NEXTAUTH_SECRET: options.sessionSecret,
    ...(options.photoDir === undefined ? {} : photosIn(options.photoDir)),
    NEXT_TELEMETRY_DISABLED: '1',
    NODE_ENV: 'production',
    // Into the folder and nowhere else.
    ...(options.outbox === undefined ? {} : { MAIL_OUTBOX_DIR: options.outbox, SMTP_URL: undefined }),
  };
}

/** Starts the built web server and waits until it answers. */
export async function startWeb(options: WebOptions): Promise<WebServer> {
  const child = startChild(
    process.execPath,
    [
      '--import',
      './lib/operate/leave-with-parent.mjs',
      inRepository('node_modules', 'next', 'dist', 'bin', 'next'),
      'start',
      '--port',
      String(options.port),
      '--hostname',
      options.host,
      // Longer than proxies keep theirs (mostly 60 s): a line closed just as it is used again loses the question on it.
      '--keepAliveTimeout',
      '75000',
    ],
    { env: { ...process.env, ...webSettings(options) }, stdio: ['ignore', 'pipe', 'pipe', 'ipc'] },
  );
  const words: string[] = [];
  const take = (chunk: Buffer) => {
    words.push(chunk.toString('utf8'));
    words.splice(0, words.length - LAST_WORDS);
  };
  child.stdout?.on('data', (chunk: Buffer) => {
    take(chunk);
    if (options.showLog) process.stdout.write(chunk);
    else process.stderr.write(errorsIn(chunk.toString('utf8')));
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    take(chunk);
    process.stderr.write(chunk);
  });
  let asked = false;
  const died = new Promise<string>((resolve) => {
    child.once('exit', () => {
      if (!asked) {
        resolve(words.join('').trim());
      }
    });
  });
  const stop = () => {
    asked = true;
    return stopChild(child);
  };
  try {
    await untilItAnswers(child, options, words);
  } catch (error) {
    await stop();
    throw error;
  }
  return { address: `http://localhost:${options.port}`, died, stop };
}

/** The lines of the log (lib/log.ts) that tell of something wrong; the rest only fills a terminal. */
const errorsIn = (text: string): string =>
  text
    .split('\n')
    .filter((line) => line.startsWith('{"level":"error"'))
    .map((line) => `${line}\n`)
    .join('');

/**
 * Refuses with plain words when another program listens on the port, at whatever address of this machine: a browser
 * that is told "localhost" may try any of them.
 */
export async function requireFreePort(port: number, host: string): Promise<void> {
  for (const address of new Set([host, '::1', '::', '0.0.0.0'])) {
    const code = await listeningFails(port, address);
    if (code === 'EADDRINUSE') {
      throw new Trouble(
        `Port ${port} is taken by another program. Stop that program, or choose another port: ` +
          `PORT=${port + 1} npm run demo`,
      );
    }
    if (code === 'EACCES') {
      throw new Trouble(
        `This account may not listen on port ${port}. Choose one above 1023, like PORT=3001.`,
      );
    }
    if (code !== undefined && address === host) {
      throw new Trouble(`This machine cannot listen on ${host}, port ${port} (${code}).`);
    }
    // Any other failure means that this machine has no such kind of address.
  }
}

/** The error code of listening there, or undefined when it works. */
function listeningFails(port: number, address: string): Promise<string | undefined> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? error.message));
    probe.listen({ port, host: address, ipv6Only: address === '::' }, () =>
      probe.close(() => resolve(undefined)),
    );
  });
}

async function untilItAnswers(child: ChildProcess, options: WebOptions, words: string[]): Promise<void> {
  const host = options.host === '0.0.0.0' || options.host === '::' ? '127.0.0.1' : options.host;
  const until = Date.now() + READY_WITHIN_MS;
  while (Date.now() < until) {
    if (child.exitCode !== null || child.signalCode !== null) {
      throw new Trouble(`The web server ended at once. Its last words:\n${words.join('').trim()}`);
    }
    const status = await statusOf(`http://${host}:${options.port}/`);
    if (status !== undefined) {
      if (status >= 500) {
        throw new Trouble(
          `The web server starts but fails (${status}). Its last words:\n${words.join('').trim()}`,
        );
      }
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Trouble(
    `The web server did not answer within ${READY_WITHIN_MS / 1000} seconds.\n${words.join('').trim()}`,
  );
}

/** The status of an answer, or undefined when there is none. The connection is let go, or stopping would wait for it. */
async function statusOf(url: string): Promise<number | undefined> {
  try {
    const answer = await fetch(url, { redirect: 'manual', headers: { connection: 'close' } });
    await answer.body?.cancel();
    return answer.status;
  } catch {
    return undefined;
  }
}
