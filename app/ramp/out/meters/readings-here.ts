import { neighbours, type LastOnRecord, type MeterReading, type ReadingMoment } from '@/lib/rules/meters';
import { type PackAircraft, type PackFlight } from '@/lib/walkarounds/pack';
import { type Outgoing } from '../../_phone/shapes';

/** A reading of this phone's that the server may not know yet. */
export interface ReadingHere extends MeterReading {
  readonly messageId: string;
  readonly releaseId: string;
  readonly moment: ReadingMoment;
  readonly isSent: boolean;
}

/** The readings of an aircraft that this phone has written down, oldest first. Those refused are not among them. */
export const readingsInOutbox = (outbox: readonly Outgoing[], aircraftId: string): ReadingHere[] =>
  outbox
    .filter((message) => message.aircraftId === aircraftId && message.state !== 'refused')
    .flatMap((message) => {
      const reading = readingIn(message);
      return reading ? [reading] : [];
    });

/** A message of the meters as a reading; null for any other. */
export function readingIn({ id, kind, message, state }: Outgoing): ReadingHere | null {
  if (kind !== 'meters-out' && kind !== 'meters-in') return null;
  const { releaseId, hobbsTenths, tachTenths, readAt } = message;
  if (typeof releaseId !== 'string' || typeof readAt !== 'string') return null;
  if (typeof hobbsTenths !== 'number' || typeof tachTenths !== 'number') return null;
  const moment = kind === 'meters-out' ? 'out' : 'in';
  const isSent = state === 'sent';
  return { messageId: id, releaseId, moment, hobbsTenths, tachTenths, at: readAt, isSent };
}

/** What this phone knows of a flight's meters, from what it took along and what it has written down itself. */
export interface KnownMeters {
  readonly departure: MeterReading | null;
  readonly back: MeterReading | null;
  /** All readings known here that have a time. */
  readonly readings: readonly MeterReading[];
  /** The newest of them; else the figures entered with the aircraft, of which nobody knows when they were read. */
  readonly last: LastOnRecord | null;
}

/** Puts together what the pack says and what waits in the outbox. */
export function knownMeters(
  aircraft: PackAircraft,
  flight: PackFlight,
  outbox: readonly Outgoing[],
): KnownMeters {
  const own = readingsInOutbox(outbox, aircraft.id);
  const here = own.filter((one) => !isInPack(aircraft, one));
  const ofFlight = (moment: ReadingMoment) =>
    own.find((one) => one.releaseId === flight.releaseId && one.moment === moment) ?? null;
  const departure = flight.out ?? ofFlight('out');
  const { hobbsTenths, tachTenths, at } = aircraft.meters;
  const packed =
    hobbsTenths !== null && tachTenths !== null && at !== null ? { hobbsTenths, tachTenths, at } : null;
  const readings = [packed, departure, ...here].filter((one) => one !== null);
  const newest = neighbours(readings, END_OF_TIME).before;
  const entered = hobbsTenths === null && tachTenths === null ? null : aircraft.meters;
  return { departure, back: ofFlight('in'), readings, last: newest ?? entered };
}

/**
 * Whether what this phone took along says of this moment what stands there. Then its own reading, as it was sent, counts no
 * more: the desk may have corrected it since. A flight that is back is not taken along any more.
 */
function isInPack(aircraft: PackAircraft, { releaseId, moment, isSent }: ReadingHere): boolean {
  const flight = aircraft.flights.find((one) => one.releaseId === releaseId);
  return isSent && (!flight || (moment === 'out' && flight.out !== null));
}

const END_OF_TIME = '9999-12-31T00:00:00Z';

/** The readings around an instant as far as this phone knows them. */
export function around({ readings, last }: KnownMeters, at: string) {
  if (readings.length === 0) return { before: last, next: null };
  return neighbours<LastOnRecord & MeterReading>(readings, at);
}
