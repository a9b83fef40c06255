'use client';

import { useWords } from '#words';
import { logCheckFlightInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea, TextField } from '../../_ui/fields';
import { checkFlight } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

/** The operational check of 91.407(b), logged by the pilot who flew it. */
export function CheckFlightForm({ workId, signer }: { workId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: checkFlight,
    schema: logCheckFlightInput,
    start: { flownOn: '', words: '', password: '' },
    input: (typed) => ({ ...typed, workId }),
    done: t('The check flight is logged and signed.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the check flight')}
      pendingWords={t('Signing…')}
      label={t('Log the check flight')}
    >
      <TextField name="flownOn" label={t('Flown on')} type="date" />
      <TextArea name="words" label={t('What was checked and found')} rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
