import Link from './link';
import { type ReactNode } from 'react';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { Caution } from './caution';
import { PlacesNav } from './places-nav';
import { placesFor } from './places';
import styles from './shell.module.css';
import { SignOut } from './sign-out';
import { WheelMark } from './wheel-mark';

/** The frame of every signed-in screen: whose fleet, who is working, where one can go, and the caution at the foot. */
export function Shell({ who, children }: { who: WhoAmI; children: ReactNode }) {
  const places = placesFor(who.roles);
  return (
    <div className={`${styles.shell} ${places.length > 1 ? styles.withFootNav : ''}`}>
      <header className={`${styles.header} not-on-paper`}>
        {/* Inside a landmark, because alarms with links of their own may stand above it. */}
        <a href="#content" className={styles.skip}>
          Skip to the content
        </a>
        <div className={styles.strip}>
          <Link href="/" className={styles.home}>
            <WheelMark size={30} />
            <span className={styles.name}>Wheelchock</span>
          </Link>
          <div className={styles.who}>
            <span className={styles.operator}>{who.operatorName}</span>
            <span className={styles.person}>
              {who.name}
              <span className={styles.roles}>, {who.roles.join(', ')}</span>
            </span>
          </div>
          {Boolean(who.unreadNews) && (
            <Link href="/ramp/mine" className={styles.newsLink}>
              {who.unreadNews} new<span className={styles.newsAbout}> about your write-ups and flights</span>
            </Link>
          )}
          <SignOut />
        </div>
        {places.length > 1 && <PlacesNav places={places} />}
      </header>
      <main id="content" tabIndex={-1} className={styles.content}>
        {children}
      </main>
      <footer className={styles.foot}>
        <Caution />
      </footer>
    </div>
  );
}
