'use client';

import { English } from '#words';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import styles from './vouching.module.css';

/** What is signed, word by word; as it is stored, so in English. */
export function SignedWords({ statements }: { statements: readonly string[] }) {
  return (
    <div className={styles.statement}>
      {statements.map((statement) => (
        <p key={statement}>
          <English>{statement}</English>
        </p>
      ))}
    </div>
  );
}

/** The end of a form that is vouched for: what is said, as it is signed, and the password. */
export function Vouching({ statement, signer }: { statement: string; signer: string }) {
  return (
    <>
      <SignedWords statements={[statement]} />
      <SigningPassword name={signer} />
    </>
  );
}
