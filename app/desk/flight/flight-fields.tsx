'use client';

import { useEffect } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { ChoiceGroup, Checkbox, NumberField, SelectField, TextField } from '@/app/_ui/fields';
import { formatTenths } from '@/lib/rules/hours';
import { asksAltitude, questionsFor, type FlightForm, type Question } from '@/lib/releases/flight-form';
import { arrivalAfter, localTimeIn, tenthsBetween } from '@/lib/releases/flight-times';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { PURPOSE_WORDS } from '../words';
import styles from './flight.module.css';

/** Everything the rules want to know of a flight, in the order in which a dispatcher hears it on the telephone. */
export function FlightFields({ choices }: { choices: DeskChoices }) {
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
      <Places choices={choices} form={form} />
      <Times choices={choices} form={form} />
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

function Places({ choices, form }: { choices: DeskChoices; form: FlightForm }) {
  const { setValue } = useFormContext<FlightForm>();
  const bases = choices.bases.map(({ id, ident, name }) => ({ value: id, label: `${ident}, ${name}` }));
  const home = choices.bases.find(
    (base) => base.id === choices.aircraft.find((one) => one.id === form.aircraftId)?.baseId,
  );
  return (
    <div className={styles.withChips}>
      <div className={styles.pair}>
        <SelectField name="fromBaseId" label="From" choices={bases} />
        <SelectField name="toBaseId" label="To" choices={bases} />
      </div>
      {home && (
        <Chips label="Places">
          <Chip
            onPress={() => {
              setValue('fromBaseId', home.id);
              setValue('toBaseId', home.id);
            }}
          >
            {home.ident} and back
          </Chip>
        </Chips>
      )}
    </div>
  );
}

const DEPARTS_IN_MINUTES = [30, 60];
const LASTS_MINUTES = [60, 90, 120];

function Times({ choices, form }: { choices: DeskChoices; form: FlightForm }) {
  const { setValue } = useFormContext<FlightForm>();
  const from = choices.bases.find((base) => base.id === form.fromBaseId);
  const to = choices.bases.find((base) => base.id === form.toBaseId);
  const between = from && to ? tenthsBetween(form.departLocal, from.zone, form.arriveLocal, to.zone) : null;
  return (
    <>
      <div className={styles.pair}>
        <div className={styles.withChips}>
          <TextField
            name="departLocal"
            label={from ? `Departs, local time at ${from.ident}` : 'Departs, local time'}
            type="datetime-local"
          />
          {from && (
            <Chips label="Departure">
              {DEPARTS_IN_MINUTES.map((minutes) => (
                <Chip
                  key={minutes}
                  onPress={() =>
                    setValue('departLocal', localTimeIn(new Date().toISOString(), minutes, from.zone))
                  }
                >
                  in {minutes} min
                </Chip>
              ))}
            </Chips>
          )}
        </div>
        <div className={styles.withChips}>
          <TextField
            name="arriveLocal"
            label={to ? `Arrives, local time at ${to.ident}` : 'Arrives, local time'}
            type="datetime-local"
          />
          {from && to && (
            <Chips label="Arrival">
              {LASTS_MINUTES.map((minutes) => {
                const arrives = arrivalAfter(form.departLocal, from.zone, minutes, to.zone);
                return (
                  arrives && (
                    <Chip key={minutes} onPress={() => setValue('arriveLocal', arrives)}>
                      +{formatTenths(minutes / 6)} h
                    </Chip>
                  )
                );
              })}
            </Chips>
          )}
        </div>
      </div>
      <div className={styles.withChips}>
        <NumberField
          name="plannedHours"
          label="Planned time in service"
          unit="h"
          hint="Counts against inspections that go by hours."
        />
        {between !== null && (
          <Chips label="Planned time">
            <Chip onPress={() => setValue('plannedHours', formatTenths(between))}>
              {formatTenths(between)} h, as the times say
            </Chip>
          </Chips>
        )}
      </div>
    </>
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

function Chips({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <div role="group" aria-label={`Fill in: ${label}`} className={styles.chips}>
      {children}
    </div>
  );
}

function Chip({ onPress, children }: { onPress: () => void; children: React.ReactNode }) {
  return (
    <button type="button" className={styles.chip} onClick={onPress}>
      {children}
    </button>
  );
}
