'use client';

import { useWords } from '#words';
import { useAct } from '@/app/bench/forms/use-act';
import { CommandForm } from '@/app/_ui/command-form';
import { NumberField, TextArea, TextField } from '@/app/_ui/fields';
import { LAST_DONE_DOCS } from '@/lib/carry-over/last-done-columns';
import { carryOverLastDoneInput } from '@/lib/carry-over/schema';
import { LAST_DONE_STATEMENT } from '@/lib/carry-over/statements';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { lastDoneCarried } from '../actions';
import styles from '../history.module.css';
import { Vouching } from '@/app/office/_parts/vouching';
import { YesNoUnknown } from './yes-no-unknown';

const START: Record<string, string> = {
  ...Object.fromEntries(LAST_DONE_DOCS.map(({ column }) => [column, ''])),
  password: '',
};

/** When it was last done, copied from the record of before. */
export function LastDoneForm(props: { requirementId: string; kind: RequirementKind; signer: string }) {
  const t = useWords();
  const { requirementId, kind, signer } = props;
  const command = useAct({
    action: lastDoneCarried,
    schema: carryOverLastDoneInput,
    start: START,
    input: (typed) => ({ ...typed, requirementId }),
    done: t('Carried over. It counts from now on.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign and carry over')} label={t('Last done')}>
      <div className={styles.pair}>
        <TextField name="done_on" label={t('Day it was done')} type="date" />
        <NumberField name="hours" label={t('Total time in service then')} unit="h" />
      </div>
      <TextField name="approved_by" label={t('Who approved it, as the record says')} maxLength={200} />
      <div className={styles.pair}>
        <TextField name="certificate" label={t('Kind of certificate')} maxLength={100} />
        <TextField name="certificate_number" label={t('Certificate number')} maxLength={60} />
      </div>
      <YesNoUnknown
        name="authorised"
        label={t('Did that person hold what the law asks, on that day?')}
        hint={t('Not known bars as if it were overdue.')}
      />
      {kind === 'static-and-altimeter' && (
        <NumberField name="tested_to_ft" label={t('Tested to')} unit="ft" whole />
      )}
      {(kind === 'elt-battery' || kind === 'life-limit') && (
        <TextField
          name="new_expiry"
          label={t('New date on the part')}
          type="date"
          optional={kind !== 'elt-battery'}
        />
      )}
      {kind === 'directive' && (
        <>
          <TextArea name="method" label={t('How the directive was met')} rows={2} />
          <TextField name="revision" label={t('Revision date of the directive')} maxLength={200} />
        </>
      )}
      <TextField
        name="document"
        label={t('Document that says so')}
        hint={t('With page or date: airframe logbook, page 41.')}
        maxLength={300}
      />
      <Vouching statement={LAST_DONE_STATEMENT} signer={signer} />
    </CommandForm>
  );
}
