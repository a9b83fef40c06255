'use client';

import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useState } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { Moment, momentInWords } from '@/app/_ui/moment';
import { EmptyState } from '@/app/_ui/page';
import Link from '@/app/_ui/link';
import { useCommand } from '@/app/_ui/use-command';
import { type PlannedFlights, type PlannedFlightView } from '@/lib/flights/read-planned-flights';
import { formatTenths } from '@/lib/rules/hours';
import { type ReleaseStateName } from '@/lib/rules/release-state';
import { type Purpose } from '@/lib/rules/operations';
import { PURPOSE_WORDS } from '../words';
import { STATE_WORDS } from '../../_flight/state-mark';
import { cancelPlan } from './actions';
import styles from './plans.module.css';

/** The flights of the coming days by aircraft; each can be cancelled where the person may. */
export function PlannedList({ planned, mayCancel }: { planned: PlannedFlights; mayCancel: boolean }) {
  const t = useWords();
  const [said, setSaid] = useState('');
  const withFlights = planned.aircraft.filter(({ flights }) => flights.length > 0);
  const without = planned.aircraft.filter(({ flights }) => flights.length === 0);
  return (
    <>
      <p role="status" className={styles.done}>
        {said}
      </p>
      {withFlights.length === 0 && <EmptyState title={t('Nothing is planned.')} />}
      {withFlights.map(({ aircraftId, registration, baseIdent, zone, flights }) => (
        <section key={aircraftId} className={styles.aircraft} aria-label={registration}>
          <h3>
            {registration} <span className={styles.soft}>{baseIdent}</span>
          </h3>
          <ul className={styles.flights}>
            {flights.map((flight) => (
              <li key={flight.id}>
                <div>
                  <p className={styles.when}>
                    <Say
                      text="<moment/> to <moment2/>"
                      parts={{
                        moment: <Moment at={flight.departAt} zone={flight.from.zone} />,
                        moment2: <Moment at={flight.arriveAt} zone={flight.to.zone} clock />,
                      }}
                    />
                  </p>
                  <p>{inWords(t, flight, baseIdent)}</p>
                  <p className={styles.onward}>
                    {flight.release && (
                      <Link href={`/desk/release/${flight.release.releaseId}`}>
                        {t(STATE_WORDS[flight.release.state])}
                      </Link>
                    )}
                    {(!flight.release || CAME_TO_NOTHING.includes(flight.release.state)) && (
                      <Link
                        href={`/desk/flight?plan=${flight.id}`}
                        aria-label={t('Compose {registration}, {moment}', {
                          registration,
                          moment: momentInWords(flight.departAt, zone),
                        })}
                      >
                        {t('Compose')}
                      </Link>
                    )}
                  </p>
                </div>
                {mayCancel && (
                  <Cancel
                    flight={flight}
                    name={`${registration}, ${momentInWords(flight.departAt, zone)}`}
                    onDone={setSaid}
                  />
                )}
              </li>
            ))}
          </ul>
        </section>
      ))}
      {withFlights.length > 0 && without.length > 0 && (
        <p className={styles.soft}>
          {t('Nothing planned: {without}.', {
            without: without.map(({ registration }) => registration).join(', '),
          })}
        </p>
      )}
    </>
  );
}

/** A release that came to nothing leaves the plan to be composed anew. */
const CAME_TO_NOTHING: readonly ReleaseStateName[] = ['void', 'withdrawn'];

const inWords = (t: Translate, flight: PlannedFlightView, baseIdent: string): string =>
  [
    flight.pilot ?? t('No pilot named yet'),
    flight.plannedTenths === null ? null : t('{tenths} h', { tenths: formatTenths(flight.plannedTenths) }),
    flight.from.ident === baseIdent && flight.to.ident === baseIdent
      ? null
      : t('{ident} to {ident2}', { ident: flight.from.ident, ident2: flight.to.ident }),
    flight.rules,
    flight.purpose === null ? null : (PURPOSE_WORDS[flight.purpose as Purpose] ?? flight.purpose),
    flight.words || null,
    t('planned by {plannedBy}{which}', {
      plannedBy: flight.plannedBy,
      which:
        flight.fromFile === null
          ? ''
          : t(' from {fromFile}', { fromFile: flight.fromFile || t('pasted text') }),
    }),
  ]
    .filter((part) => part !== null)
    .join(' · ');

/** Cancelling asks once more: a plan that is gone changes what the mechanic takes up first. */
function Cancel(props: { flight: PlannedFlightView; name: string; onDone: (words: string) => void }) {
  const t = useWords();
  const { flight, name, onDone } = props;
  const [asks, setAsks] = useState(false);
  const command = useCommand<Record<string, never>, unknown>({
    action: ({ requestId }) => cancelPlan({ requestId, plannedFlightId: flight.id }),
    start: {},
    onDone: () => onDone(t('Cancelled: {name}.', { name })),
  });
  if (!asks) {
    return (
      <ButtonRow>
        <Button aria-label={t('Cancel {name}', { name })} onClick={() => setAsks(true)}>
          {t('Cancel')}
        </Button>
      </ButtonRow>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={t('Yes, cancel it')}
      label={t('Cancel {name}?', { name })}
      beside={
        <Button weight="quiet" onClick={() => setAsks(false)}>
          {t('Keep it')}
        </Button>
      }
    >
      <p>{t('Cancel this planned flight?')}</p>
    </CommandForm>
  );
}
