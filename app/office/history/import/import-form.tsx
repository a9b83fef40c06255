'use client';

import { useEnglish, useWords } from '#words';
import { useRef, useState } from 'react';
import { useWatch, type Control } from 'react-hook-form';
import { RowFileFields } from '@/app/office/_parts/row-file-fields';
import { sameText } from '@/app/_ui/read-text-file';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup } from '@/app/_ui/fields';
import Link from '@/app/_ui/link';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { useCommand } from '@/app/_ui/use-command';
import { checkHistoryInput, importHistoryInput } from '@/lib/carry-over/history-schema';
import { type HistoryDone } from '@/lib/carry-over/import-history';
import { type CheckedHistory, type CheckedHistoryRow } from '@/lib/carry-over/read-history-file';
import { DEFERRAL_STATEMENT, LAST_DONE_STATEMENT, WRITE_UP_STATEMENT } from '@/lib/carry-over/statements';
import { said } from '@/lib/words/said';
import look from '@/app/desk/plans/import/import.module.css';
import { checkHistoryFile, historyTakenIn } from '../actions';
import { FileFaults } from '@/app/office/_parts/file-faults';
import { Vouching } from '@/app/office/_parts/vouching';

const EMPTY = { what: '', format: '', fileName: '', text: '' };
type Typed = typeof EMPTY;

interface Checked {
  readonly file: Typed;
  readonly found: CheckedHistory;
}

/** A file is chosen or pasted, looked at, put right in place, and taken in with a signature when nothing is wrong. */
export function ImportForm({ signer }: { signer: string }) {
  const t = useWords();
  const [checked, setChecked] = useState<Checked | null>(null);
  const [done, setDone] = useState<HistoryDone | null>(null);
  const sent = useRef<Typed>(EMPTY);
  const command = useCommand<Typed, CheckedHistory>({
    action: ({ requestId: _number, ...typed }) => {
      setChecked(null);
      setDone(null);
      sent.current = typed;
      return checkHistoryFile(typed);
    },
    schema: checkHistoryInput,
    start: EMPTY,
    afterDone: 'keep',
    onDone: (found) => setChecked({ file: sent.current, found }),
  });
  return (
    <>
      <CommandForm
        command={command}
        submit={t('Check')}
        pendingWords={t('Checking…')}
        label={t('History from a file')}
      >
        <ChoiceGroup
          name="what"
          label={t('What is in the file')}
          sideBySide
          choices={[
            { value: 'write-ups', label: t('Open write-ups and deferrals') },
            { value: 'last-done', label: t('Inspections last done') },
          ]}
        />
        <RowFileFields onFile={() => setChecked(null)} />
      </CommandForm>
      {checked && (
        <Outcome
          key={checked.file.text}
          checked={checked}
          control={command.form.control}
          signer={signer}
          onDone={(value) => {
            setDone(value);
            setChecked(null);
            command.form.reset(EMPTY);
          }}
        />
      )}
      {done && (
        <Notice tone="blue" title={t('Taken in and signed.')}>
          <p>
            {t('{added} carried over, {unchanged} as before.', {
              added: done.added,
              unchanged: done.unchanged,
            })}{' '}
            {done.numbers.join(', ')} <Link href="/office/history">{t('To the history')}</Link>
          </p>
        </Notice>
      )}
    </>
  );
}

function Outcome(props: {
  checked: Checked;
  control: Control<Typed>;
  signer: string;
  onDone: (done: HistoryDone) => void;
}) {
  const t = useWords();
  const { checked, control, signer, onDone } = props;
  const { file, found } = checked;
  const [text, format, what] = useWatch({ control, name: ['text', 'format', 'what'] });
  const fresh = sameText(text, file.text) && format === file.format && what === file.what;
  const coming = found.rows.filter(({ does }) => does === 'add').length;
  const command = useCommand<{ password: string }, HistoryDone>({
    action: (typed) => historyTakenIn({ ...file, ...typed }),
    schema: importHistoryInput.pick({ requestId: true, password: true }),
    start: { password: '' },
    onDone,
  });
  const clean = found.errors.length === 0;
  return (
    <Section title={t('What it would do')}>
      {!fresh && (
        <p className={look.stale}>
          {t('Changed since it was checked. What stands below is of the text before.')}
        </p>
      )}
      <FileFaults errors={found.errors} notes={found.notes} />
      <Rows rows={found.rows} />
      {clean && coming === 0 && <p>{t('There is nothing to take in.')}</p>}
      {clean && fresh && coming > 0 && (
        <CommandForm
          command={command}
          submit={t('{n, plural, one {Sign and take in # row} other {Sign and take in # rows}}', {
            n: coming,
          })}
          label={t('Take in')}
          pendingWords={t('Taking in…')}
        >
          <p>{t('Your signature vouches for every row, from the document it names.')}</p>
          <Vouching
            statement={
              file.what === 'last-done' ? LAST_DONE_STATEMENT : `${WRITE_UP_STATEMENT} ${DEFERRAL_STATEMENT}`
            }
            signer={signer}
          />
        </CommandForm>
      )}
    </Section>
  );
}

const DOES: Record<CheckedHistoryRow['does'], { tone: 'blue' | 'grey' | 'red'; word: string }> = {
  add: { tone: 'blue', word: said('Carry over') },
  keep: { tone: 'grey', word: said('As before') },
  wrong: { tone: 'red', word: said('Put right') },
};

function Rows({ rows }: { rows: readonly CheckedHistoryRow[] }) {
  const t = useWords();
  const english = useEnglish();
  if (rows.length === 0) return null;
  return (
    <table className={look.table}>
      <caption className="out-of-sight">{t('Rows and what they would do')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Row')}</th>
          <th scope="col">{t('Would')}</th>
          <th scope="col">{t('What')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ row, does, title, notes }) => (
          <tr key={row}>
            <th scope="row">{row}</th>
            <td>
              <Tag tone={DOES[does].tone} size="small">
                {t(DOES[does].word)}
              </Tag>
            </td>
            <td>
              <p {...english}>{title}</p>
              {notes.map((note) => (
                <p key={note} className={look.soft}>
                  {t(note)}
                </p>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
