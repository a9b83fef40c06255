'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useEffect } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { ChoiceGroup, Checkbox, NumberField, SelectField } from '@/app/_ui/fields';
import { asksAltitude, questionsFor, type FlightForm, type Question } from '@/lib/releases/flight-form';
import { type NamedPlace } from '@/lib/releases/place-text';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { PURPOSE_WORDS } from '../words';
import styles from './flight.module.css';
import { Places, Times } from './where-and-when';

/** Everything the rules want to know of a flight, in the order in which a dispatcher hears it on the telephone. */
export function FlightFields(props: {
  choices: DeskChoices;
  /** Every place whose clock is known, by identifier. */
  places: ReadonlyMap<string, NamedPlace>;
  onPlaces: (places: readonly NamedPlace[]) => void;
}) {
  const t = useWords();
  const { choices, places, onPlaces } = props;
  const form = useWatch<FlightForm>() as FlightForm;
  return (
    <>
      <div className={styles.pair}>
        <SelectField
          name="aircraftId"
          label={t('Aircraft')}
          choices={choices.aircraft.map(({ id, registration, typeName }) => ({
            value: id,
            label: `${registration}, ${typeName}`,
          }))}
        />
        <SelectField
          name="pilotId"
          label={t('Pilot in command')}
          choices={choices.pilots.map(({ id, name, grade }) => ({
            value: id,
            label: grade ? `${name}, ${grade.replaceAll('-', ' ')}` : name,
          }))}
        />
      </div>
      <Places choices={choices} form={form} onPlaces={onPlaces} />
      <Times places={places} form={form} />
      <div className={styles.pair}>
        <ChoiceGroup
          name="rules"
          label={t('Flight rules')}
          sideBySide
          choices={[
            { value: 'VFR', label: t('VFR') },
            { value: 'IFR', label: t('IFR') },
          ]}
        />
        <SelectField
          name="purpose"
          label={t('What is it for?')}
          choices={Object.entries(PURPOSE_WORDS).map(([value, label]) => ({ value, label }))}
        />
      </div>
      <Permit choices={choices} form={form} />
      {questionsFor(form, 'asked').map((question) => (
        <YesNo key={question} question={question} />
      ))}
      {asksAltitude(form) && (
        <NumberField name="highestAltitudeFtMsl" label={t('Highest altitude')} unit={t('ft MSL')} whole />
      )}
      <details className={styles.more}>
        <summary>{t('More: air traffic control, crew only, on to a repair')}</summary>
        <div className={styles.moreFields}>
          {questionsFor(form, 'aside').map((question) => (
            <YesNo key={question} question={question} />
          ))}
          <AtcAnswer
            name="atcTransponder"
            label={t('Asked air traffic control to fly without the transponder?')}
          />
          <AtcAnswer name="atcAdsb" label={t('Asked air traffic control to fly without ADS-B Out?')} />
          <Checkbox
            name="continuingToRepair"
            label={t('The failure was met under way; this flight goes on to where it can be repaired')}
          />
        </div>
      </details>
    </>
  );
}

/** Asked only of an aircraft that has a permit left. Under one, its conditions are the flight's limits. */
function Permit({ choices, form }: { choices: DeskChoices; form: FlightForm }) {
  const t = useWords();
  const { setValue } = useFormContext<FlightForm>();
  const permits = choices.aircraft.find((one) => one.id === form.aircraftId)?.permits ?? [];
  const isOfAnother = form.permitId !== '' && !permits.some(({ id }) => id === form.permitId);
  useEffect(() => {
    // Another aircraft was chosen: its flight is not made under the first one's permit.
    if (isOfAnother) setValue('permitId', '');
  }, [isOfAnother, setValue]);
  if (permits.length === 0) return null;
  return (
    <SelectField
      name="permitId"
      label={t('Under a special flight permit?')}
      optional
      hint={t('Its conditions become the limits of this one flight, and the release uses it up.')}
      chooseWords={t('No permit')}
      choices={permits.map(({ id, label }) => ({ value: id, label }))}
    />
  );
}

const QUESTION_WORDS: Record<Question, string> = {
  transponderAirspace: said('Into airspace that needs a transponder?'),
  adsbAirspace: said('Into airspace that needs ADS-B Out?'),
  controlledAirspace: said('In controlled airspace?'),
  usesVor: said('Navigating by VOR?'),
  overWaterBeyondGlide: said('Over water beyond gliding distance from shore?'),
  trainingWithin50Nm: said('Training wholly within 50 nautical miles?'),
  crewOnly: said('Only required crew aboard?'),
};

function YesNo({ question }: { question: Question }) {
  const t = useWords();
  return (
    <div className={styles.yesNo}>
      <ChoiceGroup
        name={question}
        label={t(QUESTION_WORDS[question])}
        sideBySide
        choices={[
          { value: 'yes', label: t('Yes') },
          { value: 'no', label: t('No') },
        ]}
      />
    </div>
  );
}

function AtcAnswer({ name, label }: { name: 'atcTransponder' | 'atcAdsb'; label: string }) {
  const t = useWords();
  return (
    <ChoiceGroup
      name={name}
      label={label}
      sideBySide
      choices={[
        { value: 'not-asked', label: t('Not asked') },
        { value: 'granted', label: t('Granted') },
        { value: 'refused', label: t('Refused') },
      ]}
    />
  );
}
