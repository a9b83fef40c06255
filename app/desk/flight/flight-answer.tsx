'use client';

import { useEffect, useState } from 'react';
import { Caution } from '@/app/_ui/caution';
import { OutcomeMark } from '@/app/_ui/marks';
import { momentInWords } from '@/app/_ui/moment';
import { type FlightAnswer as Answered } from '@/lib/releases/answer-flight';
import { type FlightAsTyped } from '@/lib/releases/flight-form';
import { type Problem } from '@/lib/problems';
import { clockWithSeconds } from '../clock';
import { Reasons } from '../reasons';
import { type AnsweredFlight } from './flight-desk';
import styles from './flight.module.css';
import { ReleaseForm } from './release-form';

/** The answer in large, what light it is for, why, and the release where there is one to give. */
export function FlightAnswer(props: {
  given: AnsweredFlight;
  isChanged: boolean;
  mayRelease: boolean;
  onFactsMoved: (flight: FlightAsTyped, problem: Problem) => Promise<void>;
}) {
  const { given, isChanged, mayRelease, onFactsMoved } = props;
  const { answered, flight } = given;
  const isOld = useIsOld(answered.answeredAt);
  return (
    <div role="group" aria-label="Answer" className={styles.sheet}>
      <div className={isChanged ? styles.outdated : undefined}>
        <h2>{answered.registration}</h2>
        {isChanged ? (
          <p role="status" className={styles.stale}>
            You changed the flight since. Get the answer again.
          </p>
        ) : (
          <OutcomeMark outcome={answered.answer.outcome} size="large" />
        )}
        <p className={styles.soft}>
          {momentInWords(answered.departAt, answered.zone)} to{' '}
          {momentInWords(answered.arriveAt, answered.zone, true)}. {lightInWords(answered)}
        </p>
        <p className={isOld ? styles.stale : styles.soft}>
          As of {clockWithSeconds(answered.answeredAt, answered.zone)}
          {isOld && ': more than two minutes ago. Get the answer again before you rely on it.'}
        </p>
        {!isChanged && <Reasons lines={answered.answer.lines} />}
      </div>
      {!isChanged && answered.answer.outcome !== 'no-go' && (
        <ReleaseForm
          // Another flight or other facts are another release; the same ones keep their number over a lost answer.
          key={JSON.stringify([flight, answered.factsVersion, answered.answer.outcome])}
          given={given}
          mayRelease={mayRelease}
          onFactsMoved={onFactsMoved}
        />
      )}
      <Caution form="long" />
    </div>
  );
}

function lightInWords({ light, betweenSunsetAndSunrise, sunsetAt, zone, hire }: Answered): string {
  const use = hire ? 'For hire' : 'Not for hire';
  if (light === null) return `${use}.`;
  if (light === 'night') return `${use}, at night.`;
  if (betweenSunsetAndSunrise) {
    return `${use}, by day, but in part between sunset and sunrise: position lights on (14 CFR 91.209).`;
  }
  return sunsetAt === null
    ? `${use}, by day.`
    : `${use}, by day. Sunset ${momentInWords(sunsetAt, zone, true)}.`;
}

const OLD_AFTER_MS = 120_000;
const LOOK_EVERY_MS = 5_000;

/** Whether more than two minutes have gone by since this answer came, by this device's own clock. */
function useIsOld(answeredAt: string): boolean {
  const [oldOne, setOldOne] = useState<string | null>(null);
  useEffect(() => {
    const cameAt = Date.now();
    const looking = setInterval(() => {
      if (Math.abs(Date.now() - cameAt) > OLD_AFTER_MS) setOldOne(answeredAt);
    }, LOOK_EVERY_MS);
    return () => clearInterval(looking);
  }, [answeredAt]);
  return oldOne === answeredAt;
}
