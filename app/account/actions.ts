'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { signedInRef } from '@/app/_session/actor-ref';
import { changeOwnSettings } from '@/lib/access/account/change-own-settings';
import { changePassword as change } from '@/lib/access/account/change-password';
import { endSession as end } from '@/lib/access/account/end-session';
import { beginFactor } from '@/lib/access/second-factor/begin';
import { confirmFactor } from '@/lib/access/second-factor/confirm';
import { endFactor as endOne } from '@/lib/access/second-factor/end';
import { makeRecoveryCodes } from '@/lib/access/second-factor/make-recovery-codes';
import { type Result } from '@/lib/problems';
import { isLanguage, LANGUAGE_COOKIE } from '@/lib/words/language';

function shownAnew<T>(result: Result<T>): Result<T> {
  if (result.ok) revalidatePath('/account');
  return result;
}

export const endSession = async (input: unknown) => shownAnew(await end(await signedInRef(), input));
export const changePassword = async (input: unknown) => shownAnew(await change(await signedInRef(), input));
export const begin = async (input: unknown) => beginFactor(await signedInRef(), input);
export const confirm = async (input: unknown) => shownAnew(await confirmFactor(await signedInRef(), input));
export const endFactor = async (input: unknown) => shownAnew(await endOne(await signedInRef(), input));
export const makeCodes = async (input: unknown) =>
  shownAnew(await makeRecoveryCodes(await signedInRef(), input));

const A_YEAR = 365 * 24 * 60 * 60;

/** Also tells this browser the language, which it goes by before anybody is signed in. */
export async function changeSettings(input: unknown) {
  const result = await changeOwnSettings(await signedInRef(), input);
  if (result.ok) {
    const jar = await cookies();
    const { language } = result.value;
    if (isLanguage(language))
      jar.set(LANGUAGE_COOKIE, language, { path: '/', maxAge: A_YEAR, sameSite: 'lax' });
    else jar.delete(LANGUAGE_COOKIE);
  }
  return shownAnew(result);
}
