'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '@/app/_ui/command-form';
import { Checkbox, TextArea, TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { erasePersonInput } from '@/lib/people/schema';
import { erase } from '../actions';

interface Typed {
  askedOn: string;
  words: string;
  understood: boolean;
  password: string;
}

/** Erases for good, signed with the manager's password. */
export function EraseForm({
  personId,
  today,
  signerName,
}: {
  personId: string;
  today: string;
  signerName: string;
}) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<Typed, unknown>({
    action: (typed) => erase({ ...typed, personId }),
    schema: erasePersonInput.omit({ personId: true }),
    start: { askedOn: today, words: '', understood: false, password: '' },
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Erase for good')}
      pendingWords={t('Erasing…')}
      label={t('Erase personal data')}
    >
      <TextField
        name="askedOn"
        type="date"
        label={t('Asked for on')}
        hint={t('The day on which the person asked, or you decided.')}
      />
      <TextArea
        name="words"
        label={t('Why')}
        rows={2}
        maxLength={300}
        hint={t('Without the name: it is kept for good.')}
      />
      <Checkbox
        name="understood"
        label={t('I have read what stays, and know that erasing cannot be undone.')}
      />
      <SigningPassword name={signerName} />
    </CommandForm>
  );
}
