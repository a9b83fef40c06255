'use client';

import { English, useWords } from '#words';
import { inspectForPermitInput } from '@/lib/permits/schema';
import { CommandForm } from '@/app/_ui/command-form';
import { Checkbox, TextArea } from '@/app/_ui/fields';
import { permitInspected } from '../../actions';
import { SigningPassword } from '../../forms/signing-password';
import { useAct } from '../../forms/use-act';

/** The inspection the permit asks for: what was looked at, and that the aircraft is safe for this flight. */
export function InspectForm({ permitId, signer }: { permitId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: permitInspected,
    schema: inspectForPermitInput,
    start: { statement: '', safe: false, password: '' },
    input: (typed) => ({ ...typed, permitId }),
    done: t('Inspected and signed.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the inspection')}
      pendingWords={t('Signing…')}
      label={t('Inspect for the permit')}
    >
      <TextArea name="statement" label={t('What was inspected and found')} rows={3} />
      <Checkbox name="safe" label={<English>{FOUND_SAFE}</English>} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Part of what is signed, so it is said in the language it is kept in. */
const FOUND_SAFE = 'I find the aircraft safe for the flight that this permit describes.';
