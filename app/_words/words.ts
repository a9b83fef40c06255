import 'server-only';
import { cookies, headers } from 'next/headers';
import { cache } from 'react';
import { firstHad, isLanguage, LANGUAGE_COOKIE, type Language } from '@/lib/words/language';
import inSpanish from '@/lib/words/es';
import { inEnglish, type Translate } from '@/lib/words/translate';

const SPOKEN: Readonly<Record<Language, Translate>> = { en: inEnglish, es: inSpanish };

/**
 * Chosen on screen, else what the browser asks for, else English. `null` on a page that is made once for everybody: there the
 * browser decides (words-provider.tsx).
 */
export const languageAsked = cache(async (): Promise<Language | null> => {
  const chosen = (await cookies()).get(LANGUAGE_COOKIE)?.value;
  if (isLanguage(chosen)) return chosen;
  const sent = await headers();
  // Every request has a host; a page that is made without one is made for everybody.
  return sent.has('host') ? (firstHad(sent.get('accept-language') ?? '') ?? 'en') : null;
});

/** For pages and async components of the server, metadata and routes: `const t = await words();`. */
export const words = cache(async (): Promise<Translate> => SPOKEN[(await languageAsked()) ?? 'en']);
