'use client';

import { useWords } from '#words';
import { useState, useSyncExternalStore } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { Button, ButtonRow } from '@/app/_ui/button';
import { Checkbox, TextField } from '@/app/_ui/fields';
import { momentInWords } from '@/app/_ui/moment';
import { type Result } from '@/lib/problems';
import { proposeZone } from './actions';
import { type BaseAsTyped } from './base-typed';
import styles from './bases.module.css';

/**
 * The zone, with what its clocks show now, and a tick that somebody looked: by the zone it is decided on which date a limit
 * ends. `knownZone`: the one on record, which needs no tick while it stays. `ask`: who proposes a zone, where nobody is signed
 * in yet.
 */
export function ZoneFields({
  knownZone,
  wrong,
  ask = proposeZone,
}: {
  knownZone?: string;
  wrong: boolean;
  ask?: (point: { latitudeDeg: number; longitudeDeg: number }) => Promise<Result<{ zone: string }>>;
}) {
  const t = useWords();
  const { setValue, getValues } = useFormContext<BaseAsTyped>();
  const zone = useWatch<BaseAsTyped, 'zone'>({ name: 'zone' });
  const [said, setSaid] = useState('');
  const now = useSyncExternalStore(everyMinute, thisMinute, atServer);
  const shown = now === '' ? '' : clockOf(now, zone);
  const asks = zone !== knownZone || wrong;

  async function propose() {
    const [latitude, longitude] = [getValues('latitudeDeg'), getValues('longitudeDeg')];
    if (latitude.trim() === '' || longitude.trim() === '') {
      setSaid(t('Enter latitude and longitude first.'));
      return;
    }
    try {
      const result = await ask({ latitudeDeg: Number(latitude), longitudeDeg: Number(longitude) });
      if (!result.ok) {
        setSaid(t('This position has no zone. Look at latitude and longitude.'));
        return;
      }
      setValue('zone', result.value.zone);
      setValue('zoneConfirmed', false);
      setSaid(
        t('Proposed by the position: {zone}. The map is coarse: look at the time.', {
          zone: result.value.zone,
        }),
      );
    } catch {
      setSaid(t('No connection. Type the zone.'));
    }
  }

  return (
    <div className={styles.zone}>
      <TextField
        name="zone"
        label={t('Time zone')}
        hint={t('A name of the tz database, for example America/Chicago.')}
        spellCheck={false}
        autoCapitalize="none"
      />
      <ButtonRow>
        <Button onClick={() => void propose()}>{t('Propose the zone by the position')}</Button>
      </ButtonRow>
      <p role="status" className={styles.status}>
        {said}
      </p>
      <p className={styles.clock}>
        {shown ? (
          <>{t('It is now {shown} there.', { shown })}</>
        ) : (
          t('The time there shows here once there is a zone.')
        )}
      </p>
      {asks && <Checkbox name="zoneConfirmed" label={t('I looked at the time there, and it is right.')} />}
    </div>
  );
}

function clockOf(now: string, zone: string): string {
  try {
    return momentInWords(now, zone.trim());
  } catch {
    return '';
  }
}

const everyMinute = (changed: () => void) => {
  const timer = setInterval(changed, 5_000);
  return () => clearInterval(timer);
};
/** To the minute, so that it is the same value until the minute is over. */
const thisMinute = () => new Date(Math.floor(Date.now() / 60_000) * 60_000).toISOString();
const atServer = () => '';
