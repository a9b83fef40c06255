'use client';

import { useWords } from '#words';
import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import { useFormContext } from 'react-hook-form';
import { placeText, identIn, type NamedPlace } from '@/lib/releases/place-text';
import fieldStyles from './fields.module.css';
import { FieldError, Hint, Label, useField } from './fields';
import styles from './place-field.module.css';

const WAIT_MS = 200;
const MOST_SHOWN = 8;

/**
 * A place, by typing: `near` (the operator's bases) stand there at once, airports come as one types. What is typed and not
 * chosen stays as typed, and its identifier counts. Follows the combobox pattern of WAI-ARIA (list, chosen by hand).
 */
export function PlaceField(props: {
  name: string;
  label: string;
  hint?: string;
  near: readonly NamedPlace[];
  /** Asks for places by identifier or name. */
  search: (text: string) => Promise<readonly NamedPlace[]>;
  /** Told of every place that was found, so that its clock is known. */
  onFound?: (places: readonly NamedPlace[]) => void;
}) {
  const t = useWords();
  const { name, label, hint, near, search, onFound } = props;
  const { id, error, described } = useField(name, hint);
  const { register, setValue } = useFormContext();
  const bound = register(name);
  const listId = useId();
  const [isOpen, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const [text, setText] = useState('');
  const [found, setFound] = useState<readonly NamedPlace[]>([]);
  const asked = useRef('');
  const choices = isOpen ? choicesFor(text, near, found) : [];

  useEffect(() => {
    const wanted = identIn(text);
    if (!isOpen || wanted.length < 2) return;
    const timer = setTimeout(() => {
      asked.current = text;
      void search(text.split(',')[0] ?? '').then((places) => {
        if (asked.current !== text) return;
        setFound(places);
        onFound?.(places);
      }, ignore);
    }, WAIT_MS);
    return () => clearTimeout(timer);
  }, [text, isOpen, search, onFound]);

  function close() {
    setOpen(false);
    setActive(-1);
  }

  function choose(place: NamedPlace) {
    setValue(name, placeText(place), { shouldDirty: true });
    onFound?.([place]);
    close();
  }

  function press(event: KeyboardEvent<HTMLInputElement>) {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setText(isOpen ? text : '');
      setOpen(true);
      const count = Math.max(choices.length, 1);
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setActive((at) => (at < 0 && step < 0 ? count - 1 : (at + step + count) % count));
    } else if (event.key === 'Enter' && isOpen && choices[active]) {
      // The press chooses; the next one sends the form.
      event.preventDefault();
      choose(choices[active]);
    } else if (event.key === 'Escape' && isOpen) {
      event.preventDefault();
      close();
    }
  }

  return (
    <div className={`${fieldStyles.field} ${styles.field}`}>
      <Label htmlFor={id}>{label}</Label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <div className={styles.box}>
        <input
          {...bound}
          {...described}
          id={id}
          type="text"
          role="combobox"
          aria-autocomplete="list"
          aria-expanded={choices.length > 0}
          aria-controls={listId}
          aria-activedescendant={active >= 0 && choices[active] ? `${listId}-${active}` : undefined}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          className={fieldStyles.input}
          onFocus={(event) => {
            event.target.select();
            setText('');
            setOpen(true);
          }}
          onChange={(event) => {
            void bound.onChange(event);
            setText(event.target.value);
            setOpen(true);
            setActive(-1);
          }}
          onBlur={(event) => {
            void bound.onBlur(event);
            close();
          }}
          onKeyDown={press}
        />
        <ul
          id={listId}
          role="listbox"
          aria-label={t('Places: {label}', { label })}
          hidden={choices.length === 0}
          className={styles.list}
        >
          {choices.map((place, index) => (
            // Keys work in the box above, where the focus stays.
            // eslint-disable-next-line jsx-a11y/click-events-have-key-events
            <li
              key={place.ident}
              id={`${listId}-${index}`}
              role="option"
              aria-selected={index === active}
              className={styles.choice}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => choose(place)}
            >
              <b>{place.ident}</b> {place.name}
              {place.where && <span className={styles.where}>{place.where}</span>}
            </li>
          ))}
        </ul>
      </div>
      <p role="status" className="out-of-sight">
        {choices.length > 0 && text !== ''
          ? `${choices.length} ${choices.length === 1 ? 'place' : 'places'}`
          : ''}
      </p>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

/** Bases that fit what is typed, then what was found for it. Nothing typed: all bases. */
function choicesFor(
  text: string,
  near: readonly NamedPlace[],
  found: readonly NamedPlace[],
): readonly NamedPlace[] {
  const typed = text.trim().toUpperCase();
  const fits = ({ ident, name }: NamedPlace) =>
    ident.toUpperCase().startsWith(identIn(text)) || name.toUpperCase().includes(typed);
  const bases = typed === '' ? near : near.filter(fits);
  const others = identIn(text).length < 2 ? [] : found;
  return [...bases, ...others.filter((one) => !near.some(({ ident }) => ident === one.ident))].slice(
    0,
    MOST_SHOWN,
  );
}

/** Without an answer one types the identifier, and the server reads it. */
const ignore = () => undefined;
