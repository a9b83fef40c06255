import { scrub } from './scrub';

/** What of an error may stand in a log. */
export interface DescribedError {
  readonly kind: string;
  /** SQLSTATE, a number of Prisma's, or the system's. */
  readonly code?: string;
  readonly message?: string;
  /** Where it came through: function, file and line, no values. */
  readonly places?: readonly string[];
  readonly cause?: DescribedError;
}

const CODE = /^[A-Z][A-Z0-9_]{1,39}$|^[0-9A-Z]{5}$/;
const KIND = /^[A-Za-z][A-Za-z0-9_$]{0,59}$/;
const PLACES = 12;
const DEEPEST_CAUSE = 3;

/**
 * Kind, code, scrubbed message, places and cause. Of something thrown that is no error only its type: it may be anything
 * somebody wrote. A message that lies in the stack as well is not repeated from there, since only its places are taken.
 */
export function describeError(error: unknown, depth = 0): DescribedError {
  if (!(error instanceof Error)) return { kind: error === null ? 'null' : typeof error };
  const { name, message, stack } = error;
  const code = codeOf(error);
  const places = placesIn(stack);
  const cause = causeOf(error);
  return {
    kind: KIND.test(name) ? name : 'Error',
    ...(code === undefined ? {} : { code }),
    message: scrub(message),
    ...(places.length === 0 ? {} : { places }),
    ...(cause === undefined || depth >= DEEPEST_CAUSE ? {} : { cause: describeError(cause, depth + 1) }),
  };
}

/** The database's code stands, with Prisma's driver, in a plain object under `cause`. */
function codeOf(error: Error): string | undefined {
  const { code, cause } = error as { code?: unknown; cause?: unknown };
  const { originalCode } = (cause ?? {}) as { originalCode?: unknown };
  return [originalCode, code].find((one): one is string => typeof one === 'string' && CODE.test(one));
}

/** Prisma keeps the driver's error beside `cause`. */
function causeOf(error: Error): unknown {
  const { meta } = error as { meta?: { driverAdapterError?: unknown } };
  const cause = error.cause ?? meta?.driverAdapterError;
  return cause instanceof Error ? cause : undefined;
}

/**
 * The lines of a stack that are places, our own where there are any. A message of many lines may hold one that looks like a
 * place: so by form only.
 */
function placesIn(stack: string | undefined): string[] {
  const all = (stack ?? '').split('\n').flatMap((line) => {
    const { name, where } = PLACE.exec(line)?.groups ?? {};
    if (where === undefined) return [];
    const file = where.replace(/^file:\/\//, '').replace(/\?[^:]*/, '');
    return [`${name ? `${name} ` : ''}${file.replace(`${process.cwd()}/`, '')}`];
  });
  const ours = all.filter((place) => !/node_modules\/|node:/.test(place));
  return (ours.length > 0 ? ours : all).slice(0, PLACES);
}
const PLACE =
  /^ {4}at (?:(?:async )?(?<name>(?:new )?[\w$.<>[\]#/ -]{1,80}) \()?(?<where>(?:file:\/\/|node:|\/)[\w$./@()[\]~+ -]{1,300}(?:\?[\w=]*)?:\d+:\d+)\)?$/;
