'use server';

import { signInInput } from '@/lib/access/account/schema';
import { askSecondStep, type SecondStep } from '@/lib/access/sign-in';

const asked = signInInput.omit({ proof: true });

/**
 * What the second step can be done with, for somebody whose password is right. It signs nobody in, and counts a wrong
 * password like any other.
 */
export async function secondStep(raw: unknown): Promise<SecondStep | null> {
  const given = asked.safeParse(raw);
  return given.success ? askSecondStep(given.data.email, given.data.password, new Date()) : null;
}
