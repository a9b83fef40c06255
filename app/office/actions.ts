'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { changeOperator } from '@/lib/access/account/change-operator';
import { markStep } from '@/lib/set-up/mark-step';

export async function callStep(input: unknown) {
  const result = await markStep(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export async function saveSchool(input: unknown) {
  const result = await changeOperator(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}
