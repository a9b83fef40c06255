import { createContext } from 'react';
import { type Language } from '@/lib/words/language';
import { inEnglish, type Translate } from '@/lib/words/translate';

interface Spoken {
  readonly t: Translate;
  /** False when the words of the language could not be fetched. */
  readonly choose: (language: Language) => Promise<boolean>;
}

export const Spoken = createContext<Spoken>({ t: inEnglish, choose: () => Promise.resolve(false) });
