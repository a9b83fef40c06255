import { use, type ReactNode } from 'react';
import { type Translate } from '@/lib/words/translate';
import { englishIn } from './english';
import { sayWith, type SayProps } from './say';
import { words } from './words';

/** `#words` in components of the server that are no async functions; those write `const t = await words()`. See in-browser.ts. */
export const useWords = (): Translate => use(words());

export function Say(props: SayProps): ReactNode {
  return sayWith(useWords(), props);
}

export const useEnglish = (): { lang?: 'en' } => (useWords().language === 'en' ? {} : { lang: 'en' });

/** The engine's lines, the text of law, whatever is signed: they stay English on every page. */
export function English({ children }: { children: ReactNode }): ReactNode {
  return englishIn(useWords(), children);
}
