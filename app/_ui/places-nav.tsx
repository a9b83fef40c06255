'use client';

import { useWords } from '#words';
import Link from './link';
import { usePathname } from 'next/navigation';
import { type ReactNode } from 'react';
import { type PlaceToWork } from './places';
import styles from './shell.module.css';

/** The places to work: under the header on a wide screen, along the bottom edge, under the thumb, on a phone. */
export function PlacesNav({ places }: { places: readonly PlaceToWork[] }) {
  const t = useWords();
  const path = usePathname();
  return (
    <nav aria-label={t('Places to work')} className={styles.nav}>
      {places.map((place) => (
        <Link
          key={place.href}
          href={place.href}
          aria-current={path === place.href || path.startsWith(`${place.href}/`) ? 'page' : undefined}
        >
          <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true" className={styles.navMark}>
            {MARKS[place.href]}
          </svg>
          {t(place.label)}
        </Link>
      ))}
    </nav>
  );
}

/** A cone, a spanner, a board, a cabinet of drawers. */
const MARKS: Record<PlaceToWork['href'], ReactNode> = {
  '/ramp': <path d="M10.5 3h3l1.5 5.5H9zM8.4 10.5h7.2L17.2 16H6.8zM3 18h18v3H3z" />,
  '/bench': (
    <path d="M20.5 5.5 17 9l-2.5-.5L14 6l3.5-3.5A5.5 5.5 0 0 0 10.4 9.6L3 17l4 4 7.4-7.4a5.5 5.5 0 0 0 6.1-8.1Z" />
  ),
  '/desk': <path d="M3 4h18v4H3zM3 10h6v4H3zM11 10h10v4H11zM3 16h6v4H3zM11 16h10v4H11z" />,
  '/office': (
    <path
      d="M4 3h16v18H4zM6 5v4h12V5zM6 11v3h12v-3zM6 16v3h12v-3zM10 6.2h4v1.6h-4zM10 11.8h4v1.4h-4zM10 16.8h4v1.4h-4z"
      fillRule="evenodd"
    />
  ),
};
