'use client';

import { useWords } from '#words';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useWatch } from 'react-hook-form';
import { CommandForm } from '@/app/_ui/command-form';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type Problem } from '@/lib/problems';
import { type FlightAnswer as Answered } from '@/lib/releases/answer-flight';
import {
  flightAsTyped,
  problemOfForm,
  type FlightAsTyped,
  type FlightForm,
} from '@/lib/releases/flight-form';
import { type NamedPlace } from '@/lib/releases/place-text';
import { withChange } from '@/lib/releases/prefill';
import { type FormChange } from '@/lib/releases/proposal-view';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { askForAnswer } from '../actions';
import { clockWithSeconds } from '@/app/_ui/clock';
import { FlightAnswer } from './flight-answer';
import { FlightFields } from './flight-fields';
import styles from './flight.module.css';

/** An answer together with the very flight it was given for. */
export interface AnsweredFlight {
  readonly flight: FlightAsTyped;
  readonly answered: Answered;
}

/** The form on one side, its answer on the other. An answer belongs to the flight it was given for and no other. */
export function FlightDesk(props: {
  choices: DeskChoices;
  start: FlightForm;
  /** Places of `start` that are no bases. */
  places: readonly NamedPlace[];
  mayRelease: boolean;
  mayBench: boolean;
}) {
  const t = useWords();
  const { choices, start, mayRelease, mayBench } = props;
  const { bases } = choices;
  const [given, setGiven] = useState<AnsweredFlight | null>(null);
  const [turnedDown, setTurnedDown] = useState<{ problem: Problem; askedAgain: boolean } | null>(null);
  const [found, setFound] = useState(props.places);
  const answerAt = useRef<HTMLDivElement>(null);
  const command = useCommand({
    action: async (form) => {
      const flight = flightAsTyped(form, bases);
      const result = await askForAnswer(flight);
      return result.ok
        ? { ok: true as const, value: { flight, answered: result.value } }
        : { ok: false as const, problem: problemOfForm(result.problem) };
    },
    start,
    afterDone: 'keep',
    onDone: (value) => {
      setTurnedDown(null);
      setGiven(value);
    },
  });
  const form = useWatch({ control: command.form.control }) as FlightForm;
  const isChanged =
    given !== null && JSON.stringify(flightAsTyped(form, bases)) !== JSON.stringify(given.flight);
  const places = useMemo(
    () => new Map([...found, ...bases].map((place) => [place.ident.toUpperCase(), place])),
    [found, bases],
  );
  const addPlaces = useCallback(
    (more: readonly NamedPlace[]) => setFound((before) => [...before, ...more]),
    [],
  );

  useEffect(() => {
    if (given) answerAt.current?.focus();
  }, [given]);

  /** The facts moved between answer and release: say so, and show the answer of the facts as they are now. */
  async function lookAgain(flight: FlightAsTyped, problem: Problem): Promise<void> {
    const again = await askForAnswer(flight).catch(() => null);
    setTurnedDown({ problem, askedAgain: again?.ok === true });
    setGiven(again?.ok ? { flight, answered: again.value } : null);
  }

  /** A proposal is only a change of the form: the answer to it is asked for like any other. */
  async function take(change: FormChange): Promise<void> {
    command.form.reset(withChange(command.form.getValues(), change));
    await command.submit();
  }

  return (
    <div className={styles.desk}>
      <CommandForm
        command={command}
        submit={given ? t('Get the answer again') : t('Get the answer')}
        pendingWords={t('Asking…')}
        label={t('Flight')}
      >
        <FlightFields choices={choices} places={places} onPlaces={addPlaces} />
      </CommandForm>
      <div className={styles.answer} ref={answerAt} tabIndex={-1}>
        {turnedDown && (
          <Notice tone="amber" title={turnedDown.problem.say}>
            <p>
              {turnedDown.askedAgain && given
                ? t('Nothing was released. Asked again: the answer below is of {clockWithSeconds}.', {
                    clockWithSeconds: clockWithSeconds(given.answered.answeredAt, given.answered.zone),
                  })
                : t(
                    'Nothing was released, and asking again did not work. Press “Get the answer”; what you typed is still here.',
                  )}
            </p>
          </Notice>
        )}
        {given ? (
          <FlightAnswer
            given={given}
            choices={choices}
            isChanged={isChanged}
            isAsking={command.pending}
            mayRelease={mayRelease}
            mayBench={mayBench}
            onFactsMoved={lookAgain}
            onTake={take}
          />
        ) : (
          <p className={styles.empty}>
            {t(
              'The answer will stand here: go, go with limits or no go, with the paragraph behind every line. What you leave unanswered counts as not known, and the answer names it.',
            )}
          </p>
        )}
      </div>
    </div>
  );
}
