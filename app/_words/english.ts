import { createElement, type ReactNode } from 'react';
import { type Translate } from '@/lib/words/translate';

/** What stays English, marked as such on a page in another language (WCAG 3.1.2); in English nothing is added. */
export const englishIn = (t: Translate, children: ReactNode): ReactNode =>
  t.language === 'en' ? children : createElement('span', { lang: 'en' }, children);
