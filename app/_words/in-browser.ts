import { use, type ReactNode } from 'react';
import { type Translate } from '@/lib/words/translate';
import { Spoken } from './context';
import { englishIn } from './english';
import { sayWith, type SayProps } from './say';

/**
 * `#words` in components that run in the browser (and are drawn on the server first). Components of the server get in-server.ts by
 * the same name: package.json, "imports".
 */
export const useWords = (): Translate => use(Spoken).t;

/** Words with elements in them: see say.ts. */
export function Say(props: SayProps): ReactNode {
  return sayWith(useWords(), props);
}

/** The mark of what stays English on a page in another language: the engine's lines, law, whatever is signed (WCAG 3.1.2). */
export const useEnglish = (): { lang?: 'en' } => (useWords().language === 'en' ? {} : { lang: 'en' });

/** The engine's lines, the text of law, whatever is signed: they stay English on every page. */
export function English({ children }: { children: ReactNode }): ReactNode {
  return englishIn(useWords(), children);
}
