'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { yesNo } from '@/app/bench/forms/typed';
import { useAct } from '@/app/bench/forms/use-act';
import { YesNo } from '@/app/bench/forms/yes-no';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { dateInWords } from '@/app/_ui/moment';
import { PAPER_STATEMENT } from '@/lib/carry-over/statements';
import { addPaperInput } from '@/lib/papers-aboard/schema';
import { registrationExpiry } from '@/lib/rules/part-47/47-40-registration';
import { type PaperKind } from '@/lib/rules/aircraft';
import { paperAdded } from '../actions';
import { Vouching } from '@/app/office/_parts/vouching';

const START = { issuedOn: '', validThrough: '', expires: '', reference: '', aboard: '', password: '' };

/** A paper entered for the first time, as somebody reads it from the paper. */
export function PaperForm({
  aircraftId,
  kind,
  signer,
}: {
  aircraftId: string;
  kind: PaperKind;
  signer: string;
}) {
  const t = useWords();
  const isRegistration = kind === 'registration';
  const command = useAct({
    action: paperAdded,
    schema: addPaperInput,
    start: START,
    input: (typed) => ({
      ...typed,
      aircraftId,
      kind,
      expires: isRegistration ? true : yesNo(typed.expires),
      aboard: yesNo(typed.aboard),
    }),
    done: t('The paper is entered.'),
  });
  const [issuedOn, expires] = useWatch({ control: command.form.control, name: ['issuedOn', 'expires'] });
  return (
    <CommandForm command={command} submit={t('Sign and enter the paper')} label={t('Enter a paper')}>
      <TextField name="reference" label={t('Number or mark of the paper')} maxLength={120} />
      {isRegistration && <TextField name="issuedOn" label={t('Day of issue')} type="date" />}
      {!isRegistration && <YesNo name="expires" label={t('Does it run out?')} />}
      {(isRegistration || expires === 'yes') && (
        <TextField
          name="validThrough"
          label={t('Last day')}
          hint={
            isRegistration && issuedOn
              ? t('By 47.40(a) at most {date}. Enter what the certificate says.', {
                  date: dateInWords(registrationExpiry(issuedOn)),
                })
              : t('As the paper says.')
          }
          type="date"
        />
      )}
      <YesNo name="aboard" label={t('Is it aboard?')} />
      <Vouching statement={PAPER_STATEMENT} signer={signer} />
    </CommandForm>
  );
}
