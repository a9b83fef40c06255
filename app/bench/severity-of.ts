import { type Severity } from '@/lib/rules/aircraft';

const SEVERITIES: readonly string[] = [
  'grounding',
  'limiting',
  'watch',
  'note',
] satisfies readonly Severity[];

/** The recorded severity; anything not known counts as undecided, which grounds. */
export const severityOf = (severity: string | null): Severity | null =>
  severity !== null && SEVERITIES.includes(severity) ? (severity as Severity) : null;
