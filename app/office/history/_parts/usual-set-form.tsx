'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { useAct } from '@/app/bench/forms/use-act';
import { CheckList } from '@/app/_ui/check-list';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { addUsualSetInput } from '@/lib/carry-over/schema';
import { USUAL_SET } from '@/lib/carry-over/usual-set';
import { usualSetAdded } from '../actions';

const START = { kinds: [] as string[], batteryThrough: '' };

/** Several of the usual inspections and tests at once. None is ticked beforehand: what applies is the operator's to say. */
export function UsualSetForm({ aircraftId, there }: { aircraftId: string; there: readonly string[] }) {
  const t = useWords();
  const command = useAct({
    action: usualSetAdded,
    schema: addUsualSetInput,
    start: START,
    input: (typed) => ({ ...typed, aircraftId }),
    done: t('Added. Now say when each was last done.'),
  });
  const kinds = useWatch({ control: command.form.control, name: 'kinds' });
  return (
    <CommandForm command={command} submit={t('Add these')} label={t('The usual set')}>
      <CheckList
        name="kinds"
        label={t('What applies to this aircraft')}
        choices={USUAL_SET.filter(({ kind }) => !there.includes(kind)).map(
          ({ kind, name, when, reference }) => ({
            value: kind,
            label: `${name} (${reference})`,
            says: t(when),
          }),
        )}
      />
      {kinds.includes('elt-battery') && (
        <TextField
          name="batteryThrough"
          label={t('Last good day of the battery')}
          hint={t('As marked on the outside of the transmitter.')}
          type="date"
        />
      )}
    </CommandForm>
  );
}
