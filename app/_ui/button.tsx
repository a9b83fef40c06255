import { useWords } from '#words';
import Link from './link';
import { type ButtonHTMLAttributes, type ReactNode } from 'react';
import styles from './button.module.css';

/** main: the one thing to do here. plain: other things to do. quiet: small ways out. */
export type Weight = 'main' | 'plain' | 'quiet';

const look = (weight: Weight, wide: boolean) =>
  `${styles.button} ${styles[weight]} ${wide ? styles.wide : ''}`;

/** A button that does something at once; it never submits a form by accident. */
export function Button({
  weight = 'plain',
  wide = false,
  type = 'button',
  ...rest
}: Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> & { weight?: Weight; wide?: boolean }) {
  return <button {...rest} type={type} className={look(weight, wide)} />;
}

/** A link that looks like a button, for the next step on another page. */
export function LinkButton(props: { href: string; children: ReactNode; weight?: Weight; wide?: boolean }) {
  const { href, children, weight = 'plain', wide = false } = props;
  return (
    <Link href={href} className={look(weight, wide)}>
      {children}
    </Link>
  );
}

/**
 * Sends the form. While the answer is awaited it says so and takes no second press, but keeps the focus: a disabled
 * button would lose it.
 */
export function SubmitButton(props: {
  children: ReactNode;
  pending?: boolean;
  pendingWords?: string;
  weight?: Weight;
  wide?: boolean;
}) {
  const t = useWords();
  const { children, pending = false, pendingWords = t('Sending…'), weight = 'main', wide = false } = props;
  return (
    <button type="submit" className={look(weight, wide)} aria-disabled={pending || undefined}>
      <span className={styles.words}>
        <span className={pending ? styles.hidden : undefined} aria-hidden={pending || undefined}>
          {children}
        </span>
        <span className={pending ? undefined : styles.hidden} aria-hidden={!pending || undefined}>
          {pendingWords}
        </span>
      </span>
    </button>
  );
}

/** Buttons side by side; they wrap on a phone. */
export function ButtonRow({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}
