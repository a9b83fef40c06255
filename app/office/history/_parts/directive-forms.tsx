'use client';

import { useWords } from '#words';
import { orNull, yesNo } from '@/app/bench/forms/typed';
import { useAct } from '@/app/bench/forms/use-act';
import { YesNo } from '@/app/bench/forms/yes-no';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { CommandForm } from '@/app/_ui/command-form';
import { SelectField, TextArea, TextField } from '@/app/_ui/fields';
import { DIRECTIVES_STATEMENT } from '@/lib/carry-over/statements';
import { addDirectiveInput, endDirectiveInput, reviewDirectivesInput } from '@/lib/directives/schema';
import { directiveAdded, directiveEnded, directivesReviewed } from '../actions';
import { Vouching } from '@/app/office/_parts/vouching';

/** A directive that names equipment. */
export function DirectiveForm(props: {
  aircraftId: string;
  equipment: readonly { readonly id: string; readonly name: string }[];
}) {
  const t = useWords();
  const { aircraftId, equipment } = props;
  const command = useAct({
    action: directiveAdded,
    schema: addDirectiveInput,
    start: { number: '', title: '', equipmentId: '', requiresOperable: '' },
    input: (typed) => ({
      ...typed,
      aircraftId,
      equipmentId: orNull(typed.equipmentId),
      requiresOperable: yesNo(typed.requiresOperable),
    }),
    done: t('The directive is entered.'),
  });
  return (
    <CommandForm command={command} submit={t('Enter the directive')} label={t('Enter a directive')}>
      <TextField name="number" label={t('Number of the directive')} maxLength={60} />
      <TextField name="title" label={t('Its subject')} maxLength={200} />
      <YesNo
        name="requiresOperable"
        label={t('Does it require an item of equipment to work?')}
        hint={t('Such an item can never be deferred: 91.213(d)(2)(iv), (b)(2).')}
      />
      <SelectField
        name="equipmentId"
        label={t('Which item')}
        optional
        choices={equipment.map(({ id, name }) => ({ value: id, label: name }))}
        chooseWords={t('None')}
      />
    </CommandForm>
  );
}

/** Somebody went through all that apply. */
export function ReviewForm({ aircraftId, signer }: { aircraftId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: directivesReviewed,
    schema: reviewDirectivesInput,
    start: { reviewedOn: '', document: '', password: '' },
    input: (typed) => ({ ...typed, aircraftId }),
    done: t('Signed. The directives entered here are those that apply.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign the review')} label={t('Review of the directives')}>
      <TextField name="reviewedOn" label={t('Day of the review')} type="date" />
      <TextField
        name="document"
        label={t('List or record it was gone through by')}
        hint={t('With its date or revision.')}
        maxLength={300}
      />
      <Vouching statement={DIRECTIVES_STATEMENT} signer={signer} />
    </CommandForm>
  );
}

/** A directive that applies no more. */
export function EndDirectiveForm({ directiveId, signer }: { directiveId: string; signer: string }) {
  const t = useWords();
  const command = useAct({
    action: directiveEnded,
    schema: endDirectiveInput,
    start: { why: '', reference: '', password: '' },
    input: (typed) => ({ ...typed, directiveId }),
    done: t('Ended. It stays on record.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign and end it')} label={t('End a directive')}>
      <TextArea name="why" label={t('Why it applies no more')} rows={2} maxLength={500} />
      <TextField name="reference" label={t('Document that says so')} maxLength={200} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
