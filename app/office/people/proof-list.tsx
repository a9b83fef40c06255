import { useWords } from '#words';
import { type ProofView } from '@/lib/people/proof-view';
import styles from './people.module.css';

/** The proofs of a certificate, or of a letter of authorization, each to be saved. */
export function ProofList({ proofs }: { proofs: readonly ProofView[] }) {
  const t = useWords();
  if (proofs.length === 0) return <p className={styles.soft}>{t('No proof was uploaded.')}</p>;
  return (
    <ul className={styles.proofs}>
      {proofs.map(({ id, fileName, addedAt }) => (
        <li key={id}>
          <a href={`/api/proofs/${id}`} download>
            {t('Proof of {day}: {fileName}', { day: addedAt.slice(0, 10), fileName })}
          </a>
        </li>
      ))}
    </ul>
  );
}
