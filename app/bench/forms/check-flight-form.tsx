'use client';

import { logCheckFlightInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea, TextField } from '../../_ui/fields';
import { checkFlight } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

/** The operational check of 91.407(b), logged by the pilot who flew it. */
export function CheckFlightForm({ workId, signer }: { workId: string; signer: string }) {
  const command = useAct({
    action: checkFlight,
    schema: logCheckFlightInput,
    start: { flownOn: '', words: '', password: '' },
    input: (typed) => ({ ...typed, workId }),
    done: 'The check flight is logged and signed.',
  });
  return (
    <CommandForm
      command={command}
      submit="Sign the check flight"
      pendingWords="Signing…"
      label="Log the check flight"
    >
      <TextField name="flownOn" label="Flown on" type="date" />
      <TextArea name="words" label="What was checked and found" rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
