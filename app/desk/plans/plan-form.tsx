'use client';

import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import { z } from 'zod';
import { CommandForm } from '@/app/_ui/command-form';
import { NumberField, SelectField, TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { type PlannedAircraft } from '@/lib/flights/read-planned-flights';
import { planFlightInput } from '@/lib/flights/schema';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { plan } from './actions';
import styles from './plans.module.css';

const EMPTY = { aircraftId: '', pilotId: '', departLocal: '', arriveLocal: '', plannedHours: '', words: '' };
type Typed = typeof EMPTY;

/** One flight to be planned. Times are those of the aircraft's base. */
export function PlanForm({
  choices,
  aircraft,
}: {
  choices: DeskChoices;
  aircraft: readonly PlannedAircraft[];
}) {
  const [done, setDone] = useState('');
  const asInput = (typed: Typed & { requestId: string }) => ({ ...typed, pilotId: typed.pilotId || null });
  const command = useCommand<Typed, unknown>({
    action: (typed) => {
      setDone('');
      return plan(asInput(typed));
    },
    schema: z.preprocess((typed) => asInput(typed as Typed & { requestId: string }), planFlightInput),
    start: EMPTY,
    onDone: () => setDone('Planned. It stands in the list below.'),
  });
  return (
    <CommandForm command={command} submit="Plan the flight" label="Plan a flight">
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
          label="Pilot"
          optional
          chooseWords="Not named yet"
          choices={choices.pilots.map(({ id, name }) => ({ value: id, label: name }))}
        />
      </div>
      <Times aircraft={aircraft} />
      <div className={styles.pair}>
        <NumberField name="plannedHours" label="Planned hours" unit="h" optional />
        <TextField name="words" label="What for" optional maxLength={500} />
      </div>
      <p role="status" className={styles.done}>
        {done}
      </p>
    </CommandForm>
  );
}

function Times({ aircraft }: { aircraft: readonly PlannedAircraft[] }) {
  const aircraftId = useWatch<Typed>({ name: 'aircraftId' });
  const base = aircraft.find((one) => one.aircraftId === aircraftId)?.baseIdent;
  const hint = base ? `Local time at ${base}.` : 'Local time at the aircraft’s base.';
  return (
    <div className={styles.pair}>
      <TextField name="departLocal" label="Departs" type="datetime-local" hint={hint} />
      <TextField name="arriveLocal" label="Is back" type="datetime-local" hint={hint} />
    </div>
  );
}
