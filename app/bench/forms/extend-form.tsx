'use client';

import { useWords } from '#words';
import { extendIntervalInput } from '@/lib/determinations/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea, TextField } from '../../_ui/fields';
import { extend } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

/** A repair interval lengthened once. `latest` is the furthest day in words, null where it may not be extended. */
export function ExtendForm(props: { deferralId: string; signer: string; latest: string | null }) {
  const t = useWords();
  const { deferralId, signer, latest } = props;
  const command = useAct({
    action: extend,
    schema: extendIntervalInput,
    start: { until: '', reason: '', password: '' },
    input: (typed) => ({ ...typed, deferralId }),
    done: t('Extended and signed.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the extension')}
      pendingWords={t('Signing…')}
      label={t('Extend the repair interval')}
    >
      <TextField
        name="until"
        label={t('Extended through')}
        type="date"
        hint={latest === null ? undefined : t('At most through {latest}.', { latest })}
      />
      <TextArea
        name="reason"
        label={t('Why it could not be repaired in time')}
        hint={t('The letter asks for the reason; parts on order, with their date.')}
        rows={2}
      />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
