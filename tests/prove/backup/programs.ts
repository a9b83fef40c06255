import { spawn, type ChildProcess } from 'node:child_process';
import { inRepository } from '@/lib/operate/places.mjs';
import { atEnd } from '@/lib/operate/stopping.mjs';

export interface Ended {
  /** Null: it was killed. */
  readonly code: number | null;
  readonly said: string;
  readonly seconds: number;
}

/** `npm run backup` or `npm run restore`, as its own program and without npm, so that a kill reaches it. */
export function program(
  name: 'backup' | 'restore',
  words: readonly string[],
  settings: Readonly<Record<string, string>>,
): { child: ChildProcess; ended: Promise<Ended> } {
  const began = performance.now();
  const env = { ...process.env, APP_DATABASE_URL: '', ...settings };
  const child = spawn(process.execPath, ['--import', 'tsx', `lib/operate/${name}.ts`, ...words], {
    cwd: inRepository(),
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  atEnd(async () => void child.kill('SIGKILL'));
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += String(text)));
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, said, seconds: (performance.now() - began) / 1000 }));
  });
  return { child, ended };
}
