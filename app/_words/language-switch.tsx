'use client';

import { use, useState } from 'react';
import { LANGUAGE_NAMES, LANGUAGES } from '@/lib/words/language';
import { Spoken } from './context';
import styles from './language-switch.module.css';

/** For the foot of every screen, signed in or not. Each language is named in itself, for whoever reads only that one. */
export function LanguageSwitch() {
  const { t, choose } = use(Spoken);
  const [failed, setFailed] = useState(false);
  return (
    <div role="group" aria-label={t('Language')} className={`${styles.languages} not-on-paper`}>
      {LANGUAGES.map((language) => (
        <button
          key={language}
          type="button"
          lang={language}
          className={styles.language}
          aria-pressed={t.language === language}
          onClick={async () => setFailed(!(await choose(language)))}
        >
          {LANGUAGE_NAMES[language]}
        </button>
      ))}
      {t.language !== 'en' && <span>{t('Reasons, law and what is signed stay in English.')}</span>}
      <span role="status">{failed && t('Not to be had without a connection.')}</span>
    </div>
  );
}
