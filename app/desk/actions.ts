'use server';

import { signedInRef } from '@/app/_session/actor-ref';
import { answerFlight } from '@/lib/releases/answer-flight';
import { type FlightAsTyped } from '@/lib/releases/flight-form';
import { correctMeters as correct } from '@/lib/releases/correct-meters';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';

export const askForAnswer = async (flight: FlightAsTyped) => answerFlight(await signedInRef(), flight);

export const release = async (
  flight: FlightAsTyped & { factsVersion: number; limitsPassedOn: boolean; requestId: string },
) => releaseFlight(await signedInRef(), flight);

export const recordMeters = async (reading: { moment: 'out' | 'in' } & Record<string, unknown>) =>
  reading.moment === 'in'
    ? readMetersIn(await signedInRef(), reading)
    : readMetersOut(await signedInRef(), reading);

export const correctMeters = async (correction: Record<string, unknown>) =>
  correct(await signedInRef(), correction);
