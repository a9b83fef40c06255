/**
 * Files that are other than they say, that unpack into gigabytes, or whose names lead elsewhere; messages that are deep or name
 * what an object inherits. Sources: issue 7 ("decompression bombs, polyglot uploads, path tricks"); PNG (RFC 2083), PDF 32000-1
 * 7.5, RFC 5545 3.3.10; CWE-22, CWE-409, CWE-434, CWE-1321.
 */
// First: it makes Next's place for a request, which its other modules look for once.
import { ask, FROM_HERE, type Handler, type Jar } from '../../fixtures/asking';
import { randomUUID } from 'node:crypto';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { checkImport } from '@/lib/flights/import/check-import';
import type { FreshDatabase } from '../../fixtures/database';
import { nickedPropeller, valueOf } from '../../fixtures/acts';
import { chunk } from '../../fixtures/png';
import { calendarOf } from '../../fixtures/plan-files';
import { closeSchools, openSchools, type School } from '../../fixtures/school';
import { settingsOfServer, signInAs } from '../../fixtures/signing-in';

let database: FreshDatabase;
let school: School;
let folder: string;
let pilot: Jar;
let manager: Jar;
let certificateId: string;

beforeAll(async () => {
  settingsOfServer();
  folder = await mkdtemp(path.join(tmpdir(), 'attacks-files-'));
  process.env['PHOTO_DIR'] = folder;
  ({ database, school } = await openSchools());
  pilot = await signInAs('renter@first.example');
  manager = await signInAs('manager@first.example');
  const held = await readInOperator(school.operatorId, (tx) =>
    tx.certificate.findFirstOrThrow({ where: { personId: school.people.renter.personId } }),
  );
  certificateId = held.id;
});
afterAll(async () => {
  await closeSchools(database);
  await rm(folder, { recursive: true, force: true });
});

const MB = 1_000_000;
const filesKept = async () =>
  (await readdir(folder, { recursive: true, withFileTypes: true })).filter((one) => one.isFile()).length;

/** Sends as a photo of a finding of one's own, or as a proof; gives status and the number of what was made. */
async function send(as: 'photo' | 'proof', bytes: Uint8Array, type = 'image/jpeg') {
  if (as === 'proof') {
    const id = randomUUID();
    const { POST } = (await import('@/app/api/proofs/route')) as { POST: Handler };
    const where = `/api/proofs?about=certificate&id=${certificateId}&request=${id}`;
    const sent = { method: 'POST', headers: { ...FROM_HERE, 'content-type': type }, body: bytes };
    return { id, status: (await ask(POST, where, sent, manager)).status };
  }
  const { findingId } = valueOf(
    await reportFinding(school.people.renter, { ...nickedPropeller(school), requestId: randomUUID() }),
  );
  const id = randomUUID();
  const { POST } = (await import('@/app/api/sync/photos/route')) as { POST: Handler };
  const headers = { ...FROM_HERE, 'content-type': type, 'x-request-id': id, 'x-finding-id': findingId };
  return {
    id,
    status: (await ask(POST, '/api/sync/photos', { method: 'POST', headers, body: bytes }, pilot)).status,
  };
}

async function servedBytes(as: 'photo' | 'proof', id: string) {
  const { GET } = (await (as === 'proof'
    ? import('@/app/api/proofs/[id]/route')
    : import('@/app/api/photos/[id]/route'))) as unknown as { GET: Handler };
  const answer = await ask(GET, `/api/${as}s/${id}`, { params: { id } }, manager);
  return { headers: answer.headers, bytes: Buffer.from(await answer.arrayBuffer()) };
}

/** PNG by hand: a head, any chunks, data, an end (RFC 2083, 3). */
function png(width: number, height: number, more: Buffer[] = [], data?: Buffer): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const row = Buffer.alloc(1 + Math.ceil(width / 8));
  const rows = data ?? deflateSync(Buffer.concat(Array.from({ length: height }, () => row)));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    ...more,
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
const HTML = Buffer.from('<!DOCTYPE html><html><body><script>alert(document.domain)</script></body></html>');
const PDF = Buffer.from('%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n');

/** Work done, not time gone by: a busy machine must not make it look like unpacking. */
function processorMsSince(began: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}

describe.each(['photo', 'proof'] as const)('as a %s', (as) => {
  test('four hundred million pixels in fifty kilobytes are refused by their head, and nothing is unpacked', async () => {
    const bomb = png(20_000, 20_000);
    expect(bomb.length).toBeLessThan(MB);
    const before = process.memoryUsage().rss;
    const began = process.cpuUsage();
    expect((await send(as, bomb)).status).toBe(422);
    expect(processorMsSince(began)).toBeLessThan(5_000);
    // One byte a pixel would be 400 MB.
    expect(process.memoryUsage().rss - before).toBeLessThan(200 * MB);
  });

  test('two hundred megabytes of text hidden in a picture of one pixel are not unpacked, or not kept', async () => {
    const text = Buffer.concat([Buffer.from('Comment\0\0', 'latin1'), deflateSync(Buffer.alloc(200 * MB))]);
    const before = process.memoryUsage().rss;
    const { id, status } = await send(as, png(1, 1, [chunk('zTXt', text)]));
    expect(process.memoryUsage().rss - before).toBeLessThan(350 * MB);
    expect([200, 422]).toContain(status);
    if (status === 200) expect((await servedBytes(as, id)).bytes.length).toBeLessThan(5_000);
  });

  test.each([
    ['HTML', HTML],
    ['HTML, and a PDF behind it', Buffer.concat([HTML, PDF])],
    ['SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
    [
      'XML',
      Buffer.from('<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><x>&e;</x>'),
    ],
    ['a script', Buffer.from('#!/bin/sh\necho hello\n')],
    ['a program', Buffer.concat([Buffer.from('MZ'), Buffer.alloc(200)])],
    ['an archive', Buffer.concat([Buffer.from('PK\u0003\u0004'), Buffer.alloc(200)])],
    ['a picture that moves', Buffer.from('GIF89a\u0001\0\u0001\0\u0080\0\0/*=1;alert(1)*/', 'latin1')],
    ['nothing', Buffer.alloc(0)],
  ])('%s that calls itself a picture is refused, and nothing is kept', async (_, bytes) => {
    const before = await filesKept();
    expect((await send(as, bytes, 'image/jpeg')).status).toBe(422);
    expect(await filesKept()).toBe(before);
  });

  test.each(['jpeg', 'png'] as const)(
    'a %s with a page and an archive behind its end is kept without them',
    async (format) => {
      const picture = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#446688' } })
        .toFormat(format)
        .toBuffer();
      const sent = Buffer.concat([picture, HTML, Buffer.from('PK\u0003\u0004 evil')]);
      const { id, status } = await send(as, sent);
      // The decoder may also call it damaged.
      expect([200, 422]).toContain(status);
      if (status !== 200) return;
      const { bytes, headers } = await servedBytes(as, id);
      expect(bytes.includes('<script')).toBe(false);
      expect(bytes.includes('PK\u0003\u0004')).toBe(false);
      expect(headers.get('content-type')).toBe('image/jpeg');
    },
  );

  test('a picture inside of which a page stands as a comment is kept without it', async () => {
    const picture = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#446688' } })
      .jpeg()
      .toBuffer();
    const comment = Buffer.alloc(4);
    comment.writeUInt16BE(0xfffe, 0);
    comment.writeUInt16BE(HTML.length + 2, 2);
    const { id, status } = await send(
      as,
      Buffer.concat([picture.subarray(0, 2), comment, HTML, picture.subarray(2)]),
    );
    expect(status).toBe(200);
    expect((await servedBytes(as, id)).bytes.includes('<script')).toBe(false);
  });
});

test('a PDF with a page in it is given out as a file to save, under a name of ours, and is no page', async () => {
  const { id, status } = await send(
    'proof',
    Buffer.concat([PDF.subarray(0, 9), HTML, PDF.subarray(9)]),
    'text/html',
  );
  expect(status).toBe(200);
  const { headers } = await servedBytes('proof', id);
  expect(headers.get('content-type')).toBe('application/pdf');
  expect(headers.get('content-disposition')).toBe('attachment; filename="pilot-certificate.pdf"');
  expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
});

describe('a path', () => {
  const TRICKS = [
    '..',
    '../../../../etc/passwd',
    '..%2f..%2fetc%2fpasswd',
    '%2e%2e/%2e%2e/package.json',
    '..\\..\\package.json',
    'a\0b',
    '/etc/passwd',
    'file:///etc/passwd',
    '__proto__',
    'constructor',
    'toString',
    '__proto__.csv',
    'constructor.json',
    'hasOwnProperty.csv',
    "' OR 1=1 --",
    'x'.repeat(20_000),
  ];
  test.each([
    ['/api/photos/', () => import('@/app/api/photos/[id]/route'), 'id'],
    ['/api/proofs/', () => import('@/app/api/proofs/[id]/route'), 'id'],
    ['/api/export/', () => import('@/app/api/export/[file]/route'), 'file'],
    ['/api/insight/', () => import('@/app/api/insight/[figure]/route'), 'figure'],
    ['/api/calendar/', () => import('@/app/api/calendar/[key]/maintenance-due.ics/route'), 'key'],
  ] as const)('below %s leads nowhere', async (where, load, part) => {
    const { GET } = (await load()) as unknown as { GET: Handler };
    for (const trick of TRICKS) {
      const answer = await ask(
        GET,
        where + encodeURIComponent(trick),
        { params: { [part]: trick } },
        manager,
      );
      expect({ trick: trick.slice(0, 40), status: answer.status }).toEqual({
        trick: trick.slice(0, 40),
        status: 404,
      });
      expect(await answer.text()).not.toMatch(/root:|"dependencies"|node_modules| at /);
    }
  });

  test('of a template by a name that every object has is none', async () => {
    const { GET } = (await import('@/app/api/templates/history/route')) as unknown as { GET: Handler };
    for (const trick of TRICKS)
      expect((await ask(GET, `/api/templates/history?what=${encodeURIComponent(trick)}`)).status).toBe(404);
  });

  test('of a paper with a number that is none is not found, whatever it is', async () => {
    for (const [route, name] of [
      ['entry', 'work'],
      ['list', 'id'],
      ['placards', 'aircraft'],
    ] as const) {
      const { GET } = (await import(`../../../app/api/papers/${route}/route.ts`)) as { GET: Handler };
      for (const trick of TRICKS.slice(0, 12)) {
        const where = `/api/papers/${route}?${name}=${encodeURIComponent(trick)}`;
        expect((await ask(GET, where, {}, manager)).status).toBe(404);
      }
    }
  });
});

describe('a message', () => {
  const post = async (body: string) => {
    const { POST } = (await import('@/app/api/sync/findings/route')) as { POST: Handler };
    const headers = { ...FROM_HERE, 'content-type': 'application/json' };
    return ask(POST, '/api/sync/findings', { method: 'POST', headers, body }, pilot);
  };
  const whole = () => ({ version: 1, ...nickedPropeller(school), requestId: randomUUID() });
  const deep = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;

  test.each([30_000, 5_000, 200])('%i levels deep is no trouble of ours', async (levels) => {
    const { status } = await post(deep(levels));
    expect([400, 422]).toContain(status);
    const inside = JSON.stringify({ ...whole(), words: 'WORDS' }).replace('"WORDS"', deep(levels));
    if (inside.length < 64_000) expect((await post(inside)).status).toBe(422);
  });

  test('gives no object what it was not born with', async () => {
    const poison = `{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}},${JSON.stringify(whole()).slice(1)}`;
    expect([200, 422]).toContain((await post(poison)).status);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test.each(['\uD800', 'a\0b', '{"version":1', 'null', '[]', '17', '"x"', ''])(
    '%j is refused and nothing worse',
    async (body) => {
      const { status } = await post(body);
      expect(status).toBeGreaterThanOrEqual(400);
      expect(status).toBeLessThan(500);
    },
  );

  // PostgreSQL keeps no U+0000; half a pair is no character (Unicode, D76), and UTF-8 would store another than was signed.
  test.each([
    ['U+0000', { words: 'a\0b' }, 'words'],
    ['half a pair', { words: 'a\uD800b' }, 'words'],
    ['the other half', { words: '\uDC00' }, 'words'],
    ['U+0000 as the name of a measurement', { measurements: { 'a\0': '1' } }, 'measurements'],
    ['U+0000 deep in it', { measurements: { depth: 'a\0' } }, 'measurements.depth'],
  ])('with %s is refused at its field, and nothing is written', async (_, some, field) => {
    const message = { ...whole(), ...some };
    const answer = await post(JSON.stringify(message));
    const { problem } = (await answer.json()) as { problem: { fields?: Record<string, string[]> } };
    expect([answer.status, Object.keys(problem.fields ?? {})]).toEqual([422, [field]]);
    const { requestId } = message;
    const kept = await readInOperator(school.operatorId, (tx) =>
      tx.request.count({ where: { id: requestId } }),
    );
    expect(kept).toBe(0);
  });

  test('with letters of all kinds, and pairs that are whole, is taken', async () => {
    expect((await post(JSON.stringify({ ...whole(), words: 'é ß 漢 \u{1F6E9} \u202E' }))).status).toBe(200);
  });
});

describe('a file of flights', () => {
  const look = (kind: 'csv' | 'icalendar', text: string) =>
    checkImport(school.people.dispatcher, { kind, fileName: '../../x.csv', text });
  const list = (count: number) => Array.from({ length: count }, (_, n) => n).join(',');
  const event = (rule: string) =>
    `UID:s1\nRESOURCES:N0417W\nDTSTART:20200101T090000Z\nDURATION:PT1H\nRRULE:${rule}`;

  test.each([
    ['every second, for ever', () => calendarOf([event('FREQ=SECONDLY')])],
    ['every second, a thousand million times', () => calendarOf([event('FREQ=SECONDLY;COUNT=1000000000')])],
    ['every day, for ten thousand years', () => calendarOf([event('FREQ=DAILY;UNTIL=99991231T000000Z')])],
    ['a day that never comes', () => calendarOf([event('FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30')])],
    [
      'all of everything',
      () =>
        calendarOf([
          event('FREQ=YEARLY;BYMONTH=1,2,3,4,5,6,7,8,9,10,11,12;BYDAY=MO,TU,WE,TH,FR,SA,SU;BYSETPOS=-1'),
        ]),
    ],
    [
      'three thousand series',
      () =>
        calendarOf(
          Array.from({ length: 3000 }, (_, n) => event('FREQ=DAILY').replace('UID:s1', `UID:s${n}`)),
        ),
    ],
    [
      'every minute of every day, five hundred series with a long past',
      () =>
        calendarOf(
          Array.from({ length: 500 }, (_, n) =>
            event(`FREQ=DAILY;COUNT=9999999;BYHOUR=${list(24)};BYMINUTE=${list(60)}`).replace(
              'UID:s1',
              `UID:m${n}`,
            ),
          ),
        ),
    ],
    ['calendars in calendars', () => 'BEGIN:VCALENDAR\r\n'.repeat(20_000)],
    [
      'one line, folded two hundred thousand times',
      () => `BEGIN:VCALENDAR\r\nX-A:${'a\r\n '.repeat(200_000)}\r\nEND:VCALENDAR\r\n`,
    ],
  ])('%s: answered within some seconds', async (_, text) => {
    const began = process.cpuUsage();
    const result = await look('icalendar', text());
    expect(result.ok || result.problem.code === 'invalid').toBe(true);
    expect(processorMsSince(began)).toBeLessThan(15_000);
  });

  test.each([
    ['a quotation without an end', () => `aircraft,pilot_email\r\n"${'x'.repeat(900_000)}`],
    ['nothing but quotation marks', () => '"'.repeat(900_000)],
    ['a hundred thousand columns', () => ','.repeat(900_000)],
    ['half a million rows', () => 'a\n'.repeat(500_000)],
  ])('%s: answered within some seconds', async (_, text) => {
    const began = process.cpuUsage();
    const result = await look('csv', text());
    expect(result.ok || result.problem.code === 'invalid').toBe(true);
    expect(processorMsSince(began)).toBeLessThan(15_000);
  });
});
