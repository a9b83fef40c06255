'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useRef, useState } from 'react';
import { useWatch, type Control } from 'react-hook-form';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup, TextArea } from '@/app/_ui/fields';
import { FilePicker } from '@/app/_ui/file-picker';
import Link from '@/app/_ui/link';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { sameText } from '@/app/_ui/read-text-file';
import { useCommand } from '@/app/_ui/use-command';
import { type CheckedFile } from '@/lib/flights/import/check-rows';
import { type ImportDone } from '@/lib/flights/import/import-plans';
import { checkImportInput } from '@/lib/flights/import/schema';
import { standingInWords } from '@/lib/flights/import/standing-in-words';
import { checkFile, takeIn } from './actions';
import { CheckedRows } from './checked-rows';
import styles from './import.module.css';
import { readFile, type ChosenFile } from './read-file';

const EMPTY = { kind: '', fileName: '', text: '' };
type Typed = typeof EMPTY;

interface Checked {
  readonly file: Typed;
  readonly found: CheckedFile;
}

const KINDS = [
  { value: 'csv', label: 'CSV' },
  { value: 'icalendar', label: 'iCalendar' },
];

/**
 * A file is chosen or pasted, looked at, put right in place, and taken in when nothing is wrong. What stands in the box is what
 * is sent, and it stays there until it is in.
 */
export function ImportForm() {
  const t = useWords();
  const [checked, setChecked] = useState<Checked | null>(null);
  const [done, setDone] = useState<ImportDone | null>(null);
  const chosen = useRef<ChosenFile | null>(null);
  const asSent = (typed: Typed): Typed => {
    const file = chosen.current;
    // The box turns line ends into its own; an untouched file goes as it came.
    return file && sameText(file.text, typed.text) ? { ...typed, text: file.text } : typed;
  };
  const sent = useRef<Typed>(EMPTY);
  const command = useCommand<Typed, CheckedFile>({
    action: ({ requestId: _number, ...typed }) => {
      setChecked(null);
      setDone(null);
      sent.current = asSent(typed);
      return checkFile(sent.current);
    },
    schema: checkImportInput,
    start: EMPTY,
    afterDone: 'keep',
    onDone: (found) => setChecked({ file: sent.current, found }),
  });

  function takenIn(value: ImportDone) {
    setDone(value);
    setChecked(null);
    chosen.current = null;
    command.form.reset(EMPTY);
  }

  return (
    <>
      <CommandForm
        command={command}
        submit={t('Check')}
        pendingWords={t('Checking…')}
        label={t('Flights from a file')}
      >
        <FilePicker
          accept=".csv,.ics,text/csv,text/calendar"
          read={readFile}
          onFile={(file) => {
            chosen.current = file;
            setChecked(null);
            command.form.setValue('text', file.text);
            command.form.setValue('fileName', file.name);
            if (file.kind) command.form.setValue('kind', file.kind);
          }}
        />
        <ChoiceGroup name="kind" label={t('Kind of file')} choices={KINDS} sideBySide />
        <div className={styles.text}>
          <TextArea
            name="text"
            label={t('Its text')}
            hint={t('Choose a file above or paste. It can be put right here.')}
            rows={8}
          />
        </div>
        {checked && <Stale checked={checked} />}
      </CommandForm>
      {checked && <Outcome checked={checked} onDone={takenIn} control={command.form.control} />}
      {done && <Done done={done} />}
    </>
  );
}

/** What was looked at is not what stands in the box any more. */
function Stale({ checked }: { checked: Checked }) {
  const t = useWords();
  const [text, kind] = useWatch<Typed, ['text', 'kind']>({ name: ['text', 'kind'] });
  if (sameText(text, checked.file.text) && kind === checked.file.kind) return null;
  return (
    <p className={styles.stale}>
      {t('Changed since it was checked. What stands below is of the text before.')}
    </p>
  );
}

function Outcome(props: { checked: Checked; onDone: (done: ImportDone) => void; control: Control<Typed> }) {
  const t = useWords();
  const { checked, onDone, control } = props;
  const { file, found } = checked;
  const [text, kind] = useWatch({ control, name: ['text', 'kind'] });
  const fresh = sameText(text, file.text) && kind === file.kind;
  const wrong = found.errors.length > 0 || found.rows.some(({ does }) => does === 'wrong');
  const coming = found.rows.filter(({ does }) => does === 'add' || does === 'replace').length;
  const going = found.rows.filter(({ does }) => does === 'cancel').length;
  const standing = standingInWords(t, found.rows);
  const command = useCommand<Record<string, never>, ImportDone>({
    action: ({ requestId }) => takeIn({ ...file, requestId }),
    start: {},
    onDone,
  });
  return (
    <Section title={t('What it would do')}>
      <CheckedRows found={found} />
      {!wrong && fresh && standing !== null && (
        <Notice tone="amber" title={standing}>
          <p>
            {t(
              'Nothing in a file says surely when it was made: take it in only when it is newer than what is planned here. What is replaced or cancelled stays on record as cancelled.',
            )}
          </p>
        </Notice>
      )}
      {!wrong && fresh && coming + going > 0 && (
        <CommandForm
          command={command}
          submit={inWords(t, coming, going)}
          label={t('Take in')}
          pendingWords={t('Taking in…')}
        />
      )}
      {!wrong && coming + going === 0 && <p>{t('There is nothing to take in.')}</p>}
    </Section>
  );
}

function inWords(t: Translate, coming: number, going: number): string {
  if (coming === 0) return t('Cancel {going, plural, one {# flight} other {# flights}}', { going });
  return going === 0
    ? t('Take in {coming, plural, one {# flight} other {# flights}}', { coming })
    : t('Take in {coming, plural, one {# flight} other {# flights}}, cancel {going}', { coming, going });
}

function Done({ done }: { done: ImportDone }) {
  const t = useWords();
  const parts = [
    [done.added, 'added'],
    [done.replaced, 'replaced'],
    [done.cancelled, 'cancelled'],
    [done.unchanged, t('as before')],
    [done.released, t('left alone, because released')],
    [done.skipped, 'skipped'],
  ] as const;
  return (
    <Notice tone="blue" title={t('Taken in.')}>
      <p>
        {parts
          .filter(([count]) => count > 0)
          .map(([count, what]) => `${count} ${what}`)
          .join(', ')}
        . <Link href="/desk/plans">{t('To the planned flights')}</Link>
      </p>
    </Notice>
  );
}
