import { createHash } from 'node:crypto';
import { AwsClient } from 'aws4fetch';
import { requireKey, type PhotoStore } from './store';

/** An account on a store that speaks S3 with Signature Version 4. */
export interface S3Settings {
  /** Address of the service, without the bucket. */
  readonly endpoint: string;
  readonly bucket: string;
  readonly region: string;
  readonly keyId: string;
  readonly secret: string;
}

/** How long and how often it is tried. The phone waits 90 s for its answer. */
export interface Patience {
  readonly attempts: number;
  readonly timeoutMs: number;
  /** Before the second attempt; twice as long before each further one. */
  readonly pauseMs: number;
}

const PATIENCE: Patience = { attempts: 3, timeoutMs: 15_000, pauseMs: 250 };

/**
 * Photos in a bucket, addressed by path (every S3-compatible store knows that form). Each request is signed with the sum
 * of its body (x-amz-content-sha256), so that the store refuses bytes that changed on the way.
 */
export function inS3(settings: S3Settings, patience: Patience = PATIENCE): PhotoStore {
  const { endpoint, bucket, region, keyId, secret } = settings;
  const client = new AwsClient({
    accessKeyId: keyId,
    secretAccessKey: secret,
    service: 's3',
    region,
    retries: 0,
  });
  const addressOf = (key: string) => {
    requireKey(key);
    return `${endpoint.replace(/\/+$/, '')}/${bucket}/${key}`;
  };
  const send = (key: string, init: RequestInit) =>
    tryRepeatedly(patience, async (signal) => {
      const answer = await client.fetch(addressOf(key), {
        ...init,
        signal,
        redirect: 'manual',
        cache: 'no-store',
      });
      // Read here, so that the time limit holds for the body too.
      return { status: answer.status, bytes: new Uint8Array(await answer.arrayBuffer()) };
    });
  return {
    async put(key, bytes, mime) {
      const body = Uint8Array.from(bytes);
      const headers = { 'Content-Type': mime, 'X-Amz-Content-Sha256': sha256Of(body) };
      const { status, bytes: said } = await send(key, { method: 'PUT', body, headers });
      if (status !== 200) throw troubleOf('PUT', key, status, said);
    },
    async get(key) {
      const headers = { 'X-Amz-Content-Sha256': sha256Of(new Uint8Array()) };
      const { status, bytes } = await send(key, { method: 'GET', headers });
      if (status === 200) return bytes;
      const trouble = troubleOf('GET', key, status, bytes);
      // A bucket that is not there answers 404 as well; that is a wrong setting and no lost photo.
      if (status === 404 && trouble.s3Code !== 'NoSuchBucket') return null;
      throw trouble;
    },
    async remove(key) {
      const headers = { 'X-Amz-Content-Sha256': sha256Of(new Uint8Array()) };
      const { status, bytes } = await send(key, { method: 'DELETE', headers });
      if (status === 204 || status === 200) return;
      const trouble = troubleOf('DELETE', key, status, bytes);
      if (status === 404 && trouble.s3Code !== 'NoSuchBucket') return;
      throw trouble;
    },
  };
}

/** The store answered, but not as hoped. */
class StoreTrouble extends Error {
  constructor(
    message: string,
    readonly s3Code: string | null,
  ) {
    super(message);
    this.name = 'StoreTrouble';
  }
}

function troubleOf(method: string, key: string, status: number, body: Uint8Array): StoreTrouble {
  const code = /<Code>([A-Za-z0-9]{1,64})<\/Code>/.exec(new TextDecoder().decode(body.slice(0, 4000)))?.[1];
  return new StoreTrouble(
    `The photo store answered ${status}${code ? ` ${code}` : ''} to ${method} ${key}.`,
    code ?? null,
  );
}

interface Answer {
  readonly status: number;
  readonly bytes: Uint8Array;
}

/** Both verbs may be repeated at will: the same key always gets the same bytes. */
async function tryRepeatedly(
  { attempts, timeoutMs, pauseMs }: Patience,
  run: (signal: AbortSignal) => Promise<Answer>,
): Promise<Answer> {
  for (let attempt = 1; ; attempt += 1) {
    const isLast = attempt >= attempts;
    try {
      const answer = await run(AbortSignal.timeout(timeoutMs));
      if (isLast || !isPassing(answer.status)) return answer;
    } catch (error) {
      if (isLast) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, pauseMs * 2 ** (attempt - 1)));
  }
}

/** Answers that a moment later may be another: the store is busy or restarting. */
const isPassing = (status: number): boolean => status >= 500 || status === 429 || status === 408;

const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
