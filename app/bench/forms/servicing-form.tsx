'use client';

import { useWords } from '#words';
import { recordServicingInput } from '@/lib/findings/schema';
import { parseTenths } from '@/lib/rules/hours';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, TextArea } from '../../_ui/fields';
import { servicingDone } from '../actions';
import { useAct } from './use-act';

/** Servicing that is no maintenance, recorded; the write-up closes. `isOil`: how much was added is asked, for the trend. */
export function ServicingForm({ discrepancyId, isOil = false }: { discrepancyId: string; isOil?: boolean }) {
  const t = useWords();
  const command = useAct({
    action: servicingDone,
    schema: recordServicingInput,
    start: { words: '', oilAddedTenths: '' },
    input: (typed) => ({
      words: typed.words,
      discrepancyId,
      oilAddedTenths: tenthsOrNone(typed.oilAddedTenths),
    }),
    done: t('Servicing recorded; the write-up is closed.'),
  });
  return (
    <CommandForm command={command} submit={t('Record the servicing')} label={t('Record servicing')}>
      <TextArea
        name="words"
        label={t('What was done')}
        hint={t('What was added or drained, how much, and what it reads now.')}
        rows={3}
      />
      {isOil && (
        <NumberField
          name="oilAddedTenths"
          label={t('Oil added')}
          unit="qt"
          hint={t('Without it the oil used in an hour cannot be worked out.')}
          optional
        />
      )}
    </CommandForm>
  );
}

/** Quarts as typed, in tenths. Empty is not said; what cannot be read is refused by the service. */
const tenthsOrNone = (typed: string): number | undefined =>
  typed.trim() === '' ? undefined : (parseTenths(typed.trim()) ?? Number.NaN);
