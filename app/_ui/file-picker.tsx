'use client';

import { useWords } from '#words';
import { useId, useState, type ChangeEvent } from 'react';
import { FieldError } from './fields';
import styles from './file-picker.module.css';
import { type ReadText, type TextFile } from './read-text-file';

/** Reads a file in the browser; what cannot be read as text is told at once. `accept` as the browser's own field takes it. */
export function FilePicker<Chosen extends TextFile>(props: {
  accept: string;
  read: (file: File) => Promise<ReadText<Chosen>>;
  onFile: (file: Chosen) => void;
}) {
  const t = useWords();
  const { accept, read, onFile } = props;
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
    <div className={styles.picker}>
      <label htmlFor={id}>{t('File')}</label>
      <input
        id={id}
        type="file"
        accept={accept}
        aria-describedby={`${id}-said`}
        onChange={(event) => void choose(event)}
      />
      <FieldError>{wrong}</FieldError>
      <p id={`${id}-said`} role="status" className={styles.said}>
        {name && t('{name} is in the box below.', { name })}
      </p>
    </div>
  );
}
