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

/** No connection to be had, or no answer in time (a statement timeout is SQLSTATE 57014): the caller may try again. */
export function isUnreachable(error: unknown): boolean {
  const { code, message } = asError(error);
  return (
    driverCause(error)?.originalCode === '57014' ||
    code === 'P1001' ||
    code === 'P1002' ||
    code === 'P1017' ||
    code === 'P2024' ||
    code === 'P2028' ||
    /ECONNREFUSED|ECONNRESET|terminating connection|Connection terminated|timeout exceeded|57014|due to statement timeout/i.test(
      message ?? '',
    )
  );
}

/** An append-only trigger or a missing grant refused the change. */
export function isAppendOnlyRefusal(error: unknown): boolean {
  const { message } = asError(error);
  return /never changed or deleted|never changed|permission denied|only grows/.test(message ?? '');
}
