'use client';

import { Say, useWords } from '#words';
import { useState } from 'react';
import { type PackAircraft, type PackFlight, type RampPack } from '@/lib/walkarounds/pack';
import { type ReadingMoment } from '@/lib/rules/meters';
import { Moment } from '../../../_ui/moment';
import { EmptyState, PageTitle } from '../../../_ui/page';
import { useOutbox } from '../../_phone/outbox';
import shell from '../out.module.css';
import { Go } from '../place';
import { AsRead } from './as-read';
import { MetersForm } from './meters-form';
import { knownMeters } from './readings-here';
import { WrittenDown, type JustRead } from './written-down';

interface MetersProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly query: URLSearchParams;
}

/** Hobbs and tach at departure or return of a released flight: `?release=ID&moment=out|in`. Works with no signal. */
export function MetersView({ pack, aircraft, query }: MetersProps) {
  const releaseId = query.get('release') ?? '';
  const moment: ReadingMoment = query.get('moment') === 'in' ? 'in' : 'out';
  // Another flight, or its other end, is another screen.
  return <OfFlight key={`${releaseId} ${moment}`} {...{ pack, aircraft, releaseId, moment }} />;
}

interface OfFlightProps extends Omit<MetersProps, 'query'> {
  readonly releaseId: string;
  readonly moment: ReadingMoment;
}

function OfFlight(props: OfFlightProps) {
  const t = useWords();
  const { pack, aircraft, releaseId, moment } = props;
  const flight = useFlight(aircraft, releaseId);
  const [justRead, setJustRead] = useState<JustRead | null>(null);
  return (
    <div className={shell.column}>
      <div>
        <Go href={`/ramp/${aircraft.id}`} className={shell.back}>
          <span aria-hidden="true">←</span> {aircraft.registration}
        </Go>
        <PageTitle
          lead={
            flight && (
              <>
                <Say
                  text="Flight of <moment/>{pilotName}"
                  parts={{ moment: <Moment at={flight.departAt} zone={aircraft.zone} /> }}
                  values={{ pilotName: flight.pilotName && `, ${flight.pilotName}` }}
                />
              </>
            )
          }
        >
          {moment === 'out' ? t('Meters at departure') : t('Meters at return')}
        </PageTitle>
      </div>
      {!flight ? (
        <EmptyState title={t('This flight is not on this phone.')}>
          <p>
            <Say
              text="It was released after <moment/>, or it is back already. With a connection, open the aircraft again."
              parts={{ moment: <Moment at={pack.asOf} zone={aircraft.zone} /> }}
            />
          </p>
        </EmptyState>
      ) : justRead ? (
        <WrittenDown {...{ pack, aircraft, flight, justRead }} onPutRight={() => setJustRead(null)} />
      ) : (
        <ToBeRead {...props} flight={flight} onRead={setJustRead} />
      )}
    </div>
  );
}

function ToBeRead(props: OfFlightProps & { flight: PackFlight; onRead: (read: JustRead) => void }) {
  const t = useWords();
  const { pack, aircraft, moment, flight, onRead } = props;
  const known = knownMeters(aircraft, flight, useOutbox());
  const there = moment === 'out' ? known.departure : known.back;
  if (!mayRead(pack, flight)) {
    return (
      <EmptyState title={t('These meters are not yours to write down.')}>
        <p>
          {t('{pilotName} does it as pilot in command, or somebody at the desk.', {
            pilotName: flight.pilotName ?? t('The pilot in command'),
          })}
        </p>
      </EmptyState>
    );
  }
  if (there) return <AsRead reading={there} aircraft={aircraft} flight={flight} moment={moment} />;
  return <MetersForm {...{ aircraft, flight, moment, known, onRead }} />;
}

/** Those who may: the flight's pilot in command, dispatchers, managers. The server asks again. */
const mayRead = ({ person }: RampPack, { pilotId }: PackFlight): boolean =>
  pilotId === person.id || person.roles.some((role) => role === 'dispatcher' || role === 'manager');

/** The flight; it stays on this screen when a new pack, which knows that it is back, no longer has it. */
function useFlight(aircraft: PackAircraft, releaseId: string): PackFlight | null {
  const found = aircraft.flights.find((one) => one.releaseId === releaseId) ?? null;
  const [last, setLast] = useState(found);
  if (found !== null && found !== last) setLast(found);
  return found ?? last;
}
