'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useRouter } from 'next/navigation';
import { useController, useFormContext } from 'react-hook-form';
import { z } from 'zod';
import { type PermitChoices } from '@/lib/permits/read-permit';
import { PERMIT_PURPOSES, recordPermitInput } from '@/lib/permits/schema';
import { CommandForm } from '@/app/_ui/command-form';
import { FieldError, SelectField, TextArea, TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { permitRecorded } from '../../actions';
import { SigningPassword } from '../../forms/signing-password';
import { yesNo } from '../../forms/typed';
import { YesNo } from '../../forms/yes-no';
import styles from '../permit.module.css';
import { PURPOSE_WORDS } from '../words';

const START = {
  reference: '',
  purpose: '',
  issuedBy: '',
  issuedOn: '',
  goodFrom: '',
  goodThrough: '',
  fromBaseId: '',
  toBaseId: '',
  crew: '',
  limits: '',
  covers: [] as string[],
  asksInspection: '',
  password: '',
};

/** What the paper says, typed from it. Nothing is chosen beforehand. */
export function RecordPermitForm({ choices }: { choices: PermitChoices }) {
  const t = useWords();
  const router = useRouter();
  const asInput = (typed: typeof START & { requestId: string }) => ({
    ...typed,
    aircraftId: choices.aircraftId,
    limits: typed.limits
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    asksInspection: yesNo(typed.asksInspection),
  });
  const command = useCommand({
    action: (typed: typeof START & { requestId: string }) => permitRecorded(asInput(typed)),
    schema: z.preprocess(
      (typed) => asInput(typed as typeof START & { requestId: string }),
      recordPermitInput,
    ),
    start: START,
    afterDone: 'keep',
    onDone: (value) => router.push(`/bench/permit/${(value as { permitId: string }).permitId}`),
  });
  const bases = choices.bases.map(({ id, ident, name }) => ({ value: id, label: `${ident}, ${name}` }));
  return (
    <CommandForm
      command={command}
      submit={t('Sign the record')}
      pendingWords={t('Signing…')}
      label={t('Record the permit')}
    >
      <div className={styles.pair}>
        <TextField name="reference" label={t('Number or reference on the paper')} />
        <SelectField
          name="purpose"
          label={t('What the flight is for')}
          choices={PERMIT_PURPOSES.map((value) => ({ value, label: PURPOSE_WORDS[value] ?? value }))}
        />
        <TextField name="issuedBy" label={t('Issued by')} hint={t('The FAA office, and who signed.')} />
        <TextField name="issuedOn" label={t('Issued on')} type="date" />
        <TextField name="goodFrom" label={t('First good day')} type="date" />
        <TextField name="goodThrough" label={t('Last good day')} type="date" />
        <SelectField name="fromBaseId" label={t('From')} choices={bases} />
        <SelectField name="toBaseId" label={t('To')} choices={bases} />
      </div>
      <TextField name="crew" label={t('Who may be aboard')} hint={t('In the permit’s words.')} />
      <TextArea
        name="limits"
        label={t('Its conditions, one a line')}
        hint={t('Every one of them, in the permit’s words. Each becomes a limit of the flight.')}
        rows={5}
      />
      <Covers choices={choices} />
      <YesNo
        name="asksInspection"
        label={t('Does it ask for an inspection before the flight?')}
        hint={t(
          'A mechanic or repair station finds the aircraft safe for the flight and signs (14 CFR 21.199(b)).',
        )}
      />
      <SigningPassword name={choices.me.name} />
    </CommandForm>
  );
}

/** What the permit names. It stands in for these and for nothing else. */
function Covers({ choices }: { choices: PermitChoices }) {
  const t = useWords();
  const { control } = useFormContext<typeof START>();
  const { field, fieldState } = useController({ control, name: 'covers' });
  const barring = new Set(choices.application.doesNotComply.map(({ covers }) => covers));
  const toggle = (id: string, on: boolean) =>
    field.onChange(on ? [...field.value, id] : field.value.filter((one) => one !== id));
  const message = fieldState.error?.message;
  return (
    <fieldset
      className={styles.covers}
      aria-describedby={message ? 'covers-hint covers-error' : 'covers-hint'}
    >
      <legend className={styles.coversHead}>{t('What it names as not complying')}</legend>
      <p id="covers-hint" className={styles.hint}>
        {t('It stands in for these and for nothing else (14 CFR 21.199(a)).')}
      </p>
      {choices.coverable.map(({ id, label, kind }) => (
        <CoverChoice
          key={id}
          checked={field.value.includes(id)}
          onChange={(on) => toggle(id, on)}
          label={label}
          hint={`${t(KIND_WORDS[kind])}${barring.has(id) ? '. Bars today' : ''}`}
        />
      ))}
      <FieldError id="covers-error">{message}</FieldError>
    </fieldset>
  );
}

const KIND_WORDS = {
  discrepancy: said('Write-up'),
  requirement: said('Recurs'),
  directive: said('Directive'),
} as const;

function CoverChoice(props: {
  checked: boolean;
  onChange: (on: boolean) => void;
  label: string;
  hint: string;
}) {
  const { checked, onChange, label, hint } = props;
  return (
    <label className={styles.cover}>
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>
        {label} <span className={styles.hint}>{hint}</span>
      </span>
    </label>
  );
}
