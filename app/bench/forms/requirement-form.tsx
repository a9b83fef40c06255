'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { addRequirementInput, INTERVAL_BY_LAW } from '@/lib/fleet/requirement-schema';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, SelectField, TextField } from '../../_ui/fields';
import { addToDue } from '../actions';
import { REQUIREMENT_WORDS } from '../requirement-words';
import { yesNo } from './typed';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

const START = {
  kind: '',
  name: '',
  reference: '',
  binding: '',
  intervalMonths: '',
  intervalDays: '',
  intervalHours: '',
  fixedExpiry: '',
};

/** Puts something that recurs on the aircraft. Where a regulation sets the interval it is not asked. */
export function RequirementForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const command = useAct({
    action: addToDue,
    schema: addRequirementInput,
    start: START,
    input: (typed) => ({ ...typed, aircraftId, binding: yesNo(typed.binding) ?? null }),
    done: t(
      'Added. Until its last compliance is recorded it is not known, and bars what it would bar when overdue.',
    ),
  });
  const kind = useWatch({ control: command.form.control, name: 'kind' });
  const byLaw = INTERVAL_BY_LAW[kind as RequirementKind] !== undefined;
  return (
    <CommandForm command={command} submit={t('Add it')} label={t('Add what recurs')}>
      <SelectField
        name="kind"
        label={t('What it is')}
        choices={Object.entries(REQUIREMENT_WORDS).map(([value, label]) => ({ value, label }))}
      />
      <TextField name="name" label={t('Name')} hint={t('As it should stand in the list.')} maxLength={120} />
      <TextField
        name="reference"
        label={t('Where it comes from')}
        hint={t('Paragraph, directive and its number, manual and section.')}
        maxLength={200}
      />
      {kind === 'maker-interval' && (
        <YesNo
          name="binding"
          label={t('Does your operation bind itself to it?')}
          hint={t('No: it is listed as recommended and bars nothing.')}
        />
      )}
      {byLaw ? (
        <p>{t('The regulation sets this interval. It is filled in as the regulation reads.')}</p>
      ) : (
        <>
          <p>{t('Whichever comes first. Fill in what limits it, at least one.')}</p>
          <NumberField name="intervalMonths" label={t('Calendar months')} unit={t('months')} whole optional />
          <NumberField name="intervalDays" label={t('Days')} unit={t('days')} whole optional />
          <NumberField name="intervalHours" label={t('Time in service')} unit="h" optional />
        </>
      )}
      {(!byLaw || kind === 'elt-battery') && (
        <TextField
          name="fixedExpiry"
          label={t('Last good day')}
          hint={t('A date marked on the part, for example.')}
          type="date"
          optional={kind !== 'elt-battery'}
        />
      )}
    </CommandForm>
  );
}
