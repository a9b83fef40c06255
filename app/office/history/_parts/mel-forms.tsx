'use client';

import { useWords } from '#words';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { useAct } from '@/app/bench/forms/use-act';
import { CommandForm } from '@/app/_ui/command-form';
import { TextArea, TextField } from '@/app/_ui/fields';
import { LETTER_STATEMENT, NO_MEL_STATEMENT } from '@/lib/carry-over/statements';
import { endMelInput, melLetterInput, noMelInput } from '@/lib/mel/schema';
import { letterSaid, melEnded, withoutMelSaid } from '../actions';
import { LetterAboard } from './mel-head';
import { Vouching } from '@/app/office/_parts/vouching';

/** Whether the letter of authorization is aboard, and which it is. */
export function LetterForm(props: {
  melId: string;
  letterReference: string;
  letterIssuedOn: string;
  signer: string;
}) {
  const t = useWords();
  const { melId, letterReference, letterIssuedOn, signer } = props;
  const command = useAct({
    action: letterSaid,
    schema: melLetterInput,
    start: { letterReference, letterIssuedOn, letterAboard: '', password: '' },
    input: (typed) => ({ ...typed, melId }),
    done: t('Signed.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign')} label={t('Letter of authorization')}>
      <TextField name="letterReference" label={t('Reference of the letter')} maxLength={120} />
      <TextField name="letterIssuedOn" label={t('Day of issue')} type="date" optional />
      <LetterAboard />
      <Vouching statement={LETTER_STATEMENT} signer={signer} />
    </CommandForm>
  );
}

/** The list is in force no more. */
export function EndMelForm({ melId, signer }: { melId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: melEnded,
    schema: endMelInput,
    start: { why: '', source: '', password: '' },
    input: (typed) => ({ ...typed, melId }),
    done: t('Ended. It stays on record.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign and end it')} label={t('End the list')}>
      <p>
        {t(
          'Afterwards nobody knows whether the aircraft has a list, and nothing can be deferred, until you sign below that it has none or take in another.',
        )}
      </p>
      <TextArea name="why" label={t('Why')} rows={2} maxLength={500} />
      <TextField name="source" label={t('Document that says so')} maxLength={300} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Operated without a list: paragraph (d) is then the way. */
export function NoMelForm({ aircraftId, signer }: { aircraftId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: withoutMelSaid,
    schema: noMelInput,
    start: { source: '', password: '' },
    input: (typed) => ({ ...typed, aircraftId }),
    done: t('Signed. Items are deferred under 91.213(d).'),
  });
  return (
    <CommandForm command={command} submit={t('Sign: no list')} label={t('Operated without a list')}>
      <TextField name="source" label={t('Document, or who says so')} maxLength={300} />
      <Vouching statement={NO_MEL_STATEMENT} signer={signer} />
    </CommandForm>
  );
}
