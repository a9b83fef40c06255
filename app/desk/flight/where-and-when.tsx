'use client';

import { useFormContext } from 'react-hook-form';
import { NumberField, TextField } from '@/app/_ui/fields';
import { PlaceField } from '@/app/_ui/place-field';
import { type FlightForm } from '@/lib/releases/flight-form';
import { arrivalAfter, localTimeIn, tenthsBetween } from '@/lib/releases/flight-times';
import { identIn, placeText, type NamedPlace } from '@/lib/releases/place-text';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { formatTenths } from '@/lib/rules/hours';
import { findPlaces } from '../actions';
import styles from './flight.module.css';

/** Where from and to: a base or any airport, home and back in one press. */
export function Places(props: {
  choices: DeskChoices;
  form: FlightForm;
  onPlaces: (places: readonly NamedPlace[]) => void;
}) {
  const { choices, form, onPlaces } = props;
  const { setValue } = useFormContext<FlightForm>();
  const place = { near: choices.bases, search: findPlaces, onFound: onPlaces };
  const home = choices.bases.find(
    (base) => base.id === choices.aircraft.find((one) => one.id === form.aircraftId)?.baseId,
  );
  return (
    <div className={styles.withChips}>
      <div className={styles.pair}>
        <PlaceField name="from" label="From" {...place} />
        <PlaceField name="to" label="To" {...place} />
      </div>
      {home && (
        <Chips label="Places">
          <Chip
            onPress={() => {
              setValue('from', placeText(home));
              setValue('to', placeText(home));
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

/** When, and for how long; what is likely is one press away. */
export function Times({ places, form }: { places: ReadonlyMap<string, NamedPlace>; form: FlightForm }) {
  const { setValue } = useFormContext<FlightForm>();
  const from = places.get(identIn(form.from));
  const to = places.get(identIn(form.to));
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
