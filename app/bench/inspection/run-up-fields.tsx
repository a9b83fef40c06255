'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type RunUpKey } from '@/lib/rules/part-43/43-15-performance';
import { SelectField, TextField } from '../../_ui/fields';
import { FormGroup } from '../forms/form-group';
import styles from './inspection.module.css';

const ANSWERS = [
  { value: 'satisfactory', label: said('Satisfactory') },
  { value: 'not-satisfactory', label: said('Not satisfactory') },
  { value: 'no-instrument', label: said('No instrument aboard shows it') },
  { value: 'not-run', label: said('Engine not run') },
];

/** The engine run of 43.15(c)(2): an answer and a reading for each thing the paragraph names, none given beforehand. */
export function RunUpFields({
  checks,
}: {
  checks: readonly { readonly key: RunUpKey; readonly name: string }[];
}) {
  const t = useWords();
  return (
    <FormGroup
      title={t('Engine run')}
      hint={t('Before an approval the engine is run, and performs as the maker says (14 CFR 43.15(c)(2)).')}
    >
      {checks.map(({ key, name }) => (
        <div key={key} className={styles.check}>
          <SelectField name={`runUp.${key}.answer`} label={name} choices={ANSWERS} />
          <TextField name={`runUp.${key}.reading`} label={t('{name}: read', { name })} autoComplete="off" />
        </div>
      ))}
    </FormGroup>
  );
}
