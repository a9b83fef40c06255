/** Lines of text in packed files: written with their sums, and read some at a time. */
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { StringDecoder } from 'node:string_decoder';
import { createGunzip, createGzip } from 'node:zlib';

export interface Packed {
  readonly lines: number;
  /** Of the lines, unpacked. */
  readonly sha256: string;
  /** Of the file as it lies on the disk. */
  readonly fileSha256: string;
  readonly bytes: number;
}

/** Writes the lines, readable by this account only, and brings them to the disk. The same lines give the same file. */
export async function writeLines(file: string, batches: AsyncIterable<readonly string[]>): Promise<Packed> {
  const content = createHash('sha256');
  let lines = 0;
  const text = async function* () {
    for await (const batch of batches) {
      if (batch.length === 0) continue;
      lines += batch.length;
      const part = `${batch.join('\n')}\n`;
      content.update(part);
      yield part;
    }
  };
  const written = await writeThrough(file, Readable.from(text()), createGzip());
  return { lines, sha256: content.digest('hex'), fileSha256: written.sha256, bytes: written.bytes };
}

/** Writes a stream to a new file, with its sum. */
export async function writeThrough(
  file: string,
  from: Readable,
  ...through: Transform[]
): Promise<{ sha256: string; bytes: number }> {
  await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
  const hash = createHash('sha256');
  let bytes = 0;
  const counted = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      bytes += chunk.length;
      done(null, chunk);
    },
  });
  // `flush`: on the disk before it counts as written.
  await pipeline([
    from,
    ...through,
    counted,
    createWriteStream(file, { flags: 'wx', mode: 0o600, flush: true }),
  ]);
  return { sha256: hash.digest('hex'), bytes };
}

/** Lines of a packed file, some at a time: at most 500, or as many as make a few MB. Only "\n" ends a line. */
export async function* readLines(file: string): AsyncGenerator<string[]> {
  const source = createReadStream(file);
  const unpacked = createGunzip();
  source.on('error', (error) => unpacked.destroy(error));
  source.pipe(unpacked);
  const decoder = new StringDecoder('utf8');
  let batch: string[] = [];
  let size = 0;
  let rest = '';
  try {
    for await (const chunk of unpacked) {
      const pieces = decoder.write(chunk as Buffer).split('\n');
      pieces[0] = rest + (pieces[0] ?? '');
      rest = pieces.pop() ?? '';
      for (const line of pieces) {
        batch.push(line);
        size += line.length;
        if (batch.length < 500 && size < 4_000_000) continue;
        yield batch;
        batch = [];
        size = 0;
      }
    }
    if (batch.length > 0) yield batch;
  } finally {
    source.destroy();
    unpacked.destroy();
  }
}

/** What a packed file holds, unpacked. Throws when it cannot be unpacked. */
export async function contentOf(file: string): Promise<{ lines: number; sha256: string }> {
  const hash = createHash('sha256');
  let lines = 0;
  await pipeline(createReadStream(file), createGunzip(), async (unpacked: AsyncIterable<Buffer>) => {
    for await (const chunk of unpacked) {
      hash.update(chunk);
      for (let at = chunk.indexOf(10); at >= 0; at = chunk.indexOf(10, at + 1)) lines += 1;
    }
  });
  return { lines, sha256: hash.digest('hex') };
}

/** The sum of a file as it lies there. */
export async function sumOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file)) hash.update(chunk as Buffer);
  return hash.digest('hex');
}
