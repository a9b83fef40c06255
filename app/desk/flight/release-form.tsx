'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '@/app/_ui/command-form';
import { Checkbox } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { type Problem } from '@/lib/problems';
import { type FlightAsTyped } from '@/lib/releases/flight-form';
import { release } from '../actions';
import { type AnsweredFlight } from './flight-desk';
import styles from './flight.module.css';

/** Releases exactly the flight that was answered, on exactly the facts it was answered on. The server asks again. */
export function ReleaseForm(props: {
  given: AnsweredFlight;
  mayRelease: boolean;
  onFactsMoved: (flight: FlightAsTyped, problem: Problem) => Promise<void>;
}) {
  const t = useWords();
  const { given, mayRelease, onFactsMoved } = props;
  const { flight, answered } = given;
  const router = useRouter();
  const isLimited = answered.answer.outcome === 'go-with-limits';
  const command = useCommand({
    action: async ({ limitsPassedOn, requestId }: { limitsPassedOn: boolean; requestId: string }) => {
      const result = await release({
        ...flight,
        factsVersion: answered.factsVersion,
        limitsPassedOn,
        requestId,
      });
      if (!result.ok && FACTS_MOVED.includes(result.problem.code)) await onFactsMoved(flight, result.problem);
      return result;
    },
    start: { limitsPassedOn: false },
    afterDone: 'keep',
    onDone: ({ releaseId }) => router.push(`/desk/release/${releaseId}`),
  });
  if (!mayRelease) {
    return <p className={styles.soft}>{t('Releasing is for dispatchers and managers. Call the desk.')}</p>;
  }
  if (!flight.pilotId) {
    return (
      <p className={styles.soft}>
        {t('To release it, choose the pilot in command and get the answer again.')}
      </p>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={isLimited ? t('Release with limits') : t('Release')}
      pendingWords={t('Releasing…')}
      label={t('Release')}
      wide
    >
      {isLimited && (
        <Checkbox name="limitsPassedOn" label={t('I have passed these limits to the pilot in command')} />
      )}
    </CommandForm>
  );
}

const FACTS_MOVED: readonly Problem['code'][] = ['superseded', 'no_go'];
