'use client';

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
    done: 'Renewed. What stood before stays in the audit.',
  });
  const issuedOn = useWatch({ control: command.form.control, name: 'issuedOn' });
  return (
    <CommandForm command={command} submit="Renew the paper" label="Renew a paper">
      {isRegistration && <TextField name="issuedOn" label="Day of issue" type="date" />}
      {!isRegistration && <YesNo name="expires" label="Does it run out?" />}
      <TextField
        name="validThrough"
        label="Last day"
        hint={
          isRegistration
            ? issuedOn
              ? `By 47.40(a) at most ${dateInWords(registrationExpiry(issuedOn))}. Enter what the certificate says.`
              : 'As the certificate says. Seven years after the month of issue at most: 47.40(a).'
            : 'As the paper says. Empty when it has no end.'
        }
        type="date"
        optional={!isRegistration}
      />
      <TextField name="reference" label="Number or mark of the paper" maxLength={120} />
      <YesNo name="aboard" label="Is the new paper aboard?" />
    </CommandForm>
  );
}
