import { type ReactNode } from 'react';
import buttons from './button.module.css';
import page from './page.module.css';

/**
 * What the error page and "not found" are made of. They come with every screen, so they leave out the framework's link, which would
 * come with each of them once more (4 kB, and the ramp counts them). After an error a full load is right anyhow.
 */
export function BareTitle({ children, lead }: { children: ReactNode; lead: ReactNode }) {
  return (
    <div className={page.title}>
      <div className={page.head}>
        <h1>{children}</h1>
      </div>
      <p className={page.lead}>{lead}</p>
    </div>
  );
}

export function BareCard({ children }: { children: ReactNode }) {
  return <div className={page.card}>{children}</div>;
}

/** To an address by a full load. */
export function WayOut({ href, children }: { href: string; children: ReactNode }) {
  return (
    <a href={href} className={`${buttons.button} ${buttons.plain}`}>
      {children}
    </a>
  );
}

/** What to press first, and the ways out beside it. */
export function BareActs(props: { press: ReactNode; onPress: () => void; children: ReactNode }) {
  return (
    <div className={buttons.row}>
      <button type="button" className={`${buttons.button} ${buttons.main}`} onClick={props.onPress}>
        {props.press}
      </button>
      {props.children}
    </div>
  );
}
