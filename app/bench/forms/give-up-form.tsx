'use client';

import { abandonWorkInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { giveUp } from '../actions';
import { useAct } from './use-act';

/** Work that was never done. The write-up stays open. */
export function GiveUpForm({ workId }: { workId: string }) {
  const command = useAct({
    action: giveUp,
    schema: abandonWorkInput,
    start: { words: '' },
    input: (typed) => ({ ...typed, workId }),
    done: 'The work is given up. The write-up stays open.',
  });
  return (
    <CommandForm command={command} submit="Give up the work" label="Give up the work">
      <TextArea name="words" label="Why it was not done" rows={2} />
    </CommandForm>
  );
}
