'use server';

import { after } from 'next/server';
import { log } from '@/lib/log';
import { askForReset } from '@/lib/people/ask-for-reset';
import { type Result } from '@/lib/problems';

/** The same answer at once for every address; what is to be done is done after it, so that its time tells nothing either. */
export async function ask({ email }: { email: string }): Promise<Result<null>> {
  const typed = typeof email === 'string' ? email.trim() : '';
  if (typed === '') {
    const say = 'Enter your e-mail address.';
    return Promise.resolve({ ok: false, problem: { code: 'invalid', say, fields: { email: [say] } } });
  }
  after(async () => {
    try {
      await askForReset(typed);
    } catch (error) {
      log.error('set aside', error, { about: 'reset' });
    }
  });
  return Promise.resolve({ ok: true, value: null });
}
