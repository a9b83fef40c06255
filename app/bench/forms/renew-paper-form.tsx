'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { renewPaperInput } from '@/lib/fleet/requirement-schema';
import { registrationExpiry } from '@/lib/rules/part-47/47-40-registration';
import { CommandForm } from '../../_ui/command-form';
import { TextField } from '../../_ui/fields';
import { dateInWords } from '../../_ui/moment';
import { paperRenewed } from '../actions';
import { yesNo } from './typed';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

const START = { issuedOn: '', validThrough: '', expires: '', reference: '', aboard: '' };

/** A paper renewed, as somebody reads it from the paper. For a registration the day by 47.40(a) is said beside it. */
export function RenewPaperForm({ paperId, kind }: { paperId: string; kind: string }) {
  const t = useWords();
  const isRegistration = kind === 'registration';
  const command = useAct({
    action: paperRenewed,
    schema: renewPaperInput,
    start: START,
    input: (typed) => ({
      ...typed,
      paperId,
      expires: isRegistration ? true : yesNo(typed.expires),
      aboard: yesNo(typed.aboard),
    }),
    done: t('Renewed. What stood before stays in the audit.'),
  });
  const issuedOn = useWatch({ control: command.form.control, name: 'issuedOn' });
  return (
    <CommandForm command={command} submit={t('Renew the paper')} label={t('Renew a paper')}>
      {isRegistration && <TextField name="issuedOn" label={t('Day of issue')} type="date" />}
      {!isRegistration && <YesNo name="expires" label={t('Does it run out?')} />}
      <TextField
        name="validThrough"
        label={t('Last day')}
        hint={
          isRegistration
            ? issuedOn
              ? t('By 47.40(a) at most {date}. Enter what the certificate says.', {
                  date: dateInWords(registrationExpiry(issuedOn)),
                })
              : t('As the certificate says. Seven years after the month of issue at most: 47.40(a).')
            : t('As the paper says. Empty when it has no end.')
        }
        type="date"
        optional={!isRegistration}
      />
      <TextField name="reference" label={t('Number or mark of the paper')} maxLength={120} />
      <YesNo name="aboard" label={t('Is the new paper aboard?')} />
    </CommandForm>
  );
}
