import { Say, useWords } from '#words';
import Link from './link';
import { type ReactNode } from 'react';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { LanguageSwitch } from '../_words/language-switch';
import { Caution } from './caution';
import { KeepsWorker } from './keeps-worker';
import { PlacesNav } from './places-nav';
import { placesFor } from './places';
import { SecondFactorNote } from './second-factor-note';
import styles from './shell.module.css';
import { SignOut } from './sign-out';
import { WheelMark } from './wheel-mark';

/** The frame of every signed-in screen: whose fleet, who is working, where one can go, and the caution at the foot. */
export function Shell({ who, children }: { who: WhoAmI; children: ReactNode }) {
  const t = useWords();
  const places = placesFor(who.roles);
  return (
    <div className={`${styles.shell} ${places.length > 1 ? styles.withFootNav : ''}`}>
      <header className={`${styles.header} not-on-paper`}>
        {/* Inside a landmark, because alarms with links of their own may stand above it. */}
        <a href="#content" className={styles.skip}>
          {t('Skip to the content')}
        </a>
        <div className={styles.strip}>
          <Link href="/" className={styles.home}>
            <WheelMark size={30} />
            <span className={styles.name}>Wheelchock</span>
          </Link>
          <Link href="/account" className={styles.who}>
            <span className={styles.operator}>{who.operatorName}</span>
            <span className={styles.person}>
              {who.name}
              <span className={styles.roles}>, {who.roles.join(', ')}</span>
            </span>
            <span className={styles.unseen}>{t('Your account')}</span>
          </Link>
          {Boolean(who.unreadNews) && (
            <Link href="/ramp/mine" className={styles.newsLink}>
              <Say
                text="{unreadNews} new<span> about your write-ups and flights</span>"
                parts={{ span: <span className={styles.newsAbout} /> }}
                values={{ unreadNews: who.unreadNews }}
              />
            </Link>
          )}
          <SignOut />
        </div>
        {places.length > 1 && <PlacesNav places={places} />}
      </header>
      <main id="content" tabIndex={-1} className={styles.content}>
        {who.secondFactor && <SecondFactorNote lacks={who.secondFactor} />}
        {children}
      </main>
      <footer className={styles.foot}>
        <Caution />
        <Link href="/guide" className={`${styles.guides} not-on-paper`}>
          {t('Guides')}
        </Link>
        <LanguageSwitch />
        <KeepsWorker />
      </footer>
    </div>
  );
}
