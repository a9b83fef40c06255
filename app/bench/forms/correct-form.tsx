'use client';

import { Say, useWords } from '#words';
import { correctWorkInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { correct } from '../actions';
import { useAct } from './use-act';

/** Begins the correction of a signed entry: both stay in the record. */
export function CorrectForm({ workId }: { workId: string }) {
  const t = useWords();
  const command = useAct({
    action: correct,
    schema: correctWorkInput,
    start: { why: '' },
    input: (typed) => ({ ...typed, workId }),
    done: t('The correction is begun. Write it, then sign it; until then the aircraft does not fly.'),
  });
  return (
    <CommandForm command={command} submit={t('Begin the correction')} label={t('Correct the entry')}>
      <p>
        <Say
          text="Nothing signed is changed. The correction is an entry of its own beside this one, with your reason. From now until it is signed or given up <b>the aircraft does not fly</b>: work stands unsigned (14 CFR 91.407(a))."
          parts={{ b: <b /> }}
        />
      </p>
      <TextArea name="why" label={t('What is wrong with the entry')} rows={2} />
    </CommandForm>
  );
}
