import { useWords } from '#words';
import { type Severity } from '@/lib/rules/aircraft';
import { SeverityMark } from '../../../_ui/marks';
import { Tag } from '../../../_ui/tag';
import { type MarkedWriteUp } from './marked';
import styles from './drawing.module.css';

/** What is written up at one place, a line or two each. */
export function KnownAtPlace({ writeUps }: { writeUps: readonly MarkedWriteUp[] }) {
  const t = useWords();
  if (writeUps.length === 0) return <p>{t('Nothing is written up here.')}</p>;
  return (
    <ul className={styles.known}>
      {writeUps.map(({ id, number, title, place, state, severity }) => (
        <li key={id}>
          <p>
            <b>
              {number} {title}
            </b>
            {place && <span className={styles.soft}> {place}</span>}
          </p>
          <p className={styles.marks}>
            <SeverityMark severity={severity as Severity | null} size="small" />
            <Tag
              tone={state === 'deferred' ? 'blue' : 'grey'}
              shape={state === 'deferred' ? 'ring' : 'dot'}
              size="small"
            >
              {state === 'deferred' ? t('Deferred') : t('Open')}
            </Tag>
          </p>
        </li>
      ))}
    </ul>
  );
}
