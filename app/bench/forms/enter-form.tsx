'use client';

import { enterWorkInput } from '@/lib/work/schema';
import { type WorkView } from '@/lib/determinations/read-write-up';
import { CommandForm } from '../../_ui/command-form';
import { TextArea, TextField } from '../../_ui/fields';
import { enter } from '../actions';
import { yesNo } from './typed';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

/** The entry of 43.9(a). May be written again until it is signed. */
export function EnterForm({ workId, entry }: { workId: string; entry: WorkView['entry'] }) {
  const command = useAct({
    action: enter,
    schema: enterWorkInput,
    start: {
      description: entry.description ?? '',
      references: entry.references ?? '',
      partsUsed: entry.partsUsed ?? '',
      completedOn: entry.completedOn ?? '',
      performedBy: entry.performedBy ?? '',
      checkFlightNeeded: entry.checkFlightNeeded === null ? '' : entry.checkFlightNeeded ? 'yes' : 'no',
      checkFlightReason: entry.checkFlightReason ?? '',
    },
    input: (typed) => ({ ...typed, workId, checkFlightNeeded: yesNo(typed.checkFlightNeeded) }),
    done: 'The entry is written. Read it below as it stands, then sign it.',
    afterDone: 'keep',
  });
  return (
    <CommandForm command={command} submit="Write the entry" pendingWords="Writing…" label="Write the entry">
      <TextArea name="description" label="What was done" rows={5} />
      <TextField name="references" label="By which data" hint="Manual, chapter, revision." optional />
      <TextArea name="partsUsed" label="Parts" hint="Part number, serial or batch." rows={2} optional />
      <TextField name="completedOn" label="Completed on" type="date" />
      <TextField
        name="performedBy"
        label="Done by"
        hint="Full name of whoever did the work, as it is to stand in the record."
      />
      <YesNo
        name="checkFlightNeeded"
        label="Could it have changed how the aircraft flies or is operated in flight?"
        hint="If so, a check flight is owed before anybody is carried (14 CFR 91.407(b))."
      />
      <TextArea name="checkFlightReason" label="Why, or why not" rows={2} />
    </CommandForm>
  );
}
