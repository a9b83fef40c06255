'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useState } from 'react';
import { Caution } from '@/app/_ui/caution';
import { OutcomeMark } from '@/app/_ui/marks';
import { momentInWords } from '@/app/_ui/moment';
import { type FlightAnswer as Answered } from '@/lib/releases/answer-flight';
import { type FlightAsTyped } from '@/lib/releases/flight-form';
import { type SpentAhead } from '@/lib/releases/hours-ahead';
import { type DeskChoices } from '@/lib/releases/read-desk';
import { type FormChange } from '@/lib/releases/proposal-view';
import { type Problem } from '@/lib/problems';
import { formatTenths } from '@/lib/rules/hours';
import { clockWithSeconds } from '@/app/_ui/clock';
import { Reasons } from '../reasons';
import { type AnsweredFlight } from './flight-desk';
import styles from './flight.module.css';
import { Proposals } from './proposals';
import { ReleaseForm } from './release-form';
import { Warnings } from './warnings';

/** The answer in large, what light it is for, warnings, why, what would make it go, and the release where there is one. */
export function FlightAnswer(props: {
  given: AnsweredFlight;
  choices: DeskChoices;
  isChanged: boolean;
  isAsking: boolean;
  mayRelease: boolean;
  mayBench: boolean;
  onFactsMoved: (flight: FlightAsTyped, problem: Problem) => Promise<void>;
  onTake: (change: FormChange) => Promise<void>;
}) {
  const t = useWords();
  const { given, choices, isChanged, isAsking, mayRelease, mayBench, onFactsMoved, onTake } = props;
  const { answered, flight } = given;
  const isOld = useIsOld(answered.answeredAt);
  return (
    <div role="group" aria-label={t('Answer')} className={styles.sheet}>
      <div className={isChanged ? styles.outdated : undefined}>
        <h2>{answered.registration}</h2>
        {isChanged ? (
          <p role="status" className={styles.stale}>
            {t('You changed the flight since. Get the answer again.')}
          </p>
        ) : (
          <OutcomeMark outcome={answered.answer.outcome} size="large" />
        )}
        <p className={styles.soft}>
          {t('{moment} to {moment2}. {light}', {
            moment: momentInWords(answered.departAt, answered.zone),
            moment2: momentInWords(answered.arriveAt, answered.zone, true),
            light: lightInWords(t, answered),
          })}
        </p>
        <p className={isOld ? styles.stale : styles.soft}>
          {t('As of {clockWithSeconds}', {
            clockWithSeconds: clockWithSeconds(answered.answeredAt, answered.zone),
          })}
          {isOld && t(': more than two minutes ago. Get the answer again before you rely on it.')}
        </p>
        {!isChanged && answered.spentAhead && <HoursAhead spent={answered.spentAhead} />}
        {!isChanged && <Warnings warnings={answered.warnings} />}
        {!isChanged && <Reasons lines={answered.answer.lines} />}
        {!isChanged && (
          <Proposals
            proposals={answered.proposals}
            flight={{ ...answered, fromIdent: fromOf(flight, choices) }}
            choices={choices}
            isAsking={isAsking}
            mayBench={mayBench}
            onTake={onTake}
          />
        )}
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

/** Where the answered flight departs. */
const fromOf = ({ fromBaseId, fromIdent }: FlightAsTyped, { bases }: DeskChoices): string =>
  fromIdent ?? bases.find(({ id }) => id === fromBaseId)?.ident ?? '';

/** The answer counts what flights released before this one will have flown by then. */
function HoursAhead({ spent }: { spent: SpentAhead }) {
  const t = useWords();
  const tenths = spent.flights.reduce((sum, flight) => sum + flight.tenths, 0);
  return (
    <p className={styles.soft}>
      {t('Counted ahead: {tenths} h of {which} released before it ({flights}).', {
        tenths: formatTenths(tenths),
        which: spent.flights.length === 1 ? t('a flight') : t('flights'),
        flights: spent.flights.map(({ label }) => label).join('; '),
      })}
    </p>
  );
}

function lightInWords(
  t: Translate,
  { light, betweenSunsetAndSunrise, sunsetAt, zone, hire }: Answered,
): string {
  const use = hire ? t('For hire') : t('Not for hire');
  if (light === null) return `${use}.`;
  if (light === 'night') return t('{use}, at night.', { use });
  if (betweenSunsetAndSunrise) {
    return t('{use}, by day, but in part between sunset and sunrise: position lights on (14 CFR 91.209).', {
      use,
    });
  }
  return sunsetAt === null
    ? t('{use}, by day.', { use })
    : t('{use}, by day. Sunset {moment}.', { use, moment: momentInWords(sunsetAt, zone, true) });
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
