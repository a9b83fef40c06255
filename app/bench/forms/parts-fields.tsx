'use client';

import { useWords } from '#words';
import { useFieldArray, useFormContext } from 'react-hook-form';
import { Button } from '../../_ui/button';
import { ChoiceGroup, TextField } from '../../_ui/fields';
import { NO_PART, type EntryTyped } from './entry-typed';
import styles from './parts-fields.module.css';

/** Parts fitted and taken out, a block of fields for each. */
export function PartsFields() {
  const t = useWords();
  const { control } = useFormContext<EntryTyped>();
  const { fields, append, remove } = useFieldArray({ control, name: 'parts' });
  return (
    <>
      {fields.map(({ id }, index) => (
        <fieldset key={id} className={styles.part}>
          <legend className={styles.name}>{t('Part {index}', { index: index + 1 })}</legend>
          <ChoiceGroup
            name={`parts.${index}.did`}
            label={t('Fitted or removed?')}
            sideBySide
            choices={[
              { value: 'fitted', label: t('Fitted') },
              { value: 'removed', label: t('Removed') },
            ]}
          />
          <div className={styles.pair}>
            <TextField name={`parts.${index}.name`} label={t('Name of the part')} />
            <TextField name={`parts.${index}.number`} label={t('Part number')} {...CODE} />
            <TextField name={`parts.${index}.serial`} label={t('Serial number')} optional {...CODE} />
            <TextField name={`parts.${index}.batch`} label={t('Batch')} optional {...CODE} />
            <TextField name={`parts.${index}.quantity`} label={t('How many')} />
            <TextField name={`parts.${index}.release`} label={t('Release document')} optional {...CODE} />
          </div>
          <Button
            weight="quiet"
            onClick={() => remove(index)}
            aria-label={t('Take part {index} off', { index: index + 1 })}
          >
            {t('Take it off')}
          </Button>
        </fieldset>
      ))}
      {fields.length === 0 && <p className={styles.none}>{t('No parts.')}</p>}
      <div>
        <Button onClick={() => append(NO_PART)}>{t('Add a part')}</Button>
      </div>
    </>
  );
}

/** Numbers of parts are no words: no spelling, no capitals put in. */
const CODE = { spellCheck: false, autoCapitalize: 'off', autoComplete: 'off' } as const;
