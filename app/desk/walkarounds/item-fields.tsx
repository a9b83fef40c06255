'use client';

import { useWords } from '#words';
import { useFormContext, useWatch } from 'react-hook-form';
import { SelectField, NumberField, TextArea, TextField } from '@/app/_ui/fields';
import styles from './walkarounds.module.css';

/** What can be measured, with what a value outside the limit can be written up as. */
export interface MeasuredChoice {
  readonly value: string;
  readonly label: string;
  readonly unit: string;
  readonly whole: boolean;
  readonly findings: readonly { readonly value: string; readonly label: string }[];
}

/** The fields of one item of the list, by its kind. */
export function ItemFields(props: {
  name: string;
  kind: 'look' | 'number' | 'sample';
  measurements: readonly MeasuredChoice[];
}) {
  const t = useWords();
  const { name, kind, measurements } = props;
  return (
    <div className={styles.fields}>
      <TextField name={`${name}.title`} label={t('What')} maxLength={80} />
      <TextArea
        name={`${name}.lookFor`}
        label={t('What is good, what is not')}
        rows={2}
        maxLength={300}
        optional
      />
      {kind === 'sample' && (
        <TextField
          name={`${name}.drain`}
          label={t('How the drain is called')}
          hint={t('L1, R3, F2.')}
          maxLength={10}
        />
      )}
      {kind === 'number' && <Limit name={name} measurements={measurements} />}
    </div>
  );
}

function Limit({ name, measurements }: { name: string; measurements: readonly MeasuredChoice[] }) {
  const t = useWords();
  const { control } = useFormContext();
  const chosen = String(useWatch({ control, name: `${name}.measurement` }) ?? '');
  const measured = measurements.find(({ value }) => value === chosen);
  return (
    <>
      <SelectField name={`${name}.measurement`} label={t('What is measured')} choices={measurements} />
      {measured && (
        <>
          <p className={styles.soft}>
            {t(
              'The limit is the type’s. One stored for a single aircraft, from its own documents, goes before it. Exactly on the limit is within.',
            )}
          </p>
          <div className={styles.bounds}>
            <NumberField
              name={`${name}.min`}
              label={t('Least')}
              unit={measured.unit}
              whole={measured.whole}
              optional
            />
            <NumberField
              name={`${name}.max`}
              label={t('Most')}
              unit={measured.unit}
              whole={measured.whole}
              optional
            />
          </div>
          <TextField
            name={`${name}.source`}
            label={t('Source of the limit')}
            hint={t('Document, section, revision. A limit without a source is none.')}
            maxLength={200}
            optional
          />
          {measured.findings.length > 0 ? (
            <SelectField
              name={`${name}.findingKey`}
              label={t('Outside the limit it is written up as')}
              choices={measured.findings}
              optional
            />
          ) : (
            <p className={styles.soft}>
              {t('No usual finding has this number, so it is recorded and judged by nothing.')}
            </p>
          )}
        </>
      )}
    </>
  );
}
