'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { addWebhook } from '@/lib/feeds/add-webhook';
import { endKey } from '@/lib/feeds/end-key';
import { endWebhook } from '@/lib/feeds/end-webhook';
import { issueKey } from '@/lib/feeds/issue-key';
import { sendAgain } from '@/lib/feeds/send-again';
import { type Result } from '@/lib/problems';

function shownAnew<T>(result: Result<T>): Result<T> {
  if (result.ok) revalidatePath('/desk/feeds');
  return result;
}

export const issue = async (input: unknown) => shownAnew(await issueKey(await signedInRef(), input));
export const end = async (input: unknown) => shownAnew(await endKey(await signedInRef(), input));
export const addHook = async (input: unknown) => shownAnew(await addWebhook(await signedInRef(), input));
export const endHook = async (input: unknown) => shownAnew(await endWebhook(await signedInRef(), input));
export const again = async (input: unknown) => shownAnew(await sendAgain(await signedInRef(), input));
