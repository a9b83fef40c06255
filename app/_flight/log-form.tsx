'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
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
  const t = useWords();
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
              {t(BUTTONS[what])}
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
  airborne: said('Airborne'),
  landed: said('Landed'),
  closed: said('Close without meters'),
};
const DONE: Record<Logged, string> = {
  airborne: said('Written down: airborne.'),
  landed: said('Written down: landed.'),
  closed: said('The flight is closed.'),
};
const SUBMIT: Record<Logged, string> = {
  airborne: said('Write down: airborne'),
  landed: said('Write down: landed'),
  closed: said('Close the flight'),
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
  const t = useWords();
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
      submit={t(SUBMIT[what])}
      pendingWords={t('Writing down…')}
      label={t(BUTTONS[what])}
      beside={
        <Button weight="quiet" onClick={onBack}>
          {t('Not now')}
        </Button>
      }
    >
      <TextField
        name="at"
        label={what === 'closed' ? t('Ended at') : t('{buttons} at', { buttons: t(BUTTONS[what]) })}
        type="datetime-local"
        hint={t('Filled in with now, in the time of the aircraft’s base.')}
      />
      {what === 'closed' ? (
        <TextArea
          name="words"
          label={t('Why it is closed without meters')}
          hint={t('Not flown, for example.')}
          rows={2}
          maxLength={500}
        />
      ) : (
        <TextField name="words" label={t('A word about it')} optional maxLength={500} />
      )}
    </CommandForm>
  );
}
