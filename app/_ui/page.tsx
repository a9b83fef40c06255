import Link from './link';
import { type ReactNode } from 'react';
import styles from './page.module.css';

/** The page's one heading. `back` leads one step up; `side` holds a mark or button beside the heading. */
export function PageTitle(props: {
  children: ReactNode;
  lead?: ReactNode;
  back?: { href: string; label: string };
  side?: ReactNode;
}) {
  const { children, lead, back, side } = props;
  return (
    <div className={styles.title}>
      {back && (
        <Link href={back.href} className={`${styles.back} not-on-paper`}>
          <span aria-hidden="true">←</span> {back.label}
        </Link>
      )}
      <div className={styles.head}>
        <h1>{children}</h1>
        {side}
      </div>
      {lead && <p className={styles.lead}>{lead}</p>}
    </div>
  );
}

/** A part of the page under its own heading. `id` makes it a place to link to. */
export function Section(props: { title: ReactNode; children: ReactNode; id?: string; side?: ReactNode }) {
  const { title, children, id, side } = props;
  return (
    <section id={id} className={styles.section}>
      <div className={styles.head}>
        <h2>{title}</h2>
        {side}
      </div>
      {children}
    </section>
  );
}

/** A sheet of paper for things that belong together. `edge` gives it a thick side in a state's colour. */
export function Card({ children, edge }: { children: ReactNode; edge?: 'red' | 'amber' | 'green' | 'blue' }) {
  return <div className={`${styles.card} ${edge ? styles[edge] : ''}`}>{children}</div>;
}

/** Said where a list is empty: what would be here, and what to do if anything. */
export function EmptyState({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className={styles.empty}>
      <p className={styles.emptyTitle}>{title}</p>
      {children}
    </div>
  );
}

/** Name and value pairs, such as an aircraft's times. */
export function FactList({ facts }: { facts: readonly { name: string; value: ReactNode }[] }) {
  return (
    <dl className={styles.facts}>
      {facts.map((fact) => (
        <div key={fact.name}>
          <dt>{fact.name}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  );
}
