'use client';

import { useWords } from '#words';
import { useId, useState, type ChangeEvent } from 'react';
import { FieldError } from '@/app/_ui/fields';
import look from '@/app/desk/plans/import/import.module.css';
import { type ReadFile, type RowFile } from './read-row-file';

/** Reads a file of rows in the browser; what cannot be read as text is told at once. */
export function FilePicker(props: {
  read: (file: File) => Promise<ReadFile>;
  onFile: (file: RowFile) => void;
}) {
  const t = useWords();
  const { read, onFile } = props;
  const id = useId();
  const [name, setName] = useState('');
  const [wrong, setWrong] = useState('');
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const [file] = event.target.files ?? [];
    if (!file) return;
    setName('');
    const found = await read(file);
    setWrong(found.ok ? '' : found.say);
    if (!found.ok) return;
    onFile(found.file);
    setName(found.file.name);
  }
  return (
    <div className={look.picker}>
      <label htmlFor={id}>{t('File')}</label>
      <input
        id={id}
        type="file"
        accept=".csv,.json,text/csv,application/json"
        aria-describedby={`${id}-said`}
        onChange={(event) => void choose(event)}
      />
      <FieldError>{wrong}</FieldError>
      <p id={`${id}-said`} role="status" className={look.said}>
        {name && t('{name} is in the box below.', { name })}
      </p>
    </div>
  );
}
