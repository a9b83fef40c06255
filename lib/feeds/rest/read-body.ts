import { fieldRefusal, Refusal } from '../../problems';

const MOST_BYTES = 64_000;
const HEADER = 'Idempotency-Key';

/**
 * What was sent, as an object with its `requestId`: from the Idempotency-Key header (with or without the quotes that
 * the draft of the header asks for), or from the body. Refuses what is no JSON, and more than 64 kB.
 */
export async function readBody(request: Request): Promise<Record<string, unknown>> {
  if (!/^application\/json\b/i.test(request.headers.get('content-type') ?? '')) {
    throw new Refusal('invalid', { say: 'Send JSON, and say so: Content-Type: application/json' });
  }
  const body = asObject(await readUpTo(request));
  const given = request.headers
    .get(HEADER)
    ?.trim()
    .replace(/^"(.*)"$/, '$1');
  if (given === undefined) {
    if ('requestId' in body) return body;
    throw fieldRefusal(HEADER, 'Send a UUID of your own, the same when you send the same again.');
  }
  if ('requestId' in body && body['requestId'] !== given) {
    throw fieldRefusal(HEADER, 'The header and the requestId of the body are not the same.');
  }
  return { ...body, requestId: given };
}

async function readUpTo(request: Request): Promise<string> {
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of bytesOf(request)) {
    bytes += chunk.byteLength;
    if (bytes > MOST_BYTES) throw new Refusal('too_large', { say: 'More than 64 kB is not read.' });
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

/** A stream of the web is read piece by piece in Node; the types of browsers do not say so. */
const bytesOf = (request: Request) => (request.body ?? []) as unknown as AsyncIterable<Uint8Array>;

function asObject(text: string): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      return value as Record<string, unknown>;
    }
  } catch {
    // Said below.
  }
  throw new Refusal('invalid', { say: 'This is not an object of JSON.' });
}
