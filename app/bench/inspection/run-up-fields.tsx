'use client';

import { type RunUpKey } from '@/lib/rules/part-43/43-15-performance';
import { SelectField, TextField } from '../../_ui/fields';
import { FormGroup } from '../forms/form-group';
import styles from './inspection.module.css';

const ANSWERS = [
  { value: 'satisfactory', label: 'Satisfactory' },
  { value: 'not-satisfactory', label: 'Not satisfactory' },
  { value: 'no-instrument', label: 'No instrument aboard shows it' },
  { value: 'not-run', label: 'Engine not run' },
];

/** The engine run of 43.15(c)(2): an answer and a reading for each thing the paragraph names, none given beforehand. */
export function RunUpFields({
  checks,
}: {
  checks: readonly { readonly key: RunUpKey; readonly name: string }[];
}) {
  return (
    <FormGroup
      title="Engine run"
      hint="Before an approval the engine is run, and performs as the maker says (14 CFR 43.15(c)(2))."
    >
      {checks.map(({ key, name }) => (
        <div key={key} className={styles.check}>
          <SelectField name={`runUp.${key}.answer`} label={name} choices={ANSWERS} />
          <TextField name={`runUp.${key}.reading`} label={`${name}: read`} autoComplete="off" />
        </div>
      ))}
    </FormGroup>
  );
}
