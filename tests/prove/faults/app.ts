/**
 * The application's services over their real pool, as a process of its own that can be killed: takes `{act, ref, input}` by
 * HTTP and answers with the service's result. What lies above in the real server (pages, sessions) writes nothing. The
 * acts are those of the ramp's sync API, the bench and the desk.
 */
import { setClockOff } from './clock-of-process';
import { createServer, type IncomingMessage } from 'node:http';
import type { ActorRef } from '@/lib/access/actor';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { placePlacard } from '@/lib/determinations/place-placard';
import { reportFinding } from '@/lib/findings/report-finding';
import { acceptRelease } from '@/lib/releases/accept-release';
import { answerFlight } from '@/lib/releases/answer-flight';
import { releaseFlight } from '@/lib/releases/release-flight';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';

const ACTS = {
  acceptRelease,
  answerFlight,
  beginDeferral,
  enterWork,
  finishWalkaround,
  placePlacard,
  releaseFlight,
  reportFinding,
  signWork,
  startWalkaround,
  startWork,
};
export type Act = keyof typeof ACTS;

interface Asked {
  readonly act: Act;
  readonly ref: ActorRef;
  readonly input: unknown;
}

// Whoever started it is gone: leave too.
process.once('disconnect', () => process.exit(0));
process.on('message', (said: unknown) => {
  const { clockOffMs } = said as { clockOffMs: number };
  setClockOff(clockOffMs);
  process.send?.({ clockOffMs });
});

const server = createServer((request, response) => {
  void answer(request).then(
    (text) => response.writeHead(200, { 'content-type': 'application/json' }).end(text),
    (error: unknown) => response.writeHead(500).end(String(error)),
  );
});
server.keepAliveTimeout = 60_000;
server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  process.send?.({ port: typeof address === 'object' ? address?.port : undefined });
});

async function answer(request: IncomingMessage): Promise<string> {
  let text = '';
  for await (const chunk of request.setEncoding('utf8')) text += chunk as string;
  const { act, ref, input } = JSON.parse(text) as Asked;
  return JSON.stringify(await ACTS[act](ref, input));
}
