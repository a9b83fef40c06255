'use client';

import { useEffect, useRef, useState } from 'react';
import { useWatch } from 'react-hook-form';
import { CommandForm } from '@/app/_ui/command-form';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type Problem } from '@/lib/problems';
import { type FlightAnswer as Answered } from '@/lib/releases/answer-flight';
import { emptyFlightForm, flightAsTyped, type FlightAsTyped } from '@/lib/releases/flight-form';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { askForAnswer } from '../actions';
import { clockWithSeconds } from '../clock';
import { FlightAnswer } from './flight-answer';
import { FlightFields } from './flight-fields';
import styles from './flight.module.css';

/** An answer together with the very flight it was given for. */
export interface AnsweredFlight {
  readonly flight: FlightAsTyped;
  readonly answered: Answered;
}

/** The form on one side, its answer on the other. An answer belongs to the flight it was given for and no other. */
export function FlightDesk(props: { choices: DeskChoices; aircraftId: string; mayRelease: boolean }) {
  const { choices, aircraftId, mayRelease } = props;
  const [given, setGiven] = useState<AnsweredFlight | null>(null);
  const [turnedDown, setTurnedDown] = useState<{ problem: Problem; askedAgain: boolean } | null>(null);
  const answerAt = useRef<HTMLDivElement>(null);
  const command = useCommand({
    action: async (form) => {
      const flight = flightAsTyped(form);
      const result = await askForAnswer(flight);
      return result.ok ? { ok: true as const, value: { flight, answered: result.value } } : result;
    },
    start: emptyFlightForm(aircraftId),
    afterDone: 'keep',
    onDone: (value) => {
      setTurnedDown(null);
      setGiven(value);
    },
  });
  const form = useWatch({ control: command.form.control }) as ReturnType<typeof emptyFlightForm>;
  const isChanged = given !== null && JSON.stringify(flightAsTyped(form)) !== JSON.stringify(given.flight);

  useEffect(() => {
    if (given) answerAt.current?.focus();
  }, [given]);

  /** The facts moved between answer and release: say so, and show the answer of the facts as they are now. */
  async function lookAgain(flight: FlightAsTyped, problem: Problem): Promise<void> {
    const again = await askForAnswer(flight).catch(() => null);
    setTurnedDown({ problem, askedAgain: again?.ok === true });
    setGiven(again?.ok ? { flight, answered: again.value } : null);
  }

  return (
    <div className={styles.desk}>
      <CommandForm
        command={command}
        submit={given ? 'Get the answer again' : 'Get the answer'}
        pendingWords="Asking…"
        label="Flight"
      >
        <FlightFields choices={choices} />
      </CommandForm>
      <div className={styles.answer} ref={answerAt} tabIndex={-1}>
        {turnedDown && (
          <Notice tone="amber" title={turnedDown.problem.say}>
            <p>
              {turnedDown.askedAgain && given
                ? `Nothing was released. Asked again: the answer below is of ${clockWithSeconds(given.answered.answeredAt, given.answered.zone)}.`
                : 'Nothing was released, and asking again did not work. Press “Get the answer”; what you typed is still here.'}
            </p>
          </Notice>
        )}
        {given ? (
          <FlightAnswer
            given={given}
            isChanged={isChanged}
            mayRelease={mayRelease}
            onFactsMoved={lookAgain}
          />
        ) : (
          <p className={styles.empty}>
            The answer will stand here: go, go with limits or no go, with the paragraph behind every line.
            What you leave unanswered counts as not known, and the answer names it.
          </p>
        )}
      </div>
    </div>
  );
}
