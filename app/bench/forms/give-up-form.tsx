'use client';

import { useWords } from '#words';
import { abandonWorkInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { giveUp } from '../actions';
import { useAct } from './use-act';

/** Work that was never done: the write-up stays open. Or a correction not needed: the entry before it stands. */
export function GiveUpForm({ workId, correction }: { workId: string; correction: boolean }) {
  const t = useWords();
  const command = useAct({
    action: giveUp,
    schema: abandonWorkInput,
    start: { words: '' },
    input: (typed) => ({ ...typed, workId }),
    done: correction
      ? t('The correction is given up. The entry before it stands.')
      : t('The work is given up. The write-up stays open.'),
  });
  const submit = correction ? t('Give up the correction') : t('Give up the work');
  return (
    <CommandForm command={command} submit={submit} label={submit}>
      <TextArea
        name="words"
        label={correction ? t('Why it is not corrected') : t('Why it was not done')}
        rows={2}
      />
    </CommandForm>
  );
}
