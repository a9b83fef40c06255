'use server';

import { acceptRelease } from '@/lib/releases/accept-release';
import { logFlight } from '@/lib/releases/log-flight';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { signedInRef } from '../_session/actor-ref';

/** The pilot in command signs for the aircraft. */
export const accept = async (input: unknown) => acceptRelease(await signedInRef(), input);

/** Airborne, landed, closed. */
export const log = async (input: unknown) => logFlight(await signedInRef(), input);

/** Taken back at the desk, or declined by the pilot in command. */
export const withdraw = async (input: unknown) => withdrawRelease(await signedInRef(), input);
