'use client';

import { English, useEnglish, useWords } from '#words';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { TextField } from '@/app/_ui/fields';
import styles from '../fleet.module.css';

/** The end of every form that is signed: which document, what is said, and the password. */
export function Signing({ statement, signer, hint }: { statement: string; signer: string; hint: string }) {
  const t = useWords();
  const english = useEnglish();
  return (
    <>
      <TextField name="source" label={t('Document it is taken from')} hint={hint} maxLength={300} />
      <p {...english} className={styles.statement}>
        <English>{statement}</English>
      </p>
      <SigningPassword name={signer} />
    </>
  );
}
