'use client';

import { useRouter } from 'next/navigation';
import { startTransition, use, useCallback, useEffect, useMemo, useState, type ReactNode } from 'react';
import { chosenIn, firstHad, LANGUAGE_COOKIE, type Language } from '@/lib/words/language';
import { inEnglish } from '@/lib/words/translate';
import { Spoken } from './context';
import { fetchedOnce } from './fetched-once';

const loadSpanish = fetchedOnce(() => import('@/lib/words/es/phone'));

const A_YEAR_S = 365 * 24 * 60 * 60;

/**
 * Gives the words to everything that runs in the browser. `language` is what the server answered; `null` on the page that is the
 * same for everybody (/ramp/out), where the browser's own cookie and settings decide once the page is alive.
 */
export function WordsProvider({ language, children }: { language: Language | null; children: ReactNode }) {
  const router = useRouter();
  const [chosen, setChosen] = useState<Language | null>(null);
  const spoken = chosen ?? language ?? 'en';
  const t = (spoken === 'es' ? use(loadSpanish()) : null) ?? inEnglish;

  const speak = useCallback(async (wanted: Language): Promise<boolean> => {
    if (wanted === 'es' && !(await loadSpanish())) return false;
    startTransition(() => setChosen(wanted));
    return true;
  }, []);

  useEffect(() => {
    if (language !== null) return;
    const wanted = chosenIn(document.cookie) ?? firstHad(navigator.languages.join(','));
    if (wanted && wanted !== 'en') void speak(wanted);
  }, [language, speak]);

  useEffect(() => {
    document.documentElement.lang = t.language;
  }, [t]);

  const value = useMemo(
    () => ({
      t,
      choose: async (wanted: Language) => {
        if (!(await speak(wanted))) return false;
        document.cookie = `${LANGUAGE_COOKIE}=${wanted}; path=/; max-age=${A_YEAR_S}; samesite=lax`;
        // What the server drew is drawn anew; what is typed stays.
        startTransition(() => router.refresh());
        return true;
      },
    }),
    [t, speak, router],
  );
  return <Spoken value={value}>{children}</Spoken>;
}
