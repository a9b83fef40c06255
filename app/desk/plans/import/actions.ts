'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { checkImport } from '@/lib/flights/import/check-import';
import { importPlans } from '@/lib/flights/import/import-plans';

export const checkFile = async (input: unknown) => checkImport(await signedInRef(), input);

export async function takeIn(input: unknown) {
  const result = await importPlans(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}
