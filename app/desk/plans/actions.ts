'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';

export async function plan(input: unknown) {
  const result = await planFlight(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export async function cancelPlan(input: unknown) {
  const result = await cancelPlannedFlight(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}
