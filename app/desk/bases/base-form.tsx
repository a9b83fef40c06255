'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { useFormContext } from 'react-hook-form';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup, TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { addBaseInput, changeBaseInput } from '@/lib/bases/schema';
import { AirportSearch } from './airport-search';
import { saveBase, saveNewBase } from './actions';
import { EMPTY_BASE, type BaseAsTyped } from './base-typed';
import styles from './bases.module.css';
import { ZoneFields } from './zone-fields';

/** A base to be added. An airport of the file fills the form; everything can still be changed before it is saved. */
export function AddBaseForm() {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<BaseAsTyped, { ident: string }>({
    action: saveNewBase,
    schema: addBaseInput,
    start: EMPTY_BASE,
    afterDone: 'keep',
    onDone: ({ ident }) => router.push(`/desk/bases?added=${encodeURIComponent(ident)}`),
  });
  return (
    <CommandForm command={command} submit={t('Add the base')} label={t('Add a base')}>
      <Section title={t('From the airport file')}>
        <AirportSearch />
      </Section>
      <Section title={t('The base')}>
        <TextField
          name="ident"
          label={t('Identifier')}
          hint={t('2 to 7 letters and digits. It never changes once the base is added.')}
          maxLength={7}
          autoCapitalize="characters"
          spellCheck={false}
        />
        <Facts />
      </Section>
    </CommandForm>
  );
}

/** A base to be put right. Its identifier stays. */
export function ChangeBaseForm({ baseId, start }: { baseId: string; start: BaseAsTyped }) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState('');
  const command = useCommand<BaseAsTyped, { changed: string[] }>({
    action: (typed) => {
      setSaved('');
      return saveBase({ ...typed, baseId });
    },
    schema: changeBaseInput.omit({ baseId: true }),
    start,
    afterDone: 'keep',
    onDone: ({ changed }) => {
      setSaved(changed.length > 0 ? t('Saved.') : t('Nothing was different.'));
      router.refresh();
    },
  });
  return (
    <CommandForm
      command={command}
      submit={t('Save the base')}
      label={t('Change the base')}
      pendingWords={t('Saving…')}
    >
      <Facts knownZone={start.zone} />
      {saved && (
        <Notice tone="blue" title={saved}>
          <p>{t('Answers of the aircraft based here are worked out by what stands above from now on.')}</p>
        </Notice>
      )}
    </CommandForm>
  );
}

function Facts({ knownZone }: { knownZone?: string }) {
  const t = useWords();
  const { formState } = useFormContext<BaseAsTyped>();
  return (
    <>
      <TextField name="name" label={t('Name')} maxLength={120} />
      <div className={styles.pair}>
        <TextField
          name="latitudeDeg"
          label={t('Latitude')}
          hint={t('Decimal degrees; south is minus.')}
          spellCheck={false}
        />
        <TextField
          name="longitudeDeg"
          label={t('Longitude')}
          hint={t('Decimal degrees; west is minus.')}
          spellCheck={false}
        />
      </div>
      <ZoneFields knownZone={knownZone} wrong={Boolean(formState.errors.zoneConfirmed)} />
      {FACTS.map(({ name, label, hint }) => (
        <ChoiceGroup key={name} name={name} label={label} hint={hint} choices={YES_NO} sideBySide />
      ))}
    </>
  );
}

const YES_NO = [
  { value: 'yes', label: said('Yes') },
  { value: 'no', label: said('No') },
  { value: 'not-said', label: said('Not said') },
];

const FACTS = [
  {
    name: 'repairAvailable',
    label: said('Is there somebody here who can repair the aircraft?'),
    hint: said(
      'Asked where an inoperative transponder is to be flown to repair. Not said counts as unknown.',
    ),
  },
  {
    name: 'transponderAirspace',
    label: said('Does it lie in airspace of 91.215(b)?'),
    hint: said(
      'Where a transponder with altitude reporting is needed: class A, B and C, above class B and C to 10,000 ft, within 30 nautical miles of the airports that Appendix D section 1 lists, and from 10,000 ft up.',
    ),
  },
  {
    name: 'adsbAirspace',
    label: said('Does it lie in airspace of 91.225?'),
    hint: said(
      'Where ADS-B Out is needed: class A, B and C, above class B and C to 10,000 ft, within 30 nautical miles of the listed airports, class E from 10,000 ft up, and the Gulf of 91.225(d).',
    ),
  },
  {
    name: 'controlledAirspace',
    label: said('Is IFR from here in controlled airspace?'),
    hint: said('Asked by 91.411: altimeter and static system. Class A to E is controlled airspace.'),
  },
] as const;
