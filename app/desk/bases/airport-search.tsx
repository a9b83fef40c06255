'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useId, useRef, useState } from 'react';
import { useFormContext } from 'react-hook-form';
import { type FoundPlace } from '@/lib/airports/read-airports';
import { type Result } from '@/lib/problems';
import { findAirports } from './actions';
import { type BaseAsTyped } from './base-typed';
import styles from './bases.module.css';

type Found = { readonly words: string; readonly airports: readonly FoundPlace[] };
const NOTHING: Found = { words: '', airports: [] };
const WAIT_MS = 300;

/**
 * Looks into the airport file while somebody types; a press takes an airport's facts over into the form. `find`: who looks,
 * where nobody is signed in yet; the same function from drawing to drawing.
 */
export function AirportSearch({
  find = findAirports,
}: {
  find?: (text: string) => Promise<Result<readonly FoundPlace[]>>;
}) {
  const t = useWords();
  const id = useId();
  const { setValue, setFocus } = useFormContext<BaseAsTyped>();
  const [text, setText] = useState('');
  const [found, setFound] = useState<Found>(NOTHING);
  const asked = useRef(0);

  useEffect(() => {
    const turn = (asked.current += 1);
    if (text.trim().length < 2) return;
    const wait = setTimeout(() => {
      find(text).then(
        // Only the newest question may answer: an older one can come back later.
        (result) => turn === asked.current && setFound(inWords(t, result.ok ? result.value : null)),
        () => turn === asked.current && setFound(inWords(t, null)),
      );
    }, WAIT_MS);
    return () => clearTimeout(wait);
  }, [text, t, find]);

  function take(airport: FoundPlace) {
    const over = {
      ident: airport.ident,
      airportIdent: airport.ident,
      name: airport.name,
      latitudeDeg: String(airport.latitudeDeg),
      longitudeDeg: String(airport.longitudeDeg),
      zone: airport.zone,
      zoneConfirmed: false,
    };
    for (const [name, value] of Object.entries(over)) setValue(name as keyof BaseAsTyped, value);
    setFound({
      words: t('Taken over from {ident}. Look at everything below.', { ident: airport.ident }),
      airports: [],
    });
    setFocus('name');
  }

  return (
    <div className={styles.search}>
      <label htmlFor={id}>{t('Code, name or town')}</label>
      <input
        id={id}
        type="search"
        value={text}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => {
          setText(event.target.value);
          if (event.target.value.trim().length < 2) setFound(NOTHING);
        }}
        // Enter looks for nothing that is not shown already, and must not send the form.
        onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
      />
      <p className={styles.soft}>
        {t('Medium and large airports of the world. Many small fields are not in it: type those below.')}
      </p>
      <p role="status" className={styles.status}>
        {found.words}
      </p>
      {found.airports.length > 0 && (
        <ul className={styles.found} aria-label={t('Airports found')}>
          {found.airports.map((airport) => (
            <li key={airport.ident}>
              <button type="button" onClick={() => take(airport)}>
                <b>{airport.ident}</b> <span>{airport.name}</span>
                <span className={styles.soft}>
                  {airport.where} · {airport.zone}
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function inWords(t: Translate, places: readonly FoundPlace[] | null): Found {
  if (places === null) {
    return {
      words: t('The airport file could not be read just now. You can type the base below.'),
      airports: [],
    };
  }
  const airports = places.filter(({ kind }) => kind === 'airport');
  const bases = places.filter(({ kind }) => kind === 'base').map(({ ident }) => ident);
  const already = bases.length > 0 ? t(' Already a base here: {bases}.', { bases: bases.join(', ') }) : '';
  const count =
    airports.length === 0 ? t('No airport found.') : t('{airports} found.', { airports: airports.length });
  return { words: `${count}${already}`, airports };
}
