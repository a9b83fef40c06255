'use client';

import { English, useEnglish } from '#words';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import styles from '../history.module.css';

/** The end of a form that is vouched for: what is said, as it is signed, and the password. */
export function Vouching({ statement, signer }: { statement: string; signer: string }) {
  const english = useEnglish();
  return (
    <>
      <p {...english} className={styles.statement}>
        <English>{statement}</English>
      </p>
      <SigningPassword name={signer} />
    </>
  );
}
