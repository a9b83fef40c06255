'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useId, useRef, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { newRequestId } from '@/app/_ui/request-id';
import { type Result } from '@/lib/problems';
import styles from '../people.module.css';

interface Props {
  readonly about: 'certificate' | 'mel';
  readonly aboutId: string;
}

/** A proof to be uploaded: PDF, JPEG or PNG. The request keeps its number until it was taken, so that it is kept once. */
export function ProofUpload({ about, aboutId }: Props) {
  const t = useWords();
  const router = useRouter();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const draft = useRef<{ file: File; requestId: string } | null>(null);
  const [said, setSaid] = useState('');
  const [pending, setPending] = useState(false);

  async function send() {
    const file = input.current?.files?.[0];
    if (pending) return;
    if (!file) {
      setSaid(t('Choose a file first.'));
      return;
    }
    if (draft.current?.file !== file) draft.current = { file, requestId: newRequestId() };
    setPending(true);
    setSaid(t('Sending…'));
    setSaid(await taken(file, draft.current.requestId));
    setPending(false);
  }

  async function taken(file: File, requestId: string): Promise<string> {
    try {
      const answer = await fetch(`/api/proofs?about=${about}&id=${aboutId}&request=${requestId}`, {
        method: 'POST',
        body: file,
      });
      const result = (await answer.json()) as Result<unknown>;
      if (!result.ok) {
        return Object.values(result.problem.fields ?? {}).flat()[0] ?? result.problem.say;
      }
      draft.current = null;
      if (input.current) input.current.value = '';
      router.refresh();
      return t('Kept.');
    } catch {
      return t('Not sent: no connection. Press again when you are connected; it is kept only once.');
    }
  }

  return (
    <div className={styles.file}>
      <label htmlFor={id}>{t('Upload a proof (PDF, JPEG or PNG, 10 MB at most)')}</label>
      <div className={styles.head}>
        <input
          ref={input}
          id={id}
          type="file"
          accept="application/pdf,image/jpeg,image/png"
          aria-describedby={`${id}-said`}
        />
        <Button aria-disabled={pending || undefined} onClick={() => void send()}>
          {t('Upload')}
        </Button>
      </div>
      <p id={`${id}-said`} role="status" className={styles.soft}>
        {said}
      </p>
    </div>
  );
}
