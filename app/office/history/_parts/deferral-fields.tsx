'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { ChoiceGroup, SelectField, TextField } from '@/app/_ui/fields';
import { PILOT_GRADES } from '@/lib/carry-over/write-up-columns';
import { said } from '@/lib/words/said';
import styles from '../history.module.css';
import { YesNoUnknown } from './yes-no-unknown';

const GRADES: Readonly<Record<(typeof PILOT_GRADES)[number], string>> = {
  student: said('Student'),
  sport: said('Sport'),
  recreational: said('Recreational'),
  private: said('Private'),
  commercial: said('Commercial'),
  'airline-transport': said('Airline transport'),
};

/** What the paper says of a deferral. What is left open is not known, and bars until it is settled. */
export function DeferralFields({ melTitles }: { melTitles: readonly string[] }) {
  const t = useWords();
  return (
    <>
      <p>
        {t(
          'Answer only what the paper says. What is not known bars. If much is not known, leave the deferral out and defer it here: the rules then ask for each step.',
        )}
      </p>
      <How melTitles={melTitles} />
      <Determined />
      <Taken />
    </>
  );
}

function How({ melTitles }: { melTitles: readonly string[] }) {
  const t = useWords();
  const [basis, method] = useWatch({ name: ['basis', 'method'] }) as string[];
  return (
    <fieldset className={styles.group}>
      <legend>{t('How it was deferred')}</legend>
      <ChoiceGroup
        name="basis"
        label={t('On what it stands')}
        sideBySide
        choices={[
          { value: '91.213(d)', label: '91.213(d)' },
          { value: 'mel', label: t('Minimum equipment list') },
        ]}
      />
      {basis === 'mel' && (
        <SelectField
          name="mel_item"
          label={t('Item of the list in force')}
          choices={melTitles.map((title) => ({ value: title, label: title }))}
        />
      )}
      <ChoiceGroup
        name="method"
        label={t('Removed or deactivated')}
        sideBySide
        choices={[
          { value: 'removed', label: t('Removed') },
          { value: 'deactivated', label: t('Deactivated') },
        ]}
      />
      <TextField name="method_words" label={t('How, as the paper says')} maxLength={500} />
      <TextField
        name="recorded_on"
        label={t('Day it was recorded inoperative')}
        hint={t('The interval of a list counts from it. Empty: the day it was found.')}
        type="date"
        optional
      />
      {method === 'deactivated' && (
        <YesNoUnknown
          name="is_maintenance"
          label={t('Was deactivating it maintenance?')}
          hint={t('Not known counts as yes: its part 43 record is then owed.')}
        />
      )}
      {basis === 'mel' && (
        <YesNoUnknown name="procedures_done" label={t('Are the procedures of the list done?')} />
      )}
    </fieldset>
  );
}

function Determined() {
  const t = useWords();
  const certificate = useWatch({ name: 'certificate' }) as string;
  return (
    <fieldset className={styles.group}>
      <legend>{t('Who determined that it is no hazard')}</legend>
      <YesNoUnknown name="no_hazard" label={t('Does the paper say that it is no hazard to the aircraft?')} />
      <div className={styles.pair}>
        <TextField name="determined_by" label={t('Name')} optional maxLength={120} />
        <TextField name="determined_on" label={t('Day of the determination')} type="date" optional />
      </div>
      <div className={styles.pair}>
        <SelectField
          name="certificate"
          label={t('Certificate')}
          choices={[
            { value: 'mechanic', label: t('Mechanic') },
            { value: 'repair station', label: t('Repair station') },
            { value: 'pilot', label: t('Pilot') },
            { value: 'other', label: t('Another') },
            { value: 'not known', label: t('Not known') },
          ]}
        />
        <TextField name="certificate_number" label={t('Certificate number')} optional maxLength={60} />
      </div>
      {certificate === 'mechanic' && (
        <>
          <SelectField
            name="mechanic_ratings"
            label={t('Ratings')}
            chooseWords={t('Not known')}
            optional
            choices={[
              { value: 'airframe', label: t('Airframe') },
              { value: 'powerplant', label: t('Powerplant') },
              { value: 'airframe; powerplant', label: t('Airframe and powerplant') },
            ]}
          />
          <YesNoUnknown name="mechanic_recent" label={t('Had recent experience on that day (65.83)?')} />
        </>
      )}
      {certificate === 'repair station' && (
        <YesNoUnknown
          name="station_authorised"
          label={t('Rated for this aircraft, and could the person sign for it?')}
        />
      )}
      {certificate === 'pilot' && (
        <>
          <SelectField
            name="pilot_grade"
            label={t('Grade')}
            chooseWords={t('Not known')}
            optional
            choices={PILOT_GRADES.map((value) => ({ value, label: t(GRADES[value]) }))}
          />
          <YesNoUnknown name="pilot_rated" label={t('Rated for the category and class of this aircraft?')} />
        </>
      )}
      <YesNoUnknown
        name="counted_together"
        label={t('Did it count everything else that was out then?')}
        hint={t('Asked where more than one item is out (91.213(d)(4)).')}
      />
    </fieldset>
  );
}

function Taken() {
  const t = useWords();
  const [method, isMaintenance, signed] = useWatch({
    name: ['method', 'is_maintenance', 'record_signed'],
  }) as string[];
  return (
    <fieldset className={styles.group}>
      <legend>{t('Steps that were taken')}</legend>
      <YesNoUnknown
        name="placard_in_place"
        label={t('Is the placard in place?')}
        hint={t(
          'It counts when you, or whoever determined, may place one; else a pilot or mechanic marks it placed.',
        )}
      />
      <div className={styles.pair}>
        <TextField name="placard_words" label={t('Wording of the placard')} maxLength={120} />
        <TextField name="placard_location" label={t('Where it is or goes')} maxLength={120} />
      </div>
      {(method === 'removed' || isMaintenance !== 'no') && (
        <YesNoUnknown
          name="record_signed"
          label={t('Is the part 43 record of it signed?')}
          hint={t('Not signed, or not known: a mechanic makes it here.')}
        />
      )}
      {signed === 'yes' && (
        <>
          <TextField
            name="record_by"
            label={t('Who signed that record, with certificate kind and number')}
            optional
            maxLength={200}
          />
          <YesNoUnknown name="record_authorised" label={t('Could that person approve this work?')} />
        </>
      )}
      {method === 'removed' && (
        <>
          <TextField
            name="elt_removed_on"
            label={t('Emergency locator only: day it was first removed')}
            type="date"
            optional
          />
          <YesNoUnknown
            name="elt_record_complete"
            label={t('Emergency locator only: are make, model, serial number and reason recorded?')}
          />
        </>
      )}
    </fieldset>
  );
}
