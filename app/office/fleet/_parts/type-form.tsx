'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { YesNo } from '@/app/bench/forms/yes-no';
import { ChoiceGroup, NumberField, SelectField, TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { ASKED_FACTS, CATEGORIES, RATINGS, TYPE_STATEMENT, type TypeFact } from '@/lib/types/fields';
import { addTypeInput } from '@/lib/types/schema';
import { said } from '@/lib/words/said';
import { saveNewType, saveType } from '../actions';
import styles from '../fleet.module.css';
import { Signing } from './signing';
import { EMPTY_TYPE, type TypeAsTyped } from './type-typed';

/** A type to be added. */
export function AddTypeForm({ signer }: { signer: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<TypeAsTyped, { typeId: string }>({
    action: saveNewType,
    schema: addTypeInput,
    start: EMPTY_TYPE,
    afterDone: 'keep',
    onDone: ({ typeId }) => router.push(`/office/fleet?type=${typeId}`),
  });
  return (
    <CommandForm command={command} submit={t('Sign and add the type')} label={t('Add a type')}>
      <Facts signer={signer} />
    </CommandForm>
  );
}

/** A type to be put right. */
export function ChangeTypeForm({
  typeId,
  start,
  signer,
}: {
  typeId: string;
  start: TypeAsTyped;
  signer: string;
}) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState(false);
  const command = useCommand<TypeAsTyped, { changed: string[] }>({
    action: (typed) => {
      setSaved(false);
      return saveType({ ...typed, typeId });
    },
    schema: addTypeInput,
    start,
    afterDone: 'keep',
    onDone: () => {
      setSaved(true);
      command.form.resetField('password', { defaultValue: '' });
      router.refresh();
    },
  });
  return (
    <CommandForm command={command} submit={t('Sign and save the type')} label={t('Change the type')}>
      <Facts signer={signer} />
      {saved && (
        <Notice tone="blue" title={t('Signed and saved.')}>
          <p>{t('Answers of all aircraft of this type are worked out by what stands above from now on.')}</p>
        </Notice>
      )}
    </CommandForm>
  );
}

function Facts({ signer }: { signer: string }) {
  const t = useWords();
  return (
    <>
      <Section title={t('What it is')}>
        <TextField
          name="name"
          label={t('Name of the type')}
          hint={t('As people here call it. Several aircraft can be of one type.')}
          maxLength={120}
        />
        <div className={styles.pair}>
          <SelectField name="category" label={t('Category')} choices={wordsOf(CATEGORIES)} />
          <SelectField
            name="rating"
            label={t('Category and class rating a pilot needs')}
            hint={t('Asked by 91.213(d)(4): who may find that an item is no hazard.')}
            choices={wordsOf(RATINGS)}
          />
        </div>
        <NumberField name="engines" label={t('Engines')} hint={t('Asked by 91.205(b)(4) to (8).')} whole />
      </Section>
      <Section title={t('What the rules ask of it')}>
        <p className={styles.soft}>
          {t(
            '“Not known yet” and an empty box are answers: the fact stays unknown, and what needs it stays no go and says so. Never guess.',
          )}
        </p>
        <YesNoFact fact="turbine" />
        <Whole fact="maxTakeoffWeightLb" unit="lb" />
        <YesNoFact fact="mmelPublished" />
        <div className={styles.pair}>
          <TextField
            name="certificatedOn"
            type="date"
            label={t(ASKED_FACTS.certificatedOn.label)}
            hint={<Why fact="certificatedOn" />}
            optional
          />
        </div>
        <YesNoFact fact="certificatedUnderPart23" />
        <ChoiceGroup
          name="cooling"
          label={t(ASKED_FACTS.cooling.label)}
          hint={<Why fact="cooling" />}
          choices={COOLED.map(({ value, label }) => ({ value, label: t(label) }))}
          sideBySide
        />
        <YesNoFact fact="altitudeEngine" />
        <YesNoFact fact="retractableGear" />
        <Whole fact="fuelTanks" />
        <Whole fact="seats" />
        <Whole fact="frontSeats" />
        <YesNoFact fact="usesFuses" />
      </Section>
      <Section title={t('Where it comes from')}>
        <TextField
          name="equipmentListSource"
          label={t('Where the equipment lists of this type come from')}
          hint={t('For example the chapter of the flight manual. Shown beside the equipment list.')}
          maxLength={200}
          optional
        />
        <Signing
          statement={TYPE_STATEMENT}
          signer={signer}
          hint={t('For example the type certificate data sheet or the flight manual, with revision or date.')}
        />
      </Section>
    </>
  );
}

function Why({ fact }: { fact: TypeFact }) {
  const t = useWords();
  const { paragraph, without } = ASKED_FACTS[fact];
  return (
    <>
      {t('Asked by {paragraph}.', { paragraph })} {t(without)}
    </>
  );
}

function YesNoFact({ fact }: { fact: TypeFact }) {
  const t = useWords();
  return (
    <YesNo
      name={fact}
      label={t(ASKED_FACTS[fact].label)}
      hint={<Why fact={fact} />}
      third={{ value: 'not-known', label: t('Not known yet') }}
    />
  );
}

function Whole({ fact, unit }: { fact: TypeFact; unit?: string }) {
  const t = useWords();
  return (
    <NumberField
      name={fact}
      label={t(ASKED_FACTS[fact].label)}
      hint={<Why fact={fact} />}
      unit={unit}
      whole
      optional
    />
  );
}

const COOLED = [
  { value: 'air', label: said('By air') },
  { value: 'liquid', label: said('By liquid') },
  { value: 'not-known', label: said('Not known yet') },
] as const;

/** Terms of the certificate; they stay as they are written there. */
const wordsOf = (values: readonly string[]) =>
  values.map((value) => ({ value, label: value.replaceAll('-', ' ') }));
