/**
 * Photos from the upload to the bytes that are served, on a real PostgreSQL and a real folder. Sources: issue 3, "Photos:
 * magic bytes checked, size limited, re-encoded and stripped of EXIF (sharp), thumbnails, stored behind one small
 * interface, served only to the same operator"; others named beside the checks.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { reportFinding } from '@/lib/findings/report-finding';
import { withClient } from '@/lib/operate/connection';
import { addPhoto, PHOTO_MAX_BYTES, type PhotoUpload } from '@/lib/photos/add-photo';
import { photoSettings, requirePhotoStore } from '@/lib/photos/chosen-store';
import type { PhotoMark } from '@/lib/photos/marks';
import { onDisk } from '@/lib/photos/on-disk';
import { LONGEST_EDGE, MAX_PIXELS, SMALL_EDGE } from '@/lib/photos/picture';
import { readPhoto, readPhotoPage } from '@/lib/photos/read-photo';
import type { Result } from '@/lib/problems';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { chunk } from '../fixtures/png';
import { loggedIn } from '../fixtures/logged';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const folder = () => process.env['PHOTO_DIR'] ?? '';

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  // Never the folder of a demo that runs beside the tests.
  expect(folder()).toContain('wheelchock-photos-');
});
afterAll(() => closeSchools(database));

const codeOf = (result: Result<unknown>): string => (result.ok ? 'ok' : result.problem.code);
const wordsOf = (result: Result<unknown>): string =>
  result.ok ? '' : (result.problem.fields?.['photo']?.join(' ') ?? '');
const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A finding of the renter's, and its write-up. */
const finding = async () => valueOf(await reportFinding(school.people.renter, nickedPropeller(school), now));

/** Adds a photo to a new finding of the renter's unless told otherwise. */
async function add(upload: Partial<PhotoUpload> & { bytes: Uint8Array }) {
  const findingId = upload.findingId ?? (await finding()).findingId;
  return addPhoto(school.people.renter, { requestId: randomUUID(), ...upload, findingId }, now);
}

/** A grey picture with a red left half, so that turning it shows. */
const redLeft = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#808080' } }).composite([
    {
      input: {
        create: { width: Math.floor(width / 2), height, channels: 3 as const, background: '#ff0000' },
      },
      left: 0,
      top: 0,
    },
  ]);
const jpeg = (width = 400, height = 300) => redLeft(width, height).jpeg().toBuffer();

/** A white PNG of one bit a pixel, made by hand: few bytes, many pixels (RFC 2083). */
function whitePng(width: number, height: number): Uint8Array {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const row = Buffer.alloc(1 + Math.ceil(width / 8), 0xff);
  row[0] = 0;
  const rows = Buffer.concat(Array.from({ length: height }, () => row));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

async function served(photoId: string, size: 'full' | 'small' = 'full') {
  const { bytes, sha256, mime } = valueOf(await readPhoto(school.people.renter, { photoId, size }, now));
  if (!bytes) throw new Error('No bytes were given.');
  return { bytes, sha256, mime };
}

/** Every file that lies under the folder, as paths below it. */
async function filesIn(place: string): Promise<string[]> {
  const entries = await readdir(place, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(place, path.join(entry.parentPath, entry.name)))
    .sort();
}

describe('what is kept of a picture', () => {
  test('no place, no camera, no words and nothing behind the end, in either size (issue 3)', async () => {
    const marker = 'N51-HOME-OF-THE-PILOT';
    const withExif = await redLeft(600, 400)
      .withExif({
        IFD0: { ImageDescription: marker, Make: marker },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSProcessingMethod: marker },
      })
      .withXmp(`<x:xmpmeta xmlns:x="adobe:ns:meta/"><a>${marker}</a></x:xmpmeta>`)
      .jpeg()
      .toBuffer();
    const bytes = Buffer.concat([withExif, Buffer.from(marker)]);
    const before = await sharp(bytes).metadata();
    expect([Boolean(before.exif), Boolean(before.xmp), bytes.includes(marker)]).toEqual([true, true, true]);

    const { photoId } = valueOf(await add({ bytes }));
    for (const size of ['full', 'small'] as const) {
      const { bytes: kept, mime } = await served(photoId, size);
      const { format, exif, xmp, icc, iptc, orientation, comments } = await sharp(kept).metadata();
      expect({ format, exif, xmp, icc, iptc, orientation, comments, mime }).toEqual({
        format: 'jpeg',
        mime: 'image/jpeg',
      });
      expect(Buffer.from(kept).includes(marker)).toBe(false);
      expect(Buffer.from(kept).includes('Exif')).toBe(false);
    }
    for (const file of await filesIn(folder())) {
      expect((await readFile(path.join(folder(), file))).includes(marker)).toBe(false);
    }
  });

  test('a picture taken sideways stands upright without its orientation (EXIF 2.3, tag 274, value 6)', async () => {
    const lying = await redLeft(400, 200).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    const { photoId } = valueOf(await add({ bytes: lying }));
    const { bytes } = await served(photoId);
    const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([200, 400]);
    // Value 6 turns it a quarter to the right: what was left is then above.
    const redAt = (x: number, y: number) => {
      const at = (y * info.width + x) * info.channels;
      return (data[at] ?? 0) > 200 && (data[at + 1] ?? 255) < 60;
    };
    expect([redAt(100, 50), redAt(100, 350)]).toEqual([true, false]);
    const { photo } = valueOf(await readPhotoPage(school.people.renter, { photoId }, now));
    expect([photo.width, photo.height]).toEqual([200, 400]);
  });

  test.each([
    // Issue 3: longest edge 1600 and 320. Just under, on, just over each.
    [1599, 30, 1599, 320],
    [1600, 30, 1600, 320],
    [1601, 30, 1600, 320],
    [319, 30, 319, 319],
    [320, 30, 320, 320],
    [321, 30, 321, 320],
  ])('%i x %i is kept %i wide, small %i wide', async (width, height, full, small) => {
    expect([LONGEST_EDGE, SMALL_EDGE]).toEqual([1600, 320]);
    const { photoId } = valueOf(await add({ bytes: await jpeg(width, height) }));
    expect((await sharp((await served(photoId)).bytes).metadata()).width).toBe(full);
    expect((await sharp((await served(photoId, 'small')).bytes).metadata()).width).toBe(small);
  });

  test.each(['jpeg', 'png', 'webp'] as const)('%s is taken and kept as JPEG', async (format) => {
    const bytes = await redLeft(50, 40).toFormat(format).toBuffer();
    expect((await sharp((await served(valueOf(await add({ bytes })).photoId)).bytes).metadata()).format).toBe(
      'jpeg',
    );
  });
});

describe('what is no picture', () => {
  const html = Buffer.from('<!doctype html><script>alert(1)</script>');

  test('the first bytes count, not the name or what comes later', async () => {
    const picture = await jpeg();
    const refusals: [string, Uint8Array, RegExp][] = [
      ['nothing', new Uint8Array(), /not a picture/],
      ['a script', html, /not a picture/],
      ['a drawing that can hold a script', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), /not a/],
      ['a script with a picture behind it', Buffer.concat([html, picture]), /not a picture/],
      ['a document', Buffer.from('%PDF-1.7\n%âãÏÓ\n'), /not a picture/],
      // The three bytes that every JPEG begins with (ITU-T T.81, B.1.1.3), and a script after them.
      ['a script behind the first bytes', Buffer.concat([picture.subarray(0, 3), html]), /damaged/],
      ['a moving picture', await redLeft(20, 20).gif().toBuffer(), /Save one picture of it as JPEG/],
      ['AVIF', await redLeft(20, 20).avif({ effort: 0 }).toBuffer(), /save it as JPEG/],
      // ISO/IEC 23008-12: brand heic in the first box.
      ['HEIC', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0heicmif1', 'latin1'), /save it as JPEG/],
    ];
    for (const [what, bytes, words] of refusals) {
      const result = await add({ bytes });
      expect({ what, code: codeOf(result) }).toEqual({ what, code: 'invalid' });
      expect(wordsOf(result)).toMatch(words);
    }
  });

  test('a picture with a script behind it is kept without the script', async () => {
    const bytes = Buffer.concat([await jpeg(), html]);
    const { photoId } = valueOf(await add({ bytes }));
    expect(Buffer.from((await served(photoId)).bytes).includes('script')).toBe(false);
  });

  test.each(['jpeg', 'png', 'webp'] as const)('a %s that ends in the middle is refused', async (format) => {
    const noise = { type: 'gaussian' as const, mean: 128, sigma: 40 };
    const whole = await sharp({ create: { width: 300, height: 300, channels: 3, background: '#000', noise } })
      .toFormat(format)
      .toBuffer();
    expect(codeOf(await add({ bytes: whole }))).toBe('ok');
    const cut = await add({ bytes: whole.subarray(0, Math.floor(whole.length / 2)) });
    expect([codeOf(cut), wordsOf(cut)]).toEqual([
      'invalid',
      'This picture is damaged or cut off. Take it again, or choose another.',
    ]);
  });

  test('a photo that changed on the way is asked for again, which the phone does by itself, and then taken', async () => {
    const bytes = await jpeg();
    const { findingId } = await finding();
    const requestId = randomUUID();
    const sha256 = sha256Of(bytes);
    const half = await add({ requestId, findingId, bytes: bytes.subarray(0, 500), sha256 });
    expect(half).toEqual({
      ok: false,
      problem: {
        code: 'try_again',
        say: 'The photo arrived cut off or changed on the way. Send it again.',
      },
    });
    expect(codeOf(await add({ requestId, findingId, bytes, sha256 }))).toBe('ok');
    expect(codeOf(await add({ bytes, sha256: sha256.toUpperCase() }))).toBe('invalid');
    expect(codeOf(await add({ bytes, sha256: 7 }))).toBe('invalid');
  });
});

describe('limits', () => {
  test.each([
    [PHOTO_MAX_BYTES - 1, 'ok'],
    [PHOTO_MAX_BYTES, 'ok'],
    [PHOTO_MAX_BYTES + 1, 'too_large'],
  ])('%i bytes: %s (issue 3: 12 MB)', async (length, code) => {
    expect(PHOTO_MAX_BYTES).toBe(12_000_000);
    const picture = await jpeg();
    const result = await add({ bytes: Buffer.concat([picture, Buffer.alloc(length - picture.length)]) });
    expect(codeOf(result)).toBe(code);
    if (code !== 'ok') expect(wordsOf(result)).toContain('12 MB at most');
  });

  test.each([
    // Common practice, no source: 80 million pixels; no phone's photo of 12 MB or less has more.
    [8000, 9999, 'ok'],
    [8000, 10_000, 'ok'],
    [8000, 10_001, 'invalid'],
    // A few kilobytes that would unpack into gigabytes.
    [60_000, 60_000, 'invalid'],
  ])('%i x %i pixels: %s', async (width, height, code) => {
    expect(MAX_PIXELS).toBe(8000 * 10_000);
    const bytes = width === 60_000 ? headOnly(width, height) : whitePng(width, height);
    expect(bytes.byteLength).toBeLessThan(PHOTO_MAX_BYTES);
    const result = await add({ bytes });
    expect(codeOf(result)).toBe(code);
    if (code !== 'ok') expect(wordsOf(result)).toContain('more than 80 million pixels');
  });

  /** The rows of 60,000 x 60,000 take long to make and are never read. */
  function headOnly(width: number, height: number): Uint8Array {
    const png = Buffer.from(whitePng(8, 8));
    png.writeUInt32BE(width, 16);
    png.writeUInt32BE(height, 20);
    png.writeUInt32BE(crc32(png.subarray(12, 29)), 29);
    return png;
  }

  test('one finding takes eight; the eighth sent again is still answered (shapes of the phone: 8)', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg(40, 30);
    const ids = Array.from({ length: 8 }, () => randomUUID());
    for (const requestId of ids) expect(codeOf(await add({ requestId, findingId, bytes }))).toBe('ok');
    const before = await filesIn(folder());
    expect(codeOf(await add({ findingId, bytes }))).toBe('conflict');
    expect(codeOf(await add({ requestId: ids[7], findingId, bytes }))).toBe('ok');
    // What is refused leaves nothing in the store.
    expect(await filesIn(folder())).toEqual(before);
  });

  test('two ninth photos at once: one is taken', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg(40, 30);
    for (let taken = 0; taken < 7; taken += 1) await add({ findingId, bytes });
    const both = await Promise.all([add({ findingId, bytes }), add({ findingId, bytes })]);
    expect(both.map(codeOf).sort()).toEqual(['conflict', 'ok']);
  });
});

describe('marks', () => {
  const ring: PhotoMark = {
    kind: 'ring',
    points: [
      [0, 0],
      [1000, 1000],
    ],
  };
  const line = (points: number): PhotoMark => ({
    kind: 'line',
    points: Array.from({ length: points }, (_, index) => [index, 1000 - index] as const),
  });

  test('come back with the photo, in the write-up and beside the picture', async () => {
    const { findingId, discrepancyId } = await finding();
    const marks = [ring, line(60)];
    const { photoId } = valueOf(await add({ findingId, bytes: await jpeg(), marks }));
    const { summary } = valueOf(await readWriteUp(school.people.powerplant, { discrepancyId }, now));
    expect(summary.photoIds).toEqual([photoId]);
    expect(summary.photos).toEqual([{ id: photoId, width: 400, height: 300, marks }]);
    const page = valueOf(await readPhotoPage(school.people.powerplant, { photoId }, now));
    expect(page.photo.marks).toEqual(marks);
    expect(page.writeUp).toMatchObject({ id: discrepancyId, number: summary.number });
  });

  test.each([
    // Issue 3, shapes of the phone: thousandths 0 to 1000, at most 60 points, at most 12 marks.
    ['11 marks', Array.from({ length: 11 }, () => ring), 'ok'],
    ['12 marks', Array.from({ length: 12 }, () => ring), 'ok'],
    ['13 marks', Array.from({ length: 13 }, () => ring), 'invalid'],
    ['59 points', [line(59)], 'ok'],
    ['60 points', [line(60)], 'ok'],
    ['61 points', [line(61)], 'invalid'],
    ['no point', [line(0)], 'invalid'],
    ['one point', [line(1)], 'ok'],
    ['-1', [{ kind: 'line', points: [[-1, 0]] }], 'invalid'],
    ['0', [{ kind: 'line', points: [[0, 0]] }], 'ok'],
    ['999', [{ kind: 'line', points: [[0, 999]] }], 'ok'],
    ['1000', [{ kind: 'line', points: [[0, 1000]] }], 'ok'],
    ['1001', [{ kind: 'line', points: [[0, 1001]] }], 'invalid'],
    ['half a thousandth', [{ kind: 'line', points: [[0, 0.5]] }], 'invalid'],
    ['a ring of three points', [{ kind: 'ring', points: line(3).points }], 'invalid'],
    ['another kind', [{ kind: 'text', points: [[0, 0]] }], 'invalid'],
    ['words', 'ring', 'invalid'],
  ])('%s: %s', async (_what, marks, code) => {
    const { findingId } = await finding();
    expect(codeOf(await add({ findingId, bytes: await jpeg(20, 20), marks }))).toBe(code);
  });
});

describe('sent again', () => {
  test('twice, and twice at once: one row, one pair of files, the same answer', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg();
    const requestId = randomUUID();
    const twice = await Promise.all([
      add({ requestId, findingId, bytes, marks: [] }),
      add({ requestId, findingId, bytes, marks: [] }),
    ]);
    const again = await add({ requestId, findingId, bytes, sha256: sha256Of(bytes) });
    expect([...twice, again]).toEqual(Array(3).fill({ ok: true, value: { photoId: requestId } }));
    const { rows } = await withClient(database.adminUrl, (client) =>
      client.query('SELECT id FROM photo WHERE finding_id = $1', [findingId]),
    );
    expect(rows).toEqual([{ id: requestId }]);
    const files = (await filesIn(folder())).filter((file) => file.includes(requestId));
    expect(files.map((file) => path.basename(file))).toEqual(['full.jpg', 'small.jpg']);
  });

  test('another picture, other marks or another finding under the same number is a conflict, the first stays', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg();
    const requestId = randomUUID();
    valueOf(await add({ requestId, findingId, bytes }));
    const first = await served(requestId);
    const files = await filesIn(folder());
    const mark = { kind: 'line', points: [[1, 1]] };
    expect(codeOf(await add({ requestId, findingId, bytes: await jpeg(500, 300) }))).toBe('conflict');
    expect(codeOf(await add({ requestId, findingId, bytes, marks: [mark] }))).toBe('conflict');
    expect(codeOf(await add({ requestId, bytes }))).toBe('conflict');
    expect(await filesIn(folder())).toEqual(files);
    expect(await served(requestId)).toEqual(first);
  });

  test('two pictures under one number at once: one is taken, and what is served is that one', async () => {
    const { findingId } = await finding();
    // Which of the two comes first is chance; five rounds leave little to it.
    for (let round = 0; round < 5; round += 1) {
      const requestId = randomUUID();
      const pictures = [await jpeg(640, 480), await jpeg(480, 640)] as const;
      const results = await Promise.all(pictures.map((bytes) => add({ requestId, findingId, bytes })));
      expect(results.map(codeOf).sort()).toEqual(['conflict', 'ok']);
      const { width } = await sharp((await served(requestId)).bytes).metadata();
      expect(width).toBe(results[0]?.ok ? 640 : 480);
    }
  });

  test('the sum of the request leans on what was sent, not on how it was encoded anew', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg();
    const requestId = randomUUID();
    valueOf(await add({ requestId, findingId, bytes }));
    const { rows } = await withClient(database.adminUrl, (client) =>
      client.query<{ input_hash: string }>('SELECT input_hash FROM request WHERE id = $1', [requestId]),
    );
    // RFC 8785: members in order of their names, no blanks. Written out here by hand.
    const text =
      `{"input":{"findingId":"${findingId}","marks":[],"requestId":"${requestId}",` +
      `"uploadSha256":"${sha256Of(bytes)}"},"verb":"photo.add"}`;
    expect(rows).toEqual([{ input_hash: sha256Of(Buffer.from(text)) }]);
  });
});

describe('whose photos', () => {
  test("to somebody else's finding none is added, and nothing is stored", async () => {
    const { findingId } = await finding();
    const bytes = await jpeg();
    const before = await filesIn(folder());
    for (const ref of [school.people.student, school.people.manager, other.people.renter]) {
      const result = await addPhoto(ref, { requestId: randomUUID(), findingId, bytes }, now);
      expect(codeOf(result)).toBe('not_found');
    }
    expect(codeOf(await addPhoto(null, { requestId: randomUUID(), findingId, bytes }, now))).toBe(
      'not_signed_in',
    );
    expect(codeOf(await add({ findingId: randomUUID(), bytes }))).toBe('not_found');
    expect(codeOf(await add({ findingId: 'none', bytes }))).toBe('invalid');
    expect(codeOf(await add({ requestId: '../../x', bytes }))).toBe('invalid');
    expect(await filesIn(folder())).toEqual(before);
  });

  test('another operator does not see it, though the store has its bytes; colleagues do', async () => {
    const { photoId } = valueOf(await add({ bytes: await jpeg() }));
    const { sha256 } = await served(photoId);
    for (const size of ['full', 'small'] as const) {
      const asked = vi.fn(() => true);
      const theirs = await readPhoto(other.people.renter, { photoId, size }, { ...now, holds: asked });
      expect(codeOf(theirs)).toBe('not_found');
      // Whoever may not see it does not learn either that the bytes they hold are these.
      expect(asked).not.toHaveBeenCalled();
      expect(codeOf(await readPhoto(null, { photoId, size }, now))).toBe('not_signed_in');
      expect(codeOf(await readPhoto(school.people.powerplant, { photoId, size }, now))).toBe('ok');
    }
    expect(codeOf(await readPhotoPage(other.people.renter, { photoId }, now))).toBe('not_found');
    const held = await readPhoto(
      school.people.renter,
      { photoId },
      { ...now, holds: (sum) => sum === sha256 },
    );
    expect(held).toEqual({ ok: true, value: { mime: 'image/jpeg', sha256, bytes: null } });
    expect(codeOf(await readPhoto(school.people.renter, { photoId, size: 'huge' }, now))).toBe('invalid');
  });
});

describe('the store', () => {
  const fileOf = async (photoId: string, name: string) => {
    const found = (await filesIn(folder())).find((file) => file.includes(photoId) && file.endsWith(name));
    return path.join(folder(), found ?? 'none');
  };

  test('files lie under the operator, readable by this account only, nothing half-written beside them', async () => {
    const { photoId } = valueOf(await add({ bytes: await jpeg() }));
    const file = await fileOf(photoId, 'full.jpg');
    expect(path.relative(folder(), file).split(path.sep).slice(0, 2)).toEqual([school.operatorId, photoId]);
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect((await stat(path.dirname(file))).mode & 0o777).toBe(0o700);
    expect((await filesIn(folder())).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  test('bytes that are gone, or are others, are not found and stand in the log', async () => {
    const { photoId } = valueOf(await add({ bytes: await jpeg() }));
    await writeFile(await fileOf(photoId, 'full.jpg'), 'something else');
    await rm(await fileOf(photoId, 'small.jpg'));
    for (const [size, why] of [
      ['full', 'not-the-bytes-that-were-stored'],
      ['small', 'not-in-the-store'],
    ]) {
      const { result, lines } = await loggedIn(() => readPhoto(school.people.renter, { photoId, size }, now));
      expect(codeOf(result)).toBe('not_found');
      const lost = lines.filter(({ msg }) => msg === 'photo lost');
      expect(lost).toMatchObject([{ level: 'warn', why, key: expect.stringContaining(photoId) }]);
    }
  });

  test('when the store takes nothing, no row is written, and the photo can be sent again', async () => {
    const place = folder();
    const file = path.join(await mkdtemp(path.join(tmpdir(), 'wheelchock-photos-')), 'no-folder');
    await writeFile(file, '');
    const upload = { requestId: randomUUID(), findingId: (await finding()).findingId, bytes: await jpeg() };
    try {
      process.env['PHOTO_DIR'] = file;
      const { result, lines } = await loggedIn(() => add(upload));
      expect(codeOf(result)).toBe('try_again');
      expect(lines.filter(({ level }) => level === 'error').map(({ msg }) => msg)).toEqual([
        'photo not stored',
      ]);
    } finally {
      process.env['PHOTO_DIR'] = place;
      await rm(path.dirname(file), { recursive: true });
    }
    expect(codeOf(await readPhoto(school.people.renter, { photoId: upload.requestId }, now))).toBe(
      'not_found',
    );
    expect(codeOf(await add(upload))).toBe('ok');
  });

  test('a photo from before the store is still served, in the one size there is', async () => {
    const { findingId } = await finding();
    const bytes = await jpeg();
    const photoId = randomUUID();
    await withClient(database.adminUrl, (client) =>
      client.query(
        `INSERT INTO photo (id, operator_id, finding_id, mime, width, height, sha256, bytes, taken_by_id)
         VALUES ($1, $2, $3, 'image/jpeg', 400, 300, $4, $5, $6)`,
        [photoId, school.operatorId, findingId, sha256Of(bytes), bytes, school.people.renter.personId],
      ),
    );
    for (const size of ['full', 'small'] as const) {
      const kept = await served(photoId, size);
      expect(kept.sha256).toBe(sha256Of(bytes));
      expect(Buffer.from(kept.bytes).equals(bytes)).toBe(true);
    }
    const { photo } = valueOf(await readPhotoPage(school.people.renter, { photoId }, now));
    expect(photo.marks).toEqual([]);
  });

  test('no key leads out of the folder (CWE-22)', async () => {
    const root = await mkdtemp(path.join(tmpdir(), 'wheelchock-photos-'));
    const store = onDisk(path.join(root, 'inside'));
    await writeFile(path.join(root, 'secret.jpg'), 'outside');
    const tricks = [
      '../secret.jpg',
      'a/../../secret.jpg',
      'a/..\\..\\secret.jpg',
      '..%2fsecret.jpg',
      `${root}/secret.jpg`,
      '/secret.jpg',
      'a//secret.jpg',
      './secret.jpg',
      'a/./secret.jpg',
      'a/secret.jpg\0.jpg',
      'a/secret.jpg\n',
      'a/.secret.jpg',
      'a/secret',
      'secret.jpg',
      'C:/secret.jpg',
      'a/se cret.jpg',
      '',
    ];
    for (const key of tricks) {
      await expect(store.get(key), key).rejects.toThrow('no key of a photo');
      await expect(store.put(key, new Uint8Array([1]), 'image/jpeg'), key).rejects.toThrow(
        'no key of a photo',
      );
    }
    expect(await filesIn(root)).toEqual(['secret.jpg']);
    await store.put('a/b/full.jpg', new Uint8Array([1, 2]), 'image/jpeg');
    expect(await store.get('a/b/full.jpg')).toEqual(new Uint8Array([1, 2]));
    expect(await store.get('a/b/small.jpg')).toBeNull();
    await rm(root, { recursive: true });
  });
});

describe('settings', () => {
  const whole = {
    PHOTO_S3_ENDPOINT: 'https://s3.example.org',
    PHOTO_S3_BUCKET: 'photos',
    PHOTO_S3_REGION: 'us-east-1',
    PHOTO_S3_KEY_ID: 'key',
    PHOTO_S3_SECRET: 'a secret nobody prints',
  };

  test('none keep photos on disk, all five in the bucket', () => {
    expect(photoSettings({})).toEqual({ kind: 'disk', folder: '.data/photos' });
    expect(photoSettings({ PHOTO_DIR: '/srv/photos' })).toEqual({ kind: 'disk', folder: '/srv/photos' });
    expect(photoSettings({ PHOTO_DIR: ' ', PHOTO_S3_BUCKET: '' })).toMatchObject({ kind: 'disk' });
    expect(photoSettings(whole)).toMatchObject({ kind: 's3', bucket: 'photos', region: 'us-east-1' });
  });

  test.each(Object.keys(whole))('without %s alone it refuses to start and names it', async (missing) => {
    const half = { ...whole, [missing]: ' ' };
    await expect(requirePhotoStore(half)).rejects.toThrow(`${missing} missing`);
    await expect(requirePhotoStore(half)).rejects.not.toThrow(whole.PHOTO_S3_SECRET);
    // One alone is half a set as well.
    await expect(requirePhotoStore({ [missing]: 'x' })).rejects.toThrow(`${missing} given`);
  });

  test('both places at once, no address and no bucket are refused', async () => {
    await expect(requirePhotoStore({ ...whole, PHOTO_DIR: 'x' })).rejects.toThrow('both set');
    for (const PHOTO_S3_ENDPOINT of [
      's3.example.org',
      'ftp://s3.example.org',
      'https://a:b@s3.example.org',
    ]) {
      await expect(requirePhotoStore({ ...whole, PHOTO_S3_ENDPOINT })).rejects.toThrow('no address');
    }
    for (const PHOTO_S3_BUCKET of ['ab', 'a/b', 'Photos', '..', `a${'b'.repeat(63)}`]) {
      await expect(requirePhotoStore({ ...whole, PHOTO_S3_BUCKET })).rejects.toThrow('no name of a bucket');
    }
  });

  test('a folder nobody can write to is refused, one that is missing is made', async () => {
    const root = await mkdtemp(path.join(tmpdir(), 'wheelchock-photos-'));
    await writeFile(path.join(root, 'file'), '');
    await expect(requirePhotoStore({ PHOTO_DIR: path.join(root, 'file') })).rejects.toThrow(
      'Photos cannot be kept in',
    );
    await requirePhotoStore({ PHOTO_DIR: path.join(root, 'new', 'deep') });
    expect(await readdir(path.join(root, 'new', 'deep'))).toEqual([]);
    await rm(root, { recursive: true });
  });
});
