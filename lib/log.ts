/**
 * What the server tells whoever runs it: one line of JSON an event, to standard output. Nobody's name, address, words,
 * token or cookie: a message is one of a fixed list, a field is one of a fixed list and must have the form of what it
 * claims to be, and an error is told by kind, code, scrubbed message and the places in our code it came through.
 * So nothing else can be handed over, by types while writing and by form while running.
 */
import pino from 'pino';
import { describeError, type DescribedError } from './log/describe-error';

const MESSAGES = [
  'started',
  'stopping',
  'stopped',
  'command',
  'query',
  'bug',
  'sign-in failed',
  'sign-in held up',
  'set aside',
  'not sent',
  'not listening',
  'photo not stored',
  'photo lost',
  'photo store does not answer',
  'telemetry',
  'swept',
  'not ready',
  'framework',
] as const;
export type LogMessage = (typeof MESSAGES)[number];

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
/** Our own short words: a verb, a code, an area. */
const WORD = /^[a-z][a-z0-9_.:-]{0,59}$/;
const PHOTO_KEY = /^(?:[0-9a-z-]{1,64}\/){0,4}[0-9a-z-]{1,64}(?:\.jpg)?$/;

/** Every field there is, with the form it must have. */
const FORMS = {
  /** Number of this very event, told to the person who met it. */
  eventId: UUID,
  requestId: UUID,
  operatorId: UUID,
  verb: WORD,
  /** `ok` or the code of the refusal (lib/problems.ts). */
  outcome: WORD,
  /** Which part of the program. */
  about: WORD,
  /** What was found about it, in one of our own words. */
  why: WORD,
  key: PHOTO_KEY,
} as const;
const NUMBERS = ['ms', 'count'] as const;

export type LogFields = { readonly [name in keyof typeof FORMS]?: string } & {
  readonly [name in (typeof NUMBERS)[number]]?: number;
};

const LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const;
type Level = (typeof LEVELS)[number];

/** The level LOG_LEVEL asks for; `info` unless said. Throws, in words for whoever runs the server, when it is none. */
export function logLevel(env: Readonly<Record<string, string | undefined>> = process.env): Level {
  const asked = env['LOG_LEVEL']?.trim().toLowerCase() || 'info';
  const level = LEVELS.find((one) => one === asked);
  if (!level) throw new Error(`LOG_LEVEL=${asked} is none of ${LEVELS.join(', ')}.`);
  return level;
}

type Sink = (line: string) => void;
/** Kept on globalThis because the framework loads this file once a bundle. */
const holder = globalThis as typeof globalThis & { wheelchockLogSink?: Sink | undefined };

const logger = pino(
  {
    base: null,
    level: 'trace',
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label) => ({ level: label }) },
    // The second fence, should the first have a hole: names under which secrets travel, wherever they stand.
    redact: {
      paths: ['password', 'token', 'cookie', 'authorization', 'email', 'name'].flatMap((name) => [
        name,
        `*.${name}`,
      ]),
      censor: '[withheld]',
    },
  },
  {
    write(line: string) {
      if (holder.wheelchockLogSink) holder.wheelchockLogSink(line);
      else process.stdout.write(line);
    },
  },
);

function write(
  level: Exclude<Level, 'silent'>,
  message: LogMessage,
  fields: LogFields,
  error?: DescribedError,
) {
  if (!holder.wheelchockLogSink && LEVELS.indexOf(level) < LEVELS.indexOf(levelNow())) return;
  const said = MESSAGES.includes(message) ? message : 'bug';
  logger[level]({ ...inForm(fields), ...(error ? { error } : {}) }, said);
}

/** A wrong setting is told at the start (instrumentation.ts); a line is not the place to throw. */
function levelNow(): Level {
  try {
    return logLevel();
  } catch {
    return 'info';
  }
}

/** Only what has the form of what it claims to be; of the rest only that something was left out. */
function inForm(fields: LogFields): Record<string, string | number> {
  const kept: Record<string, string | number> = {};
  for (const [name, form] of Object.entries(FORMS)) {
    const value: unknown = fields[name as keyof typeof FORMS];
    if (value === undefined) continue;
    kept[name] = typeof value === 'string' && form.test(value) ? value : '[withheld]';
  }
  for (const name of NUMBERS) {
    const value: unknown = fields[name];
    if (value === undefined) continue;
    kept[name] = typeof value === 'number' && Number.isFinite(value) ? value : '[withheld]';
  }
  return kept;
}

export const log = {
  /** What is only looked at while searching for a fault. */
  debug: (message: LogMessage, fields: LogFields = {}) => write('debug', message, fields),
  info: (message: LogMessage, fields: LogFields = {}) => write('info', message, fields),
  /** Something that heals by itself, or needs a look in the next days. */
  warn: (message: LogMessage, fields: LogFields = {}, error?: unknown) =>
    write('warn', message, fields, error === undefined ? undefined : describeError(error)),
  /** Something that is wrong. The error is told by kind, code, scrubbed message and places. */
  error: (message: LogMessage, error: unknown, fields: LogFields = {}) =>
    write('error', message, fields, describeError(error)),
} as const;

/** For tests: from now on lines of every level go to `sink` instead. Gives back how to stop. */
export function listenToLog(sink: Sink): () => void {
  holder.wheelchockLogSink = sink;
  return () => {
    holder.wheelchockLogSink = undefined;
  };
}
