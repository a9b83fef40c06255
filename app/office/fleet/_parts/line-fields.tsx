'use client';

import { useWords } from '#words';
import { JascField } from '@/app/bench/forms/jasc-field';
import { CheckList } from '@/app/_ui/check-list';
import { YesNo } from '@/app/bench/forms/yes-no';
import { NumberField, SelectField, TextField } from '@/app/_ui/fields';
import { AUTHORITIES, AUTHORITY_WORDS } from '@/lib/equipment/line';
import { EQUIPMENT_FUNCTIONS } from '@/lib/rules/aircraft';
import { EQUIPMENT_NAMES } from '@/lib/rules/equipment-names';
import styles from '../fleet.module.css';

/** What an item is: its name, what it does, its system. `at`: before each field's name. */
export function WhatItIs({ at = '' }: { at?: string }) {
  const t = useWords();
  return (
    <>
      <TextField
        name={`${at}name`}
        label={t('Name of the item')}
        hint={t('Once in a list: write which one it is where there are several lines of a kind.')}
        maxLength={120}
      />
      <SelectField
        name={`${at}function`}
        label={t('What it does, as the paragraphs name it')}
        hint={t('“other item” if no paragraph names it.')}
        choices={FUNCTIONS}
      />
      <JascField name={`${at}jasc`} />
    </>
  );
}

const FUNCTIONS = EQUIPMENT_FUNCTIONS.map((value) => ({ value, label: EQUIPMENT_NAMES[value] }));

/** What the aircraft's own documents say of an item. */
export function WhatDocumentsSay({ at = '' }: { at?: string }) {
  const t = useWords();
  return (
    <>
      <NumberField
        name={`${at}installed`}
        label={t('How many are installed')}
        hint={t('0: the aircraft has none.')}
        whole
      />
      <fieldset className={styles.group}>
        <legend>{t('How many the equipment list or kinds-of-operations list requires')}</legend>
        <p className={styles.soft}>
          {t('Asked by 91.213(d)(2)(ii). All four, or none: not known yet, and the item cannot be deferred.')}
        </p>
        <div className={styles.counts}>
          <NumberField name={`${at}requiredDayVfr`} label={t('Day VFR')} whole />
          <NumberField name={`${at}requiredNightVfr`} label={t('Night VFR')} whole />
          <NumberField name={`${at}requiredDayIfr`} label={t('Day IFR')} whole />
          <NumberField name={`${at}requiredNightIfr`} label={t('Night IFR')} whole />
        </div>
      </fieldset>
      <YesNo
        name={`${at}vfrDayTypeDesign`}
        label={t('Is it part of the VFR-day equipment of the type’s certification?')}
        hint={t('Asked by 91.213(d)(2)(i). Not known yet: it cannot be deferred.')}
        third={{ value: 'not-known', label: t('Not known yet') }}
      />
      <CheckList
        name={`${at}authority`}
        label={t('By what authority it is required')}
        hint={t('Several, or none.')}
        choices={AUTHORITIES.map((value) => ({ value, label: t(AUTHORITY_WORDS[value]) }))}
      />
    </>
  );
}
