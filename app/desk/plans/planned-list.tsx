'use client';

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
  const [said, setSaid] = useState('');
  const withFlights = planned.aircraft.filter(({ flights }) => flights.length > 0);
  const without = planned.aircraft.filter(({ flights }) => flights.length === 0);
  return (
    <>
      <p role="status" className={styles.done}>
        {said}
      </p>
      {withFlights.length === 0 && <EmptyState title="Nothing is planned." />}
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
                    <Moment at={flight.departAt} zone={flight.from.zone} /> to{' '}
                    <Moment at={flight.arriveAt} zone={flight.to.zone} clock />
                  </p>
                  <p>{inWords(flight, baseIdent)}</p>
                  <p className={styles.onward}>
                    {flight.release && (
                      <Link href={`/desk/release/${flight.release.releaseId}`}>
                        {STATE_WORDS[flight.release.state]}
                      </Link>
                    )}
                    {(!flight.release || CAME_TO_NOTHING.includes(flight.release.state)) && (
                      <Link
                        href={`/desk/flight?plan=${flight.id}`}
                        aria-label={`Compose ${registration}, ${momentInWords(flight.departAt, zone)}`}
                      >
                        Compose
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
          Nothing planned: {without.map(({ registration }) => registration).join(', ')}.
        </p>
      )}
    </>
  );
}

/** A release that came to nothing leaves the plan to be composed anew. */
const CAME_TO_NOTHING: readonly ReleaseStateName[] = ['void', 'withdrawn'];

const inWords = (flight: PlannedFlightView, baseIdent: string): string =>
  [
    flight.pilot ?? 'No pilot named yet',
    flight.plannedTenths === null ? null : `${formatTenths(flight.plannedTenths)} h`,
    flight.from.ident === baseIdent && flight.to.ident === baseIdent
      ? null
      : `${flight.from.ident} to ${flight.to.ident}`,
    flight.rules,
    flight.purpose === null ? null : (PURPOSE_WORDS[flight.purpose as Purpose] ?? flight.purpose),
    flight.words || null,
    `planned by ${flight.plannedBy}${flight.fromFile === null ? '' : ` from ${flight.fromFile || 'pasted text'}`}`,
  ]
    .filter((part) => part !== null)
    .join(' · ');

/** Cancelling asks once more: a plan that is gone changes what the mechanic takes up first. */
function Cancel(props: { flight: PlannedFlightView; name: string; onDone: (words: string) => void }) {
  const { flight, name, onDone } = props;
  const [asks, setAsks] = useState(false);
  const command = useCommand<Record<string, never>, unknown>({
    action: ({ requestId }) => cancelPlan({ requestId, plannedFlightId: flight.id }),
    start: {},
    onDone: () => onDone(`Cancelled: ${name}.`),
  });
  if (!asks) {
    return (
      <ButtonRow>
        <Button aria-label={`Cancel ${name}`} onClick={() => setAsks(true)}>
          Cancel
        </Button>
      </ButtonRow>
    );
  }
  return (
    <CommandForm
      command={command}
      submit="Yes, cancel it"
      label={`Cancel ${name}?`}
      beside={
        <Button weight="quiet" onClick={() => setAsks(false)}>
          Keep it
        </Button>
      }
    >
      <p>Cancel this planned flight?</p>
    </CommandForm>
  );
}
