/** The languages of the screens. English is the source: its words stand in the code. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** Each in its own words, as a person looks for it. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/** Read by the server and, on pages that are the same for everybody, by the browser. It says nothing about a person. */
export const LANGUAGE_COOKIE = 'wheelchock-language';

export const isLanguage = (word: unknown): word is Language => LANGUAGES.some((one) => one === word);

/**
 * The first of the languages asked for that is to be had (RFC 9110, 12.5.4, read from memory: the highest q first, in the order
 * written among equals; q=0 means never). `null`: none of them.
 */
export function firstHad(acceptLanguage: string): Language | null {
  const asked = acceptLanguage
    .split(',')
    .map((range) => {
      const [tag = '', ...rest] = range.trim().toLowerCase().split(';');
      const q = rest.map((part) => /^\s*q=([\d.]+)\s*$/.exec(part)?.[1]).find((found) => found !== undefined);
      return { language: tag.trim().split('-')[0], q: q === undefined ? 1 : Number(q) };
    })
    .filter(({ q }) => q > 0)
    .sort((a, b) => b.q - a.q);
  for (const { language } of asked) if (isLanguage(language)) return language;
  return null;
}

/** What a person chose on screen, out of a Cookie header or document.cookie. */
export function chosenIn(cookies: string): Language | null {
  const pair = cookies.split(';').find((one) => one.trim().startsWith(`${LANGUAGE_COOKIE}=`));
  const chosen = pair?.split('=')[1]?.trim();
  return isLanguage(chosen) ? chosen : null;
}
