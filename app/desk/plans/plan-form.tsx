'use client';

import { useWords } from '#words';
import { useMemo, useState } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { z } from 'zod';
import { CommandForm } from '@/app/_ui/command-form';
import { NumberField, SelectField, TextField } from '@/app/_ui/fields';
import { PlaceField } from '@/app/_ui/place-field';
import { useCommand } from '@/app/_ui/use-command';
import { type PlannedAircraft } from '@/lib/flights/read-planned-flights';
import { planFlightInput, PURPOSES, RULES } from '@/lib/flights/schema';
import { identIn, type NamedPlace } from '@/lib/releases/place-text';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { findPlaces } from '../actions';
import { PURPOSE_WORDS } from '../words';
import { plan } from './actions';
import styles from './plans.module.css';

const EMPTY = {
  aircraftId: '',
  pilotId: '',
  departLocal: '',
  arriveLocal: '',
  plannedHours: '',
  words: '',
  fromIdent: '',
  toIdent: '',
  rules: '',
  purpose: '',
};
type Typed = typeof EMPTY;

/** What was left open is left out: nobody has said. */
const asInput = ({
  pilotId,
  fromIdent,
  toIdent,
  rules,
  purpose,
  ...typed
}: Typed & { requestId: string }) => ({
  ...typed,
  pilotId: pilotId || null,
  ...(identIn(fromIdent) ? { fromIdent: identIn(fromIdent) } : {}),
  ...(identIn(toIdent) ? { toIdent: identIn(toIdent) } : {}),
  ...(rules ? { rules } : {}),
  ...(purpose ? { purpose } : {}),
});

/** One flight to be planned. Each time is that of its place; without a place that of the aircraft's base. */
export function PlanForm({
  choices,
  aircraft,
}: {
  choices: DeskChoices;
  aircraft: readonly PlannedAircraft[];
}) {
  const t = useWords();
  const [done, setDone] = useState('');
  const [found, setFound] = useState<readonly NamedPlace[]>([]);
  const command = useCommand<Typed, unknown>({
    action: (typed) => {
      setDone('');
      return plan(asInput(typed));
    },
    schema: z.preprocess((typed) => asInput(typed as Typed & { requestId: string }), planFlightInput),
    start: EMPTY,
    onDone: () => setDone(t('Planned. It stands in the list below if it departs within seven days.')),
  });
  return (
    <CommandForm command={command} submit={t('Plan the flight')} label={t('Plan a flight')}>
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
          label={t('Pilot')}
          optional
          chooseWords={t('Not named yet')}
          choices={choices.pilots.map(({ id, name }) => ({ value: id, label: name }))}
        />
      </div>
      <Times aircraft={aircraft} places={[...choices.bases, ...found]} />
      <div className={styles.pair}>
        <NumberField name="plannedHours" label={t('Planned hours')} unit="h" optional />
        <TextField name="words" label={t('What for')} optional maxLength={500} />
      </div>
      <More bases={choices.bases} onFound={(places) => setFound((known) => [...known, ...places])} />
      <p role="status" className={styles.done}>
        {done}
      </p>
    </CommandForm>
  );
}

function Times(props: { aircraft: readonly PlannedAircraft[]; places: readonly NamedPlace[] }) {
  const t = useWords();
  const { aircraft, places } = props;
  const [aircraftId, from, to] = useWatch<Typed, ['aircraftId', 'fromIdent', 'toIdent']>({
    name: ['aircraftId', 'fromIdent', 'toIdent'],
  });
  const base = aircraft.find((one) => one.aircraftId === aircraftId)?.baseIdent;
  const hint = (typed: string) => {
    const ident = identIn(typed);
    if (ident === '')
      return base ? t('Local time at {base}.', { base }) : t('Local time at the aircraft’s base.');
    const zone = places.find((place) => place.ident === ident)?.zone;
    return zone
      ? t('Local time at {ident} ({zone}).', { ident, zone })
      : t('Local time at {ident}.', { ident });
  };
  return (
    <div className={styles.pair}>
      <TextField name="departLocal" label={t('Departs')} type="datetime-local" hint={hint(from)} />
      <TextField name="arriveLocal" label={t('Is back')} type="datetime-local" hint={hint(to)} />
    </div>
  );
}

/** What a plan can say and need not. Opens by itself where something in it is wrong. */
function More(props: { bases: readonly NamedPlace[]; onFound: (places: readonly NamedPlace[]) => void }) {
  const t = useWords();
  const { bases, onFound } = props;
  const { errors } = useFormContext<Typed>().formState;
  const [isOpen, setOpen] = useState(false);
  const wrong = Boolean(errors.fromIdent ?? errors.toIdent ?? errors.rules ?? errors.purpose);
  const near = useMemo(() => bases.map(({ ident, name, zone }) => ({ ident, name, zone })), [bases]);
  const place = { near, search: findPlaces, onFound, hint: t('Empty: the aircraft’s base.') };
  return (
    <details
      className={styles.more}
      open={isOpen || wrong}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{t('More: from and to, rules, purpose')}</summary>
      <div className={styles.moreFields}>
        <div className={styles.pair}>
          <PlaceField name="fromIdent" label={t('From (optional)')} {...place} />
          <PlaceField name="toIdent" label={t('To (optional)')} {...place} />
        </div>
        <div className={styles.pair}>
          <SelectField
            name="rules"
            label={t('Rules')}
            optional
            chooseWords={t('Not said')}
            choices={RULES.map((value) => ({ value, label: value }))}
          />
          <SelectField
            name="purpose"
            label={t('Purpose')}
            optional
            chooseWords={t('Not said')}
            choices={PURPOSES.map((value) => ({ value, label: t(PURPOSE_WORDS[value]) }))}
          />
        </div>
      </div>
    </details>
  );
}
