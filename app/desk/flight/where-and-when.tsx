'use client';

import { useWords } from '#words';
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
  const t = useWords();
  const { choices, form, onPlaces } = props;
  const { setValue } = useFormContext<FlightForm>();
  const place = { near: choices.bases, search: findPlaces, onFound: onPlaces };
  const home = choices.bases.find(
    (base) => base.id === choices.aircraft.find((one) => one.id === form.aircraftId)?.baseId,
  );
  return (
    <div className={styles.withChips}>
      <div className={styles.pair}>
        <PlaceField name="from" label={t('From')} {...place} />
        <PlaceField name="to" label={t('To')} {...place} />
      </div>
      {home && (
        <Chips label={t('Places')}>
          <Chip
            onPress={() => {
              setValue('from', placeText(home));
              setValue('to', placeText(home));
            }}
          >
            {t('{ident} and back', { ident: home.ident })}
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
  const t = useWords();
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
            label={
              from ? t('Departs, local time at {ident}', { ident: from.ident }) : t('Departs, local time')
            }
            type="datetime-local"
          />
          {from && (
            <Chips label={t('Departure')}>
              {DEPARTS_IN_MINUTES.map((minutes) => (
                <Chip
                  key={minutes}
                  onPress={() =>
                    setValue('departLocal', localTimeIn(new Date().toISOString(), minutes, from.zone))
                  }
                >
                  {t('in {minutes} min', { minutes })}
                </Chip>
              ))}
            </Chips>
          )}
        </div>
        <div className={styles.withChips}>
          <TextField
            name="arriveLocal"
            label={to ? t('Arrives, local time at {ident}', { ident: to.ident }) : t('Arrives, local time')}
            type="datetime-local"
          />
          {from && to && (
            <Chips label={t('Arrival')}>
              {LASTS_MINUTES.map((minutes) => {
                const arrives = arrivalAfter(form.departLocal, from.zone, minutes, to.zone);
                return (
                  arrives && (
                    <Chip key={minutes} onPress={() => setValue('arriveLocal', arrives)}>
                      {t('+{tenths} h', { tenths: formatTenths(minutes / 6) })}
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
          label={t('Planned time in service')}
          unit="h"
          hint={t('Counts against inspections that go by hours.')}
        />
        {between !== null && (
          <Chips label={t('Planned time')}>
            <Chip onPress={() => setValue('plannedHours', formatTenths(between))}>
              {t('{tenths} h, as the times say', { tenths: formatTenths(between) })}
            </Chip>
          </Chips>
        )}
      </div>
    </>
  );
}

function Chips({ label, children }: { label: string; children: React.ReactNode }) {
  const t = useWords();
  return (
    <div role="group" aria-label={t('Fill in: {label}', { label })} className={styles.chips}>
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
