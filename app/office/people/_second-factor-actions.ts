'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { changeOperator } from '@/lib/access/account/change-operator';

export async function askForSecondFactor(input: { requestId: string; signersNeedSecondFactor: boolean }) {
  const result = await changeOperator(await signedInRef(), input);
  if (result.ok) revalidatePath('/office/people');
  return result;
}
