'use client';

import { recordServicingInput } from '@/lib/findings/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { servicingDone } from '../actions';
import { useAct } from './use-act';

/** Servicing that is no maintenance, recorded; the write-up closes. */
export function ServicingForm({ discrepancyId }: { discrepancyId: string }) {
  const command = useAct({
    action: servicingDone,
    schema: recordServicingInput,
    start: { words: '' },
    input: (typed) => ({ ...typed, discrepancyId }),
    done: 'Servicing recorded; the write-up is closed.',
  });
  return (
    <CommandForm command={command} submit="Record the servicing" label="Record servicing">
      <TextArea
        name="words"
        label="What was done"
        hint="What was added or drained, how much, and what it reads now."
        rows={3}
      />
    </CommandForm>
  );
}
