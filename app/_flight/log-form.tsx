'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Logged } from '@/lib/rules/release-state';
import { Button, ButtonRow } from '../_ui/button';
import { CommandForm } from '../_ui/command-form';
import { TextArea, TextField } from '../_ui/fields';
import { useCommand } from '../_ui/use-command';
import { instantOfWallClock, wallClockOf } from '../_ui/wall-clock';
import { log } from './actions';
import styles from './flight.module.css';

/** What can be logged now, one button each; the form of the one that was pressed stands below. */
export function LogFlight(props: { releaseId: string; canLog: readonly Logged[]; zone: string }) {
  const { releaseId, canLog, zone } = props;
  const router = useRouter();
  const [chosen, setChosen] = useState<{ what: Logged; now: string } | null>(null);
  const [said, setSaid] = useState('');
  const open = chosen && canLog.includes(chosen.what) ? chosen : null;
  return (
    <div className={styles.acts}>
      <p role="status" className={styles.said}>
        {said}
      </p>
      {!open && canLog.length > 0 && (
        <ButtonRow>
          {canLog.map((what, index) => (
            <Button
              key={what}
              weight={index === 0 && what !== 'closed' ? 'main' : 'plain'}
              onClick={() => {
                setSaid('');
                setChosen({ what, now: wallClockOf(new Date().toISOString(), zone) });
              }}
            >
              {BUTTONS[what]}
            </Button>
          ))}
        </ButtonRow>
      )}
      {open && (
        <LogForm
          key={open.what}
          {...{ releaseId, zone }}
          {...open}
          onBack={() => setChosen(null)}
          onDone={() => {
            setChosen(null);
            setSaid(DONE[open.what]);
            router.refresh();
          }}
        />
      )}
    </div>
  );
}

const BUTTONS: Record<Logged, string> = {
  airborne: 'Airborne',
  landed: 'Landed',
  closed: 'Close without meters',
};
const DONE: Record<Logged, string> = {
  airborne: 'Written down: airborne.',
  landed: 'Written down: landed.',
  closed: 'The flight is closed.',
};
const SUBMIT: Record<Logged, string> = {
  airborne: 'Write down: airborne',
  landed: 'Write down: landed',
  closed: 'Close the flight',
};

/** `now` is filled in as the time and may be changed; left as it is, the server's own clock counts. */
function LogForm(props: {
  releaseId: string;
  what: Logged;
  zone: string;
  now: string;
  onDone: () => void;
  onBack: () => void;
}) {
  const { releaseId, what, zone, now, onDone, onBack } = props;
  const command = useCommand({
    action: ({ at, words, requestId }: { at: string; words: string; requestId: string }) =>
      log({
        requestId,
        releaseId,
        what,
        // The minute typed began before it was pressed: a take-off right after the release would lie before it.
        at: at === now ? 'now' : (instantOfWallClock(at, zone) ?? ''),
        words,
      }),
    start: { at: now, words: '' },
    onDone,
  });
  return (
    <CommandForm
      command={command}
      submit={SUBMIT[what]}
      pendingWords="Writing down…"
      label={BUTTONS[what]}
      beside={
        <Button weight="quiet" onClick={onBack}>
          Not now
        </Button>
      }
    >
      <TextField
        name="at"
        label={what === 'closed' ? 'Ended at' : `${BUTTONS[what]} at`}
        type="datetime-local"
        hint="Filled in with now, in the time of the aircraft’s base."
      />
      {what === 'closed' ? (
        <TextArea
          name="words"
          label="Why it is closed without meters"
          hint="Not flown, for example."
          rows={2}
          maxLength={500}
        />
      ) : (
        <TextField name="words" label="A word about it" optional maxLength={500} />
      )}
    </CommandForm>
  );
}
