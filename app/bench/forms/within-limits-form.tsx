'use client';

import { useWords } from '#words';
import { findWithinLimitsInput } from '@/lib/determinations/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea, TextField } from '../../_ui/fields';
import { findWithin } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

/** Where the aircraft has no stored limit: measured, limit and source in words. The write-up stays open and is looked at again. */
export function WithinLimitsForm({ discrepancyId, signer }: { discrepancyId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: findWithin,
    schema: findWithinLimitsInput,
    start: { measured: '', limitText: '', limitSource: '', statement: '', password: '' },
    input: (typed) => ({ ...typed, discrepancyId }),
    done: t('Found within limits and signed. It stays open as a watch.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the finding')}
      pendingWords={t('Signing…')}
      label={t('Find within limits')}
    >
      <TextField
        name="measured"
        label={t('Measured')}
        hint={t('Value, unit, and with what it was measured.')}
      />
      <TextField name="limitText" label={t('The limit')} hint={t('As the source states it.')} />
      <TextField
        name="limitSource"
        label={t('Where the limit comes from')}
        hint={t('Manual, revision, page. A limit without a source is no limit.')}
      />
      <TextArea name="statement" label={t('Your finding')} rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
