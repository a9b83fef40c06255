'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { useAct } from '@/app/bench/forms/use-act';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { CommandForm } from '@/app/_ui/command-form';
import { SelectField, TextArea, TextField } from '@/app/_ui/fields';
import { addLimitInput, endLimitInput } from '@/lib/limits/schema';
import { MEASURE_UNITS, MEASUREMENTS, measurementOf } from '@/lib/rules/findings/measurements';
import { limitAdded, limitEnded } from '../actions';
import styles from '../history.module.css';

/** A limit of a measured thing, with where it comes from. */
export function LimitForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const command = useAct({
    action: limitAdded,
    schema: addLimitInput,
    start: { measurement: '', min: '', max: '', source: '', sourceDate: '' },
    input: (typed) => ({ ...typed, aircraftId }),
    done: t('The limit is stored.'),
  });
  const key = useWatch({ control: command.form.control, name: 'measurement' });
  const unit = measurementOf(key)?.unit;
  const label = unit ? MEASURE_UNITS[unit].label : '';
  return (
    <CommandForm command={command} submit={t('Store the limit')} label={t('Store a limit')}>
      <SelectField
        name="measurement"
        label={t('What is measured')}
        choices={Object.entries(MEASUREMENTS).map(([value, measured]) => ({
          value,
          label: t(measured.label),
        }))}
      />
      <div className={styles.pair}>
        <TextField
          name="min"
          label={label ? t('Least allowed ({unit})', { unit: label }) : t('Least allowed')}
          optional
          maxLength={20}
        />
        <TextField
          name="max"
          label={label ? t('Most allowed ({unit})', { unit: label }) : t('Most allowed')}
          optional
          maxLength={20}
        />
      </div>
      <TextField
        name="source"
        label={t('Where it comes from')}
        hint={t('Manual, chapter and revision. A limit without a source judges nothing.')}
        maxLength={300}
      />
      <TextField name="sourceDate" label={t('Date of that document')} type="date" optional />
    </CommandForm>
  );
}

/** A newer document took its place. */
export function EndLimitForm({ limitId, signer }: { limitId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: limitEnded,
    schema: endLimitInput,
    start: { why: '', password: '' },
    input: (typed) => ({ ...typed, limitId }),
    done: t('Ended. It stays on record.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign and end it')} label={t('End a limit')}>
      <TextArea name="why" label={t('Why, and which document says so')} rows={2} maxLength={500} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
