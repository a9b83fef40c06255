'use server';

import { headers } from 'next/headers';
import { signInInput } from '@/lib/access/account/schema';
import { askSecondStep, type SecondStep } from '@/lib/access/sign-in';
import { senderIn } from '../_session/sender-in';

const asked = signInInput.omit({ proof: true });

/**
 * What the second step can be done with, for somebody whose password is right. It signs nobody in, and counts a wrong
 * password like any other.
 */
export async function secondStep(raw: unknown): Promise<SecondStep | null> {
  const given = asked.safeParse(raw);
  if (!given.success) return null;
  return askSecondStep(given.data.email, given.data.password, new Date(), senderIn(await headers()));
}
