'use client';

import { useFieldArray, useFormContext } from 'react-hook-form';
import { Button } from '../../_ui/button';
import { ChoiceGroup, TextField } from '../../_ui/fields';
import { NO_PART, type EntryTyped } from './entry-typed';
import styles from './parts-fields.module.css';

/** Parts fitted and taken out, a block of fields for each. */
export function PartsFields() {
  const { control } = useFormContext<EntryTyped>();
  const { fields, append, remove } = useFieldArray({ control, name: 'parts' });
  return (
    <>
      {fields.map(({ id }, index) => (
        <fieldset key={id} className={styles.part}>
          <legend className={styles.name}>Part {index + 1}</legend>
          <ChoiceGroup
            name={`parts.${index}.did`}
            label="Fitted or removed?"
            sideBySide
            choices={[
              { value: 'fitted', label: 'Fitted' },
              { value: 'removed', label: 'Removed' },
            ]}
          />
          <div className={styles.pair}>
            <TextField name={`parts.${index}.name`} label="Name of the part" />
            <TextField name={`parts.${index}.number`} label="Part number" {...CODE} />
            <TextField name={`parts.${index}.serial`} label="Serial number" optional {...CODE} />
            <TextField name={`parts.${index}.batch`} label="Batch" optional {...CODE} />
            <TextField name={`parts.${index}.quantity`} label="How many" />
            <TextField name={`parts.${index}.release`} label="Release document" optional {...CODE} />
          </div>
          <Button weight="quiet" onClick={() => remove(index)} aria-label={`Take part ${index + 1} off`}>
            Take it off
          </Button>
        </fieldset>
      ))}
      {fields.length === 0 && <p className={styles.none}>No parts.</p>}
      <div>
        <Button onClick={() => append(NO_PART)}>Add a part</Button>
      </div>
    </>
  );
}

/** Numbers of parts are no words: no spelling, no capitals put in. */
const CODE = { spellCheck: false, autoCapitalize: 'off', autoComplete: 'off' } as const;
