'use client';

import { useWords } from '#words';
import { useRef, useState } from 'react';
import { z } from 'zod';
import { useWatch, type Control } from 'react-hook-form';
import { RowFileFields } from '@/app/office/_parts/row-file-fields';
import { sameText } from '@/app/_ui/read-text-file';
import { useSaid } from '@/app/bench/acts';
import { CommandForm } from '@/app/_ui/command-form';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { MEL_STATEMENT } from '@/lib/carry-over/statements';
import { type CheckedMel } from '@/lib/mel/read-mel-file';
import { checkMelInput } from '@/lib/mel/schema';
import look from '@/app/desk/plans/import/import.module.css';
import { checkListFile, listTakenIn } from '../actions';
import { FileFaults } from '@/app/office/_parts/file-faults';
import { MelHead } from './mel-head';
import { Vouching } from '@/app/office/_parts/vouching';

const EMPTY = {
  reference: '',
  revision: '',
  letterReference: '',
  letterIssuedOn: '',
  letterAboard: '',
  enforceCategories: '',
  extensionCategories: [] as string[],
  extensionReference: '',
  format: '',
  fileName: '',
  text: '',
};
type Typed = typeof EMPTY;

interface Checked {
  readonly file: Typed & { readonly aircraftId: string };
  readonly found: CheckedMel;
}

/** A list and its letter: the items come from a file, looked at first, then taken in with a signature. */
export function MelImportForm({ aircraftId, signer }: { aircraftId: string; signer: string }) {
  const t = useWords();
  const [checked, setChecked] = useState<Checked | null>(null);
  const sent = useRef<Checked['file']>({ ...EMPTY, aircraftId });
  const command = useCommand<Typed, CheckedMel>({
    action: ({ requestId: _number, ...typed }) => {
      setChecked(null);
      sent.current = { ...typed, aircraftId };
      return checkListFile(sent.current);
    },
    // The aircraft is not typed.
    schema: z.preprocess((typed) => ({ ...(typed as Typed), aircraftId }), checkMelInput),
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
        label={t('A list from a file')}
      >
        <MelHead />
        <RowFileFields onFile={() => setChecked(null)} />
      </CommandForm>
      {checked && (
        <Outcome key={checked.file.text} checked={checked} signer={signer} control={command.form.control} />
      )}
    </>
  );
}

function Outcome(props: { checked: Checked; signer: string; control: Control<Typed> }) {
  const t = useWords();
  const { checked, signer, control } = props;
  const { file, found } = checked;
  const typed = useWatch({ control }) as Typed;
  const fresh = isSame(typed, file);
  const say = useSaid();
  const command = useCommand<{ password: string }, { melId: string; items: number }>({
    action: (typed) => listTakenIn({ ...file, ...typed }),
    start: { password: '' },
    onDone: ({ items }) =>
      say(t('{n, plural, one {The list of # item} other {The list of # items}} is in force.', { n: items })),
  });
  return (
    <>
      {!fresh && (
        <p className={look.stale}>{t('Changed since it was checked. Check again before you sign.')}</p>
      )}
      <FileFaults errors={found.errors} notes={found.notes} />
      {found.unchanged && <p>{t('This very list is in force already. Nothing would change.')}</p>}
      {found.replaces && !found.unchanged && (
        <p>{t('It takes the place of {reference}.', { reference: found.replaces.reference })}</p>
      )}
      {found.loses.length > 0 && !found.unchanged && (
        <Notice
          tone="amber"
          title={t('No go afterwards, until they are repaired: {numbers}', {
            numbers: found.loses.join(', '),
          })}
        >
          <p>{t('The new list does not repeat their items word for word.')}</p>
        </Notice>
      )}
      {found.errors.length === 0 && !found.unchanged && fresh && (
        <CommandForm
          command={command}
          submit={t('{n, plural, one {Sign and take in # item} other {Sign and take in # items}}', {
            n: found.items.length,
          })}
          label={t('Take in')}
          pendingWords={t('Taking in…')}
        >
          <p>
            {t('As checked above, for {reference}, with letter {letter}.', {
              reference: file.reference,
              letter: file.letterReference,
            })}
          </p>
          <Vouching statement={MEL_STATEMENT} signer={signer} />
        </CommandForm>
      )}
    </>
  );
}

/** What stands in the form is what was checked; a text box may have its own line ends. */
const isSame = (typed: Typed, file: Typed): boolean =>
  sameText(typed.text, file.text) &&
  (Object.keys(EMPTY) as (keyof Typed)[])
    .filter((key) => key !== 'text' && key !== 'fileName')
    .every((key) => String(typed[key]) === String(file[key]));
