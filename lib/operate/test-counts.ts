import { readFile } from 'node:fs/promises';

/** What a layer came to. */
export interface Counts {
  passed: number;
  failed: number;
  skipped: number;
}

/** The parts of vitest's JSON report that are read. */
interface VitestReport {
  success: boolean;
  numPassedTests: number;
  numFailedTests: number;
  numPendingTests: number;
  numTodoTests: number;
  testResults: { status: string; assertionResults: unknown[] }[];
}

/** The parts of Playwright's JSON report that are read. */
interface PlaywrightReport {
  stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  errors: unknown[];
}

/**
 * Counts of a vitest run. A file that could not be loaded has no tests to count and counts as one failed; so does a
 * run that ended badly with nothing failed in it, or that ran nothing.
 */
export async function vitestCounts(file: string, exitCode: number): Promise<Counts> {
  const report = await readReport<VitestReport>(file);
  if (report === undefined) {
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const brokenFiles = report.testResults.filter(
    (result) => result.status === 'failed' && result.assertionResults.length === 0,
  ).length;
  return settled(
    {
      passed: report.numPassedTests,
      failed: report.numFailedTests + brokenFiles,
      skipped: report.numPendingTests + report.numTodoTests,
    },
    exitCode,
  );
}

/** Counts of a Playwright run, by the same rules. */
export async function playwrightCounts(file: string, exitCode: number): Promise<Counts> {
  const report = await readReport<PlaywrightReport>(file);
  if (report === undefined) {
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const { expected, unexpected, flaky, skipped } = report.stats;
  return settled({ passed: expected, failed: unexpected + flaky, skipped }, exitCode);
}

function settled(counts: Counts, exitCode: number): Counts {
  const silent = counts.failed === 0 && (exitCode !== 0 || counts.passed === 0);
  return silent ? { ...counts, failed: 1 } : counts;
}

async function readReport<T>(file: string): Promise<T | undefined> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as T;
  } catch {
    return undefined;
  }
}
