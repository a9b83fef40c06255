/**
 * Traces and figures arrive at a receiver, and carry nobody's data. Sources: issue 6, "OpenTelemetry hooks"; OTLP
 * specification, "OTLP/HTTP" (POST of protobuf to /v1/traces and /v1/metrics). The receiver is a small server of this file's;
 * protobuf keeps texts as plain UTF-8 bytes, so what stands in a payload is found by looking for it.
 */
import { createServer, type Server } from 'node:http';
import { gunzipSync } from 'node:zlib';
import { SpanKind, trace } from '@opentelemetry/api';
import getPort from 'get-port';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reportFinding } from '@/lib/findings/report-finding';
import { readBoard } from '@/lib/fleet/read-board';
import { telemetryWanted } from '@/lib/telemetry/settings';
import type { Telemetry } from '@/lib/telemetry/start';
import { deadLandingLight, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let receiver: Server;
let telemetry: Telemetry;
const arrived: { path: string; type: string; text: string }[] = [];

beforeAll(async () => {
  ({ database, school } = await openSchools());
  receiver = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      const whole = Buffer.concat(parts);
      const body = request.headers['content-encoding'] === 'gzip' ? gunzipSync(whole) : whole;
      arrived.push({
        path: request.url ?? '',
        type: request.headers['content-type'] ?? '',
        text: body.toString('latin1'),
      });
      response.writeHead(200, { 'content-type': 'application/x-protobuf' }).end();
    });
  });
  const port = await getPort();
  await new Promise<void>((resolve) => receiver.listen(port, '127.0.0.1', resolve));
  process.env['OTEL_EXPORTER_OTLP_ENDPOINT'] = `http://127.0.0.1:${port}`;
  const { startTelemetry } = await import('@/lib/telemetry/start');
  telemetry = startTelemetry();
});
afterAll(async () => {
  await new Promise((resolve) => receiver.close(resolve));
  await closeSchools(database);
});

const WORDS = 'Quibblethorn said the wobblegasket squeaks';

test('a command makes spans and figures that arrive, without anybody’s data', async () => {
  const now = { now: NOW };
  valueOf(await reportFinding(school.people.renter, { ...deadLandingLight(school), note: WORDS }, now));
  expect((await reportFinding(school.people.renter, { note: WORDS }, now)).ok).toBe(false);
  valueOf(await readBoard(school.people.dispatcher, {}, now));
  asNextWould();
  await telemetry.stop();

  const to = (path: string) => arrived.filter((one) => one.path === path);
  expect(new Set(arrived.map(({ type }) => type))).toEqual(new Set(['application/x-protobuf']));
  const spans = to('/v1/traces')
    .map(({ text }) => text)
    .join('');
  for (const word of [
    'command finding.report',
    'query fleet.read',
    'transaction',
    'rules',
    'wheelchock.outcome',
    'invalid',
    school.operatorId,
    'GET /join/[token]',
  ]) {
    expect(spans).toContain(word);
  }
  const figures = to('/v1/metrics')
    .map(({ text }) => text)
    .join('');
  for (const word of [
    'wheelchock.acts',
    'wheelchock.act.duration',
    'wheelchock.deliveries.waiting',
    'finding.report',
  ]) {
    expect(figures).toContain(word);
  }
  for (const { text } of arrived) {
    for (const word of ['Quibblethorn', 'wobblegasket', 's3cr3t', 'ruth@', 'hunter2', process.cwd()]) {
      expect(text).not.toContain(word);
    }
    for (const { name } of Object.values(PEOPLE)) expect(text).not.toContain(name);
    expect(text).not.toContain(school.people.renter.personId);
  }
});

/** Spans of the shape Next makes (next/dist/server/base-server.js: http.target is the whole address, errors are recorded). */
function asNextWould(): void {
  const tracer = trace.getTracer('next.js');
  const attributes = {
    'http.method': 'GET',
    'http.target': '/join/s3cr3t?name=ruth@school',
    'http.url': 'https://x/?p=hunter2',
  };
  tracer.startActiveSpan(
    'GET /join/s3cr3t?name=ruth@school',
    { kind: SpanKind.SERVER, attributes },
    (span) => {
      span.setAttributes({ 'http.route': '/join/[token]', 'next.span_type': 'BaseServer.handleRequest' });
      span.recordException(new Error(WORDS));
      span.setStatus({ code: 2, message: WORDS });
      span.addLink({ context: span.spanContext(), attributes: { word: 's3cr3t' } });
      span.end();
    },
  );
  tracer.startSpan('fetch GET https://hooks.example/?p=hunter2', { attributes }).end();
}

test.each([
  [{}, false],
  [{ OTEL_EXPORTER_OTLP_ENDPOINT: '' }, false],
  [{ OTEL_EXPORTER_OTLP_ENDPOINT: 'http://localhost:4318' }, true],
  [{ OTEL_EXPORTER_OTLP_TRACES_ENDPOINT: 'http://localhost:4318/v1/traces' }, true],
  [{ OTEL_EXPORTER_OTLP_ENDPOINT: 'http://localhost:4318', OTEL_SDK_DISABLED: 'true' }, false],
])('%j switches it on: %s', (env, on) => expect(telemetryWanted(env)).toBe(on));
