'use client';

import { useWords } from '#words';
import { useFormContext } from 'react-hook-form';
import { ChoiceGroup, TextArea } from '@/app/_ui/fields';
import { FilePicker } from '@/app/_ui/file-picker';
import look from '@/app/desk/plans/import/import.module.css';
import { readRowFile } from './read-row-file';

const FORMATS = [
  { value: 'csv', label: 'CSV' },
  { value: 'json', label: 'JSON' },
];

/** A file of rows, chosen or pasted, in the form's `text`, `fileName` and `format`. `onFile`: another one was chosen. */
export function RowFileFields({ onFile }: { onFile: () => void }) {
  const t = useWords();
  const { setValue } = useFormContext<{ text: string; fileName: string; format: string }>();
  return (
    <>
      <FilePicker
        accept=".csv,.json,text/csv,application/json"
        read={readRowFile}
        onFile={(file) => {
          onFile();
          setValue('text', file.text);
          setValue('fileName', file.name);
          if (file.format) setValue('format', file.format);
        }}
      />
      <ChoiceGroup name="format" label={t('Kind of file')} choices={FORMATS} sideBySide />
      <div className={look.text}>
        <TextArea
          name="text"
          label={t('Its text')}
          hint={t('Choose a file above or paste. It can be put right here.')}
          rows={8}
        />
      </div>
    </>
  );
}
