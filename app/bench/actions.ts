'use server';

import { revalidatePath } from 'next/cache';
import { type Command } from '@/lib/access/service';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { recordServicing } from '@/lib/findings/record-servicing';
import { type Result } from '@/lib/problems';
import { abandonWork } from '@/lib/work/abandon-work';
import { enterWork } from '@/lib/work/enter-work';
import { logCheckFlight } from '@/lib/work/log-check-flight';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { type z } from 'zod';
import { signedInRef } from '../_session/actor-ref';

/** Sends what was typed through the one door; the answer goes back as it is. Every screen is drawn anew after a write. */
async function through<T>(command: Command<z.ZodType, T>, input: unknown): Promise<Result<T>> {
  const result = await command(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export const judge = async (input: unknown) => through(judgeSeverity, input);
export const findWithin = async (input: unknown) => through(findWithinLimits, input);
export const defer = async (input: unknown) => through(beginDeferral, input);
export const placardIsUp = async (input: unknown) => through(placePlacard, input);
export const servicingDone = async (input: unknown) => through(recordServicing, input);
export const start = async (input: unknown) => through(startWork, input);
export const enter = async (input: unknown) => through(enterWork, input);
export const sign = async (input: unknown) => through(signWork, input);
export const giveUp = async (input: unknown) => through(abandonWork, input);
export const checkFlight = async (input: unknown) => through(logCheckFlight, input);
