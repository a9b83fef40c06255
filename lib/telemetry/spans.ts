/**
 * Spans and figures of what this program does, by OpenTelemetry's interface. Without the settings that switch it on
 * (lib/telemetry/start.ts) all of this does nothing and costs next to nothing. As in the log, nobody's data: verbs, outcomes
 * and the operator's number, and of an error only its kind.
 */
import {
  metrics,
  SpanStatusCode,
  trace,
  type Attributes,
  type Counter,
  type Histogram,
} from '@opentelemetry/api';

const SCOPE = 'wheelchock';

type SpanName = 'transaction' | 'rules' | `command ${string}` | `query ${string}`;

/** The fields a span may carry; lib/telemetry/cleaned.ts lets no others out. */
export interface SpanFields {
  readonly 'wheelchock.verb'?: string;
  readonly 'wheelchock.operator_id'?: string;
  readonly 'wheelchock.outcome'?: string;
  /** write, read or note. */
  readonly 'wheelchock.transaction'?: string;
}

/** Does `work` in a span of its own, which ends with it, whether that is a value, a promise or a throw. */
export function inSpan<T>(
  name: SpanName,
  fields: SpanFields,
  work: (tell: (more: SpanFields) => void) => T,
): T {
  return trace.getTracer(SCOPE).startActiveSpan(name, { attributes: fields as Attributes }, (span) => {
    const fail = (error: unknown): never => {
      span.setStatus({ code: SpanStatusCode.ERROR });
      span.setAttribute('error.type', error instanceof Error ? error.name : typeof error);
      span.end();
      throw error;
    };
    try {
      const value = work((more) => span.setAttributes(more as Attributes));
      if (value instanceof Promise) {
        return value.then((done: unknown) => {
          span.end();
          return done;
        }, fail) as T;
      }
      span.end();
      return value;
    } catch (error) {
      return fail(error);
    }
  });
}

interface Figures {
  readonly acts: Counter;
  readonly took: Histogram;
  readonly recalls: Counter;
}
let figures: Figures | undefined;

/** Made at the first use, which comes after the start: a counter made earlier would count for nobody. */
function counted(): Figures {
  if (figures) return figures;
  const meter = metrics.getMeter(SCOPE);
  figures = {
    acts: meter.createCounter('wheelchock.acts', {
      description: 'Commands and queries, by verb and outcome',
    }),
    took: meter.createHistogram('wheelchock.act.duration', { unit: 'ms', description: 'How long they took' }),
    recalls: meter.createCounter('wheelchock.recalls', {
      description: 'Releases that were voided or warned about because facts changed',
    }),
  };
  return figures;
}

/** One command or query is done with. */
export function countAct(kind: 'command' | 'query', verb: string, outcome: string, ms: number): void {
  const { acts, took } = counted();
  const of = { 'wheelchock.kind': kind, 'wheelchock.verb': verb, 'wheelchock.outcome': outcome };
  acts.add(1, of);
  took.record(ms, of);
}

/** Releases recalled by one write: a write-up came that grounds the aircraft, say. */
export function countRecalls(count: number): void {
  if (count > 0) counted().recalls.add(count);
}

/** For tests and for the start: what is counted from now on is counted anew, for whoever listens now. */
export const forgetFigures = (): void => {
  figures = undefined;
};
