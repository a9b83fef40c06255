'use client';

import { useWords } from '#words';
import { TextField } from '@/app/_ui/fields';
import { Vouching } from '../../_parts/vouching';

/** The end of every form that is signed from a document: which one, what is said, and the password. */
export function Signing({ statement, signer, hint }: { statement: string; signer: string; hint: string }) {
  const t = useWords();
  return (
    <>
      <TextField name="source" label={t('Document it is taken from')} hint={hint} maxLength={300} />
      <Vouching statement={statement} signer={signer} />
    </>
  );
}
