import type { tracing } from '@opentelemetry/sdk-node';
import type { Attributes } from '@opentelemetry/api';

/**
 * What of a span may leave. Next's own spans carry whole addresses, and in ours stand tokens (/join, /api/calendar) and what
 * somebody searched for; an error's message may quote a row. So names are put together anew from the route, and of
 * everything else only what is listed goes out.
 */
const KEPT = new Set([
  'http.method',
  'http.route',
  'http.status_code',
  'next.route',
  'next.span_type',
  'next.rsc',
  'error.type',
  'wheelchock.verb',
  'wheelchock.operator_id',
  'wheelchock.outcome',
  'wheelchock.transaction',
]);

/** Our own forms, as in the log; a route of Next's is a pattern like /desk/aircraft/[id]. */
const FORM = /^[\w.:[\]()/ -]{1,120}$/;

/** The same span without what nobody outside is to know. */
export function cleaned(span: tracing.ReadableSpan): tracing.ReadableSpan {
  const attributes = keptOf(span.attributes);
  const clean: Partial<Record<keyof tracing.ReadableSpan, unknown>> = {
    name: nameOf(span, attributes),
    attributes,
    status: { code: span.status.code },
    events: [],
    links: [],
  };
  // The span itself is not ours to change; what is not said here is read from it.
  return new Proxy(span, {
    get: (of, key) => (key in clean ? clean[key as keyof typeof clean] : Reflect.get(of, key, of)),
  });
}

function keptOf(attributes: Attributes): Attributes {
  return Object.fromEntries(
    Object.entries(attributes).filter(
      ([key, value]) => KEPT.has(key) && (typeof value !== 'string' || FORM.test(value)),
    ),
  );
}

function nameOf(span: tracing.ReadableSpan, kept: Attributes): string {
  if (span.instrumentationScope.name === 'wheelchock') return FORM.test(span.name) ? span.name : 'act';
  const method = typeof kept['http.method'] === 'string' ? kept['http.method'] : '';
  const route = kept['http.route'] ?? kept['next.route'];
  const type = typeof kept['next.span_type'] === 'string' ? kept['next.span_type'] : 'span';
  if (typeof route === 'string') return `${method || type} ${route}`;
  return method || type;
}

/** An exporter that hands on cleaned spans only. */
export function cleaning(exporter: tracing.SpanExporter): tracing.SpanExporter {
  return {
    export: (spans, done) => exporter.export(spans.map(cleaned), done),
    shutdown: () => exporter.shutdown(),
    forceFlush: () => exporter.forceFlush?.() ?? Promise.resolve(),
  };
}
