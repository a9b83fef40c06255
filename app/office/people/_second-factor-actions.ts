'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { changeOperator } from '@/lib/access/account/change-operator';

interface Asked {
  readonly requestId: string;
  readonly signersNeedSecondFactor: boolean;
  readonly password: string;
}

export async function askForSecondFactor(input: Asked) {
  const result = await changeOperator(await signedInRef(), input);
  if (result.ok) revalidatePath('/office/people');
  return result;
}
