import { type ReactNode } from 'react';
import styles from './form-group.module.css';

/** A part of a long form under its own name; on a phone the groups follow one another. */
export function FormGroup(props: { title: ReactNode; hint?: ReactNode; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend className={styles.title}>{props.title}</legend>
      {props.hint && <p className={styles.hint}>{props.hint}</p>}
      {props.children}
    </fieldset>
  );
}
