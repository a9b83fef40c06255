/**
 * What a phone holds a reading against once the desk has corrected an earlier one that this phone sent: what it took along,
 * no more its own message. Our own design, no source.
 */
import { expect, test } from 'vitest';
import { knownMeters } from '@/app/ramp/out/meters/readings-here';
import type { Outgoing } from '@/app/ramp/_phone/shapes';
import type { PackAircraft, PackFlight } from '@/lib/walkarounds/pack';

const flightOf = (out: PackFlight['out']): PackFlight => ({
  releaseId: 'flight',
  departAt: '2026-11-25T15:00:00Z',
  arriveAt: '2026-11-25T17:00:00Z',
  pilotId: 'rue',
  pilotName: 'Rue Fernhollow',
  outcome: 'go',
  limits: [],
  out,
});
const TRUE_OUT = { hobbsTenths: 21234, tachTenths: 19876, at: '2026-11-25T15:00:00.000Z' };
const MISTYPED = { hobbsTenths: 22134, tachTenths: 19876, readAt: '2026-11-25T15:00:00.000Z' };

/** Only what the readings are taken from; the rest of an aircraft has no part in it. */
const aircraftOf = (flights: readonly PackFlight[], meters: PackAircraft['meters']) =>
  ({ id: 'aircraft', flights, meters }) as PackAircraft;

const message = (state: Outgoing['state'], kind: 'meters-out' | 'meters-in' = 'meters-out'): Outgoing => ({
  seq: 1,
  id: 'message',
  personId: 'rue',
  aircraftId: 'aircraft',
  kind,
  label: '',
  path: 'meters',
  message: { releaseId: 'flight', ...MISTYPED },
  photoId: null,
  after: [],
  state,
  problem: null,
  answer: null,
  queuedAt: MISTYPED.readAt,
  sentAt: null,
  tries: 1,
});

test('a departure that was sent and then corrected: what was taken along counts', () => {
  const flight = flightOf(TRUE_OUT);
  const known = knownMeters(aircraftOf([flight], TRUE_OUT), flight, [message('sent')]);
  expect(known.departure).toEqual(TRUE_OUT);
  expect(known.readings).toEqual([TRUE_OUT, TRUE_OUT]);
  expect(known.last).toEqual(TRUE_OUT);
});

test('a return that was sent and then corrected, its flight no longer taken along', () => {
  const next = { ...flightOf(null), releaseId: 'next' };
  const known = knownMeters(aircraftOf([next], TRUE_OUT), next, [message('sent', 'meters-in')]);
  expect(known.readings).toEqual([TRUE_OUT]);
});

test.each(['waiting', 'sending', 'sent'] as const)(
  'what was taken along before does not know of it yet: its own reading counts (%s)',
  (state) => {
    const flight = flightOf(null);
    const before = { hobbsTenths: 21234, tachTenths: 19876, at: null };
    const known = knownMeters(aircraftOf([flight], before), flight, [message(state)]);
    expect(known.departure).toMatchObject({ hobbsTenths: 22134 });
    expect(known.last).toMatchObject({ hobbsTenths: 22134 });
  },
);
