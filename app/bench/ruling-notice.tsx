import { type Ruling } from '@/lib/rules/ruling';
import { Card } from '../_ui/page';
import { VerdictLines } from '../_ui/verdict-lines';
import styles from './ruling-notice.module.css';

/**
 * What the law says about the person looking, before they sign: allowed, or not and why. The form below stays usable; the
 * server decides.
 */
export function RulingNotice(props: { ruling: Ruling; allowed: string; refused: string; whoCan?: string }) {
  const { ruling, allowed, refused, whoCan } = props;
  if (ruling.allowed) {
    return (
      <details className={styles.allowed}>
        <summary>{allowed}</summary>
        <VerdictLines lines={ruling.lines} />
      </details>
    );
  }
  return (
    <Card edge="red">
      <p className={styles.refused}>{refused}</p>
      <VerdictLines lines={ruling.lines} />
      {whoCan && <p>{whoCan}</p>}
    </Card>
  );
}
