'use client';

import {
  createContext,
  useCallback,
  useContext,
  useEffect,
  useRef,
  useState,
  type ReactNode,
  type ToggleEvent,
} from 'react';
import styles from './acts.module.css';

const Said = createContext<(words: string) => void>(() => undefined);

/** Says that an act is done, in words, and folds the form away. For forms inside `Acting`. */
export const useSaid = () => useContext(Said);

/**
 * Around everything that can be done on a page. Holds the word of what was done last: forms come and go with the
 * state of the write-up, this stays, and takes the focus so that a keyboard is never left on a form that is gone.
 */
export function Acting({ children }: { children: ReactNode }) {
  const [done, setDone] = useState<{ words: string; at: number } | null>(null);
  const around = useRef<HTMLDivElement>(null);
  const word = useRef<HTMLParagraphElement>(null);
  const say = useCallback((words: string) => {
    around.current?.querySelectorAll('details[name="act"][open]').forEach((act) => {
      act.removeAttribute('open');
    });
    setDone((last) => ({ words, at: (last?.at ?? 0) + 1 }));
  }, []);
  useEffect(() => {
    if (done) word.current?.focus();
  }, [done]);
  return (
    <Said value={say}>
      <div ref={around}>
        <div role="status">
          {done && (
            <p ref={word} tabIndex={-1} className={styles.done}>
              {done.words}
            </p>
          )}
        </div>
        {children}
      </div>
    </Said>
  );
}

/** The acts of one place, each a line that unfolds. */
export function ActList({ children }: { children: ReactNode }) {
  return <div className={styles.acts}>{children}</div>;
}

/**
 * One act: its name, what it leads to, and the form. Opening one closes the others (they share a name); a form once
 * opened keeps what was typed. Forms not opened are not there, so that no password box waits to be filled by chance.
 */
export function Act(props: { title: string; hint?: ReactNode; children: ReactNode }) {
  const { title, hint, children } = props;
  const [opened, setOpened] = useState(false);
  const onToggle = (event: ToggleEvent<HTMLDetailsElement>) => {
    if (event.newState === 'open') setOpened(true);
  };
  return (
    <details name="act" className={styles.act} onToggle={onToggle}>
      <summary>
        <span className={styles.title}>{title}</span>
        {hint && <span className={styles.hint}>{hint}</span>}
      </summary>
      {opened && <div className={styles.form}>{children}</div>}
    </details>
  );
}
