'use client';

import { useWords } from '#words';
import { enterInspectionInput, type Performance } from '@/lib/inspections/schema';
import { formatTenths } from '@/lib/rules/hours';
import { type RunUpKey } from '@/lib/rules/part-43/43-15-performance';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, TextArea, TextField } from '../../_ui/fields';
import { inspectionEntered } from '../actions';
import { FormGroup } from '../forms/form-group';
import { yesNo } from '../forms/typed';
import { useAct } from '../forms/use-act';
import { YesNo } from '../forms/yes-no';
import { RunUpFields } from './run-up-fields';

interface EntryProps {
  readonly inspectionId: string;
  readonly entry: {
    readonly extent: string | null;
    readonly checklist: string | null;
    readonly performance: Performance | null;
    readonly ttisTenths: number | null;
    readonly completedOn: string | null;
  };
  readonly onRecord: string;
  readonly checks: readonly { readonly key: RunUpKey; readonly name: string }[];
}

interface Typed {
  extent: string;
  checklist: string;
  checklistCoversAppendixD: string;
  madeToDetermineAirworthiness: string;
  ttis: string;
  completedOn: string;
  runUp: Record<string, { answer: string; reading: string }>;
}

/** What 43.11(a)(1), (2) and 43.15 ask, once for all three logbooks. May be written again until a part is signed. */
export function InspectionEntryForm({ inspectionId, entry, onRecord, checks }: EntryProps) {
  const t = useWords();
  const { performance } = entry;
  const command = useAct<Typed>({
    action: inspectionEntered,
    schema: enterInspectionInput,
    start: {
      extent: entry.extent ?? '',
      checklist: entry.checklist ?? '',
      checklistCoversAppendixD: typedYesNo(performance?.checklistCoversAppendixD),
      madeToDetermineAirworthiness: typedYesNo(performance?.madeToDetermineAirworthiness),
      ttis: entry.ttisTenths === null ? '' : formatTenths(entry.ttisTenths),
      completedOn: entry.completedOn ?? '',
      runUp: Object.fromEntries(
        checks.map(({ key }) => [key, performance?.runUp[key] ?? { answer: '', reading: '' }]),
      ),
    },
    input: (typed) => ({
      ...typed,
      inspectionId,
      checklistCoversAppendixD: yesNo(typed.checklistCoversAppendixD),
      madeToDetermineAirworthiness: yesNo(typed.madeToDetermineAirworthiness),
    }),
    done: t('The entry is written. Read it as it stands, then sign each part.'),
    afterDone: 'keep',
  });
  return (
    <CommandForm
      command={command}
      submit={t('Write the entry')}
      pendingWords={t('Writing…')}
      label={t('Inspection entry')}
    >
      <FormGroup title={t('Inspection')}>
        <TextArea
          name="extent"
          label={t('Extent')}
          hint={t('What was inspected, in short (14 CFR 43.11(a)(1)).')}
          rows={3}
        />
        <TextField
          name="checklist"
          label={t('Checklist used')}
          hint={t('Name and revision (14 CFR 43.15(c)(1)).')}
        />
        <YesNo name="checklistCoversAppendixD" label={t('Has it the scope and detail of Appendix D?')} />
        <YesNo
          name="madeToDetermineAirworthiness"
          label={t('Was the inspection made to find out whether all airworthiness requirements are met?')}
          hint={t('Type design, directives, limits, and a condition for safe flight (14 CFR 43.15(a)).')}
        />
      </FormGroup>
      <RunUpFields checks={checks} />
      <FormGroup title={t('Date and time in service')}>
        <TextField name="completedOn" label={t('Completed on')} type="date" />
        <NumberField
          name="ttis"
          label={t('Total time in service')}
          unit="h"
          hint={t('On record: {onRecord}.', { onRecord })}
        />
      </FormGroup>
    </CommandForm>
  );
}

const typedYesNo = (answer: boolean | undefined): string =>
  answer === undefined ? '' : answer ? 'yes' : 'no';
