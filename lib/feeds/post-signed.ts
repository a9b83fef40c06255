import { request as requestPlain, type IncomingMessage } from 'node:http';
import { request as requestTls } from 'node:https';
import { type LookupFunction } from 'node:net';
import { publicAddressOf, webhookUrl } from './webhook-address';

const WITHIN_MS = 10_000;
/** What is read of an answer; nothing in it matters to us. */
const MOST_BYTES = 1024;

/**
 * Posts JSON once and gives the status of the answer. Throws with plain words when there is none within ten seconds. No
 * redirect is followed, and the connection goes to the very address that was judged.
 */
export async function postSigned(
  address: string,
  headers: Readonly<Record<string, string>>,
  body: string,
  withinMs = WITHIN_MS,
): Promise<number> {
  const url = webhookUrl(address);
  const signal = AbortSignal.timeout(withinMs);
  const given = await Promise.race([publicAddressOf(url), rejectedBy(signal)]);
  const lookup: LookupFunction = (_name, { all }, done) => {
    if (all) done(null, [given]);
    else done(null, given.address, given.family);
  };
  return new Promise((resolve, reject) => {
    const request = url.protocol === 'https:' ? requestTls : requestPlain;
    const outgoing = request(
      url,
      {
        method: 'POST',
        lookup,
        signal,
        // A connection of its own: one kept open may lead to an address judged some other time.
        agent: false,
        headers: {
          'content-type': 'application/json',
          'content-length': Buffer.byteLength(body),
          'user-agent': 'Wheelchock webhooks',
          ...headers,
        },
      },
      (answer) => {
        drain(answer);
        resolve(answer.statusCode ?? 0);
      },
    );
    outgoing.on('error', (error) => reject(signal.aborted ? TOO_SLOW() : inWords(error)));
    outgoing.end(body);
  });
}

/** Reads a little, so that a short answer lets the connection end in order, and cuts off a long one. */
function drain(answer: IncomingMessage): void {
  let read = 0;
  answer.on('data', (chunk: Buffer) => {
    read += chunk.byteLength;
    if (read > MOST_BYTES) answer.destroy();
  });
  answer.on('error', () => undefined);
}

const TOO_SLOW = () => new Error('There was no answer within ten seconds.');

function rejectedBy(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) =>
    signal.addEventListener('abort', () => reject(TOO_SLOW()), { once: true }),
  );
}

function inWords(error: Error & { code?: string }): Error {
  return new Error(`The connection failed (${error.code ?? error.message}).`, { cause: error });
}
