/**
 * The one place that knows how this version of Prisma shapes its errors.
 * Prisma 7.10 with the pg adapter gives no `meta.target` for a broken unique constraint; the constraint's name is in
 * the driver error (tests/services/constraints.test.ts meets a real one).
 */
interface PrismaLikeError {
  code?: string;
  message?: string;
  meta?: { driverAdapterError?: { cause?: DriverCause } };
  cause?: unknown;
}
interface DriverCause {
  kind?: string;
  originalCode?: string;
  constraint?: { index?: string; fields?: string[] };
}

const asError = (error: unknown): PrismaLikeError =>
  typeof error === 'object' && error !== null ? (error as PrismaLikeError) : {};

const driverCause = (error: unknown): DriverCause | undefined =>
  asError(error).meta?.driverAdapterError?.cause;

/** Name of the unique constraint or index this error broke, or null when it is another error. */
export function brokenUnique(error: unknown): string | null {
  if (asError(error).code !== 'P2002') return null;
  return driverCause(error)?.constraint?.index ?? 'unknown';
}

/** A write conflict or deadlock the database asks us to try again (P2034, SQLSTATE 40001 or 40P01). */
export function isTransient(error: unknown): boolean {
  const { code, message } = asError(error);
  const sqlState = driverCause(error)?.originalCode;
  return (
    code === 'P2034' || sqlState === '40001' || sqlState === '40P01' || /40001|40P01/.test(message ?? '')
  );
}

/**
 * The database cannot do it just now, and the caller may try again: no connection to be had, no answer in time, or a
 * server that is going down, coming up or out of room. By class of SQLSTATE: 08 connection, 53 resources (a full disk is
 * 53100), 57 somebody or something intervened (57014 statement timeout, 57P03 starting up), 58 system.
 */
export function isUnreachable(error: unknown): boolean {
  const { code, message } = asError(error);
  return (
    CANNOT_NOW.test(driverCause(error)?.originalCode ?? '') ||
    code === 'P1001' ||
    code === 'P1002' ||
    code === 'P1008' ||
    code === 'P1017' ||
    code === 'P2024' ||
    code === 'P2028' ||
    code === 'P2037' ||
    /Code: `(?:08|53|57|58)[0-9A-Z]{3}`/.test(message ?? '') ||
    /ECONNREFUSED|ECONNRESET|ETIMEDOUT|EPIPE|ENOTFOUND|not queryable|terminating connection|Connection terminated|timeout exceeded|57014|due to statement timeout|database system is|No space left on device/i.test(
      message ?? '',
    )
  );
}

const CANNOT_NOW = /^(?:08|53|57|58)[0-9A-Z]{3}$/;

/** An append-only trigger or a missing grant refused the change. */
export function isAppendOnlyRefusal(error: unknown): boolean {
  const { message } = asError(error);
  return /never changed or deleted|never changed|permission denied|only grows/.test(message ?? '');
}
