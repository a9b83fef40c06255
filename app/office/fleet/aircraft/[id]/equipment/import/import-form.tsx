'use client';

import { useWords } from '#words';
import { useRef, useState } from 'react';
import { useWatch, type Control } from 'react-hook-form';
import { sameText } from '@/app/_ui/read-text-file';
import { RowFileFields } from '@/app/office/_parts/row-file-fields';
import { CommandForm } from '@/app/_ui/command-form';
import Link from '@/app/_ui/link';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { LINE_STATEMENT } from '@/lib/equipment/line';
import { type CheckedEquipment } from '@/lib/equipment/check-file';
import { checkEquipmentInput, importEquipmentInput } from '@/lib/equipment/schema';
import { checkFile, takeIn } from '../../../../actions';
import { Signing } from '../../../../_parts/signing';
import look from '@/app/desk/plans/import/import.module.css';
import { FoundRows } from './found-rows';

const EMPTY = { format: '', fileName: '', text: '' };
type Typed = typeof EMPTY;

interface Taken {
  readonly added: number;
  readonly changed: number;
  readonly confirmed: number;
  readonly unchanged: number;
}

interface Checked {
  readonly file: Typed;
  readonly found: CheckedEquipment;
}

/** A file is chosen or pasted, looked at, put right in place, and taken in with a signature when nothing is wrong. */
export function ImportForm(props: { aircraftId: string; registration: string; signer: string }) {
  const t = useWords();
  const { aircraftId, registration, signer } = props;
  const [checked, setChecked] = useState<Checked | null>(null);
  const [done, setDone] = useState<Taken | null>(null);
  const sent = useRef<Typed>(EMPTY);
  const command = useCommand<Typed, CheckedEquipment>({
    action: ({ requestId: _number, ...typed }) => {
      setChecked(null);
      setDone(null);
      sent.current = typed;
      return checkFile({ ...typed, aircraftId });
    },
    schema: checkEquipmentInput.omit({ aircraftId: true }),
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
        label={t('Equipment from a file')}
      >
        <RowFileFields onFile={() => setChecked(null)} />
      </CommandForm>
      {checked && (
        <Outcome
          key={checked.file.text}
          checked={checked}
          control={command.form.control}
          aircraftId={aircraftId}
          registration={registration}
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
            {t('{added} added, {changed} changed, {confirmed} confirmed, {unchanged} as before.', {
              ...done,
            })}{' '}
            <Link href={`/office/fleet/aircraft/${aircraftId}/equipment`}>{t('To the equipment list')}</Link>
          </p>
        </Notice>
      )}
    </>
  );
}

function Outcome(props: {
  checked: Checked;
  control: Control<Typed>;
  aircraftId: string;
  registration: string;
  signer: string;
  onDone: (done: Taken) => void;
}) {
  const t = useWords();
  const { checked, control, aircraftId, registration, signer, onDone } = props;
  const { file, found } = checked;
  const [text, format] = useWatch({ control, name: ['text', 'format'] });
  const fresh = sameText(text, file.text) && format === file.format;
  const coming = found.rows.filter(({ does }) => does !== 'keep').length;
  const command = useCommand<{ source: string; password: string }, Taken>({
    action: (typed) => takeIn({ ...file, ...typed, aircraftId }),
    schema: importEquipmentInput.pick({ requestId: true, source: true, password: true }),
    start: { source: '', password: '' },
    onDone,
  });
  return (
    <Section title={t('What it would do')}>
      {!fresh && (
        <p className={look.stale}>
          {t('Changed since it was checked. What stands below is of the text before.')}
        </p>
      )}
      <FoundRows found={found} />
      {found.errors.length === 0 && coming === 0 && <p>{t('There is nothing to take in.')}</p>}
      {found.errors.length === 0 && fresh && coming > 0 && (
        <CommandForm
          command={command}
          submit={t('{n, plural, one {Sign and take in # row} other {Sign and take in # rows}}', {
            n: coming,
          })}
          label={t('Take in')}
          pendingWords={t('Taking in…')}
        >
          <p>
            {t('Your signature confirms every row against the documents of {registration}.', {
              registration,
            })}
          </p>
          <Signing
            statement={LINE_STATEMENT}
            signer={signer}
            hint={t('The document the file was made from, with revision or date.')}
          />
        </CommandForm>
      )}
    </Section>
  );
}
