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
import { addAircraftInput, AIRCRAFT_STATEMENT } from '@/lib/aircraft/schema';
import { said } from '@/lib/words/said';
import { saveAircraft, saveNewAircraft } from '../actions';
import styles from '../fleet.module.css';
import { EMPTY_AIRCRAFT, type AircraftAsTyped } from './aircraft-typed';
import { Signing } from './signing';

export interface AircraftChoices {
  readonly types: readonly { readonly value: string; readonly label: string }[];
  readonly bases: readonly { readonly value: string; readonly label: string }[];
}

/** An aircraft to be added. The only type and base there is are chosen already. */
export function AddAircraftForm({ choices, signer }: { choices: AircraftChoices; signer: string }) {
  const t = useWords();
  const router = useRouter();
  const only = (of: AircraftChoices['types']) => (of.length === 1 ? (of[0]?.value ?? '') : '');
  const command = useCommand<AircraftAsTyped, { aircraftId: string }>({
    action: saveNewAircraft,
    schema: addAircraftInput,
    start: { ...EMPTY_AIRCRAFT, typeId: only(choices.types), baseId: only(choices.bases) },
    afterDone: 'keep',
    onDone: ({ aircraftId }) => router.push(`/office/fleet/aircraft/${aircraftId}?added=yes`),
  });
  return (
    <CommandForm command={command} submit={t('Sign and add the aircraft')} label={t('Add an aircraft')}>
      <Facts choices={choices} signer={signer} />
    </CommandForm>
  );
}

/** An aircraft to be put right. */
export function ChangeAircraftForm(props: {
  aircraftId: string;
  start: AircraftAsTyped;
  choices: AircraftChoices;
  signer: string;
}) {
  const t = useWords();
  const { aircraftId, start, choices, signer } = props;
  const router = useRouter();
  const [saved, setSaved] = useState(false);
  const command = useCommand<AircraftAsTyped, { changed: string[] }>({
    action: (typed) => {
      setSaved(false);
      return saveAircraft({ ...typed, aircraftId });
    },
    schema: addAircraftInput,
    start,
    afterDone: 'keep',
    onDone: () => {
      setSaved(true);
      command.form.resetField('password', { defaultValue: '' });
      router.refresh();
    },
  });
  return (
    <CommandForm command={command} submit={t('Sign and save the aircraft')} label={t('Change the aircraft')}>
      <Facts choices={choices} signer={signer} change />
      {saved && (
        <Notice tone="blue" title={t('Signed and saved.')}>
          <p>{t('Its answers are worked out by what stands above from now on.')}</p>
        </Notice>
      )}
    </CommandForm>
  );
}

function Facts({
  choices,
  signer,
  change = false,
}: {
  choices: AircraftChoices;
  signer: string;
  change?: boolean;
}) {
  const t = useWords();
  return (
    <>
      <div className={styles.pair}>
        <TextField
          name="registration"
          label={t('Registration')}
          hint={t('As painted on it, with the N.')}
          maxLength={6}
          autoCapitalize="characters"
          spellCheck={false}
        />
        <TextField
          name="serial"
          label={t('Serial number')}
          hint={t('From the data plate.')}
          maxLength={60}
          spellCheck={false}
        />
      </div>
      <div className={styles.pair}>
        <SelectField name="typeId" label={t('Type')} choices={choices.types} />
        <SelectField name="baseId" label={t('Base')} choices={choices.bases} />
      </div>
      <ChoiceGroup
        name="forHire"
        label={t('Is it mostly flown for hire?')}
        hint={t('Instruction the school provides counts as for hire. The board shows that column first.')}
        choices={[
          { value: 'yes', label: t('Yes') },
          { value: 'no', label: t('No') },
        ]}
        sideBySide
      />
      <YesNo
        name="standardCategory"
        label={t('Has it a standard airworthiness certificate?')}
        hint={t('Asked by 91.205(a). Without it every answer is no go: other classes are not judged here.')}
        third={{ value: 'not-known', label: t('Not known yet') }}
      />
      <div className={styles.pair}>
        <TextField
          name="manufacturedOn"
          type="date"
          label={t('Date of manufacture')}
          hint={t('Asked by 91.205(b)(11), (b)(14). Without it shoulder harnesses cannot be judged.')}
          optional
        />
      </div>
      <Section title={t('Hours')}>
        <p className={styles.soft}>
          {change
            ? t(
                'Hours that are known go on by the meters of each flight. Only what is still empty can be filled in here.',
              )
            : t('As the meters show them, with one decimal. Leave empty what nobody knows yet.')}
        </p>
        <div className={styles.counts}>
          <NumberField name="hobbs" label={t('Hobbs')} unit="h" optional />
          <NumberField name="tach" label={t('Tachometer')} unit="h" optional />
          <NumberField
            name="ttis"
            label={t('Total time in service')}
            hint={t('Asked by 91.409(b) and 91.417(a)(2).')}
            unit="h"
            optional
          />
        </div>
        <ChoiceGroup
          name="ttisMeter"
          label={t('Which meter counts time in service?')}
          hint={t('Not known yet: whichever ran longer counts.')}
          choices={METERS.map(({ value, label }) => ({ value, label: t(label) }))}
          sideBySide
        />
      </Section>
      <Section title={t('Where it comes from')}>
        <Signing
          statement={AIRCRAFT_STATEMENT}
          signer={signer}
          hint={t('For example the data plate, the registration or the logbook, with page or date.')}
        />
      </Section>
    </>
  );
}

const METERS = [
  { value: 'hobbs', label: said('Hobbs') },
  { value: 'tach', label: said('Tachometer') },
  { value: 'not-known', label: said('Not known yet') },
] as const;
