'use client';

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
  const { choices, places, onPlaces } = props;
  const form = useWatch<FlightForm>() as FlightForm;
  return (
    <>
      <div className={styles.pair}>
        <SelectField
          name="aircraftId"
          label="Aircraft"
          choices={choices.aircraft.map(({ id, registration, typeName }) => ({
            value: id,
            label: `${registration}, ${typeName}`,
          }))}
        />
        <SelectField
          name="pilotId"
          label="Pilot in command"
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
          label="Flight rules"
          sideBySide
          choices={[
            { value: 'VFR', label: 'VFR' },
            { value: 'IFR', label: 'IFR' },
          ]}
        />
        <SelectField
          name="purpose"
          label="What is it for?"
          choices={Object.entries(PURPOSE_WORDS).map(([value, label]) => ({ value, label }))}
        />
      </div>
      <Permit choices={choices} form={form} />
      {questionsFor(form, 'asked').map((question) => (
        <YesNo key={question} question={question} />
      ))}
      {asksAltitude(form) && (
        <NumberField name="highestAltitudeFtMsl" label="Highest altitude" unit="ft MSL" whole />
      )}
      <details className={styles.more}>
        <summary>More: air traffic control, crew only, on to a repair</summary>
        <div className={styles.moreFields}>
          {questionsFor(form, 'aside').map((question) => (
            <YesNo key={question} question={question} />
          ))}
          <AtcAnswer
            name="atcTransponder"
            label="Asked air traffic control to fly without the transponder?"
          />
          <AtcAnswer name="atcAdsb" label="Asked air traffic control to fly without ADS-B Out?" />
          <Checkbox
            name="continuingToRepair"
            label="The failure was met under way; this flight goes on to where it can be repaired"
          />
        </div>
      </details>
    </>
  );
}

/** Asked only of an aircraft that has a permit left. Under one, its conditions are the flight's limits. */
function Permit({ choices, form }: { choices: DeskChoices; form: FlightForm }) {
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
      label="Under a special flight permit?"
      optional
      hint="Its conditions become the limits of this one flight, and the release uses it up."
      chooseWords="No permit"
      choices={permits.map(({ id, label }) => ({ value: id, label }))}
    />
  );
}

const QUESTION_WORDS: Record<Question, string> = {
  transponderAirspace: 'Into airspace that needs a transponder?',
  adsbAirspace: 'Into airspace that needs ADS-B Out?',
  controlledAirspace: 'In controlled airspace?',
  usesVor: 'Navigating by VOR?',
  overWaterBeyondGlide: 'Over water beyond gliding distance from shore?',
  trainingWithin50Nm: 'Training wholly within 50 nautical miles?',
  crewOnly: 'Only required crew aboard?',
};

function YesNo({ question }: { question: Question }) {
  return (
    <div className={styles.yesNo}>
      <ChoiceGroup
        name={question}
        label={QUESTION_WORDS[question]}
        sideBySide
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
        ]}
      />
    </div>
  );
}

function AtcAnswer({ name, label }: { name: 'atcTransponder' | 'atcAdsb'; label: string }) {
  return (
    <ChoiceGroup
      name={name}
      label={label}
      sideBySide
      choices={[
        { value: 'not-asked', label: 'Not asked' },
        { value: 'granted', label: 'Granted' },
        { value: 'refused', label: 'Refused' },
      ]}
    />
  );
}
