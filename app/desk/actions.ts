'use server';

import { signedInRef } from '@/app/_session/actor-ref';
import { readAirports } from '@/lib/airports/read-airports';
import { type NamedPlace } from '@/lib/releases/place-text';
import { answerFlight } from '@/lib/releases/answer-flight';
import { type FlightAsTyped } from '@/lib/releases/flight-form';
import { correctMeters as correct } from '@/lib/releases/correct-meters';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';

export const askForAnswer = async (flight: FlightAsTyped) => answerFlight(await signedInRef(), flight);

/** Places by identifier or name, for a form. Nothing when they cannot be read: one types the identifier then. */
export async function findPlaces(text: string): Promise<readonly NamedPlace[]> {
  const found = await readAirports(await signedInRef(), { text });
  return found.ok ? found.value.map(({ ident, name, where, zone }) => ({ ident, name, where, zone })) : [];
}

export const release = async (
  flight: FlightAsTyped & { factsVersion: number; limitsPassedOn: boolean; requestId: string },
) => releaseFlight(await signedInRef(), flight);

export const recordMeters = async (reading: { moment: 'out' | 'in' } & Record<string, unknown>) =>
  reading.moment === 'in'
    ? readMetersIn(await signedInRef(), reading)
    : readMetersOut(await signedInRef(), reading);

export const correctMeters = async (correction: Record<string, unknown>) =>
  correct(await signedInRef(), correction);
