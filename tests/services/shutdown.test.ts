/**
 * Leaving without losing a request: told to end, a server says so first, serves on while others notice, ends its streams, and
 * lets what is under way finish. Source: issue 6, "health and readiness endpoints" and "zero-downtime".
 */
import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, expect, test } from 'vitest';
import { inRepository } from '@/lib/operate/places.mjs';

let child: ChildProcess | undefined;
afterEach(() => child?.kill('SIGKILL'));

test('ready turns 503, requests go on, streams end, what is under way finishes, the process leaves by itself', async () => {
  child = fork(inRepository('tests', 'fixtures', 'draining-server.ts'), {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, NEXT_MANUAL_SIG_HANDLE: 'true', DRAIN_SECONDS: '1', LOG_LEVEL: 'silent' },
  });
  const [port] = (await once(child, 'message')) as [number];
  const ask = (path: string) => fetch(`http://127.0.0.1:${port}${path}`);
  expect((await ask('/ready')).status).toBe(200);
  const stream = await ask('/stream');
  const left = once(child, 'exit');

  child.kill('SIGTERM');
  await expect.poll(async () => (await ask('/ready')).status).toBe(503);
  // Still open: whoever has not noticed yet is served.
  const slow = ask('/slow').then((answer) => answer.text());
  expect(await stream.text()).toContain('event: pause');
  expect(await slow).toBe('finished');
  expect(await left).toEqual([0, null]);
  await expect(ask('/ready')).rejects.toThrow();
});
