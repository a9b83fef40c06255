'use client';

import { useWords } from '#words';
import { useFormContext, useWatch } from 'react-hook-form';
import { type EntryAsks } from '@/lib/work/entry-asks';
import { Checkbox, ChoiceGroup, TextArea, TextField } from '../../_ui/fields';
import { type EntryTyped } from './entry-typed';
import { FormGroup } from './form-group';
import styles from './major-fields.module.css';
import { YesNo } from './yes-no';

/**
 * Appendix A(b): is it a major repair? One press when nothing of the list was done. What makes it major is ticked, and then
 * the papers of a major repair are asked for.
 */
export function MajorFields(props: { begunAs: string; questions: EntryAsks['majorQuestions'] }) {
  const t = useWords();
  const { begunAs, questions } = props;
  const { control } = useFormContext<EntryTyped>();
  const kind = useWatch({ control, name: 'workKind' });
  return (
    <FormGroup title={t('Kind of work')}>
      <ChoiceGroup
        name="workKind"
        label={t('It is entered as')}
        choices={[
          ...(begunAs === 'preventive' ? [{ value: 'preventive', label: t('Preventive maintenance') }] : []),
          { value: 'minor', label: t('Minor repair') },
          { value: 'major', label: t('Major repair') },
        ]}
      />
      {kind !== 'preventive' && <Questions questions={questions} />}
      {kind === 'major' && <MajorPapers />}
    </FormGroup>
  );
}

function Questions({ questions }: { questions: EntryAsks['majorQuestions'] }) {
  const t = useWords();
  const { control } = useFormContext<EntryTyped>();
  const answer = useWatch({ control, name: 'majorAnswers' });
  return (
    <>
      {answer !== 'some' && (
        <div>
          <p className={styles.asked}>{t('What makes a repair major, part 43 Appendix A(b):')}</p>
          <ul className={styles.questions}>
            {questions.map(({ key, question }) => (
              <li key={key}>{question}</li>
            ))}
          </ul>
        </div>
      )}
      <ChoiceGroup
        name="majorAnswers"
        label={t('Was any of these done?')}
        choices={[
          { value: 'none', label: t('None of these was done') },
          { value: 'some', label: t('One or more of these was done') },
        ]}
      />
      {answer === 'some' && (
        <fieldset className={styles.ticks}>
          <legend>{t('Which? It is a major repair then.')}</legend>
          {questions.map(({ key, question }) => (
            <Checkbox key={key} name="majorTicked" value={key} label={question} />
          ))}
        </fieldset>
      )}
    </>
  );
}

/** 43.5(b), (c), 43.9(d), Appendix B(a), (b), (d). */
function MajorPapers() {
  const t = useWords();
  const { control } = useFormContext<EntryTyped>();
  const limitsChanged = useWatch({ control, name: 'limitsChanged' });
  const cabinTank = useWatch({ control, name: 'cabinTank' });
  return (
    <>
      <ChoiceGroup
        name="majorRecord"
        label={t('Which paper records the major repair?')}
        choices={[
          {
            value: 'form-337',
            label: t('Form 337'),
            hint: t('In duplicate: one to the owner, one to the FAA within 48 hours.'),
          },
          {
            value: 'work-order',
            label: t('The repair station’s work order'),
            hint: t('Only for a repair station, with its maintenance release: Appendix B(b).'),
          },
        ]}
      />
      <TextField name="form337" label={t('Its number or date')} />
      <TextField name="approvedData" label={t('Approved data it was done by')} />
      <YesNo
        name="limitsChanged"
        label={t('Did it change operating limits or flight data in the flight manual?')}
        hint={t('Then they are revised before the approval: 14 CFR 43.5(c).')}
      />
      {limitsChanged === 'yes' && (
        <TextArea name="limitsRevised" label={t('How the flight manual was revised')} rows={2} />
      )}
      <YesNo
        name="cabinTank"
        label={t('Was a fuel tank put into the cabin or baggage compartment?')}
        hint={t('Then a copy of Form 337 goes aboard: Appendix B(d).')}
      />
      {cabinTank === 'yes' && <YesNo name="copyAboard" label={t('Is the copy of Form 337 aboard?')} />}
    </>
  );
}
