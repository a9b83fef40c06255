/** `npm audit`: packages with known weaknesses, high and above. */
import { runToEnd } from '../../lib/operate/children.mjs';
import { report } from './row';

const COMMAND = 'npm audit --audit-level=high';

interface Audit {
  metadata?: { vulnerabilities: Record<'info' | 'low' | 'moderate' | 'high' | 'critical', number> };
}

const { output } = await runToEnd('npm', ['audit', '--json'], { show: false });
const counts = readCounts(output);
report([
  {
    part: 'Packages',
    what: 'known weaknesses, high and critical',
    command: COMMAND,
    measured: counts
      ? `${counts.high + counts.critical} (lower ones: ${counts.moderate + counts.low + counts.info})`
      : `the registry gave no answer: ${output.trim().split('\n')[0] ?? ''}`,
    wanted: '0',
    // A registry without an audit service says nothing of our packages, good or bad.
    good: counts ? counts.high + counts.critical === 0 : null,
  },
]);

function readCounts(text: string) {
  const from = text.indexOf('{');
  if (from < 0) return null;
  try {
    return (
      (JSON.parse(text.slice(from, text.lastIndexOf('}') + 1)) as Audit).metadata?.vulnerabilities ?? null
    );
  } catch {
    return null;
  }
}
