'use client';

import { English, useWords } from '#words';
import { useId, useRef, useState, type FormEvent } from 'react';
import { readMeasurement } from '@/lib/findings/measurement-input';
import {
  MEASURE_UNITS,
  measurementOf,
  sayMeasured,
  type MeasureUnit,
} from '@/lib/rules/findings/measurements';
import { limitsFor } from '@/lib/rules/walkaround/judge-walk';
import { type NumberItem } from '@/lib/rules/walkaround/plan';
import { aboutMetric, sayBoundsInUnits, sayInUnits, type Units } from '@/lib/units/say';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { Tag } from '../../../_ui/tag';
import { changeItem } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { ItemMark } from './item-mark';
import { Proposed } from './proposed';
import { type ItemSoFar } from './so-far';
import styles from './walk.module.css';

interface MeasureProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walk: KeptWalk;
  readonly item: NumberItem;
  readonly soFar: ItemSoFar;
}

/** A number to read off, judged at once. What was read stays on record, also when it is taken back as mistyped. */
export function Measure({ pack, aircraft, walk, item, soFar }: MeasureProps) {
  const t = useWords();
  const id = useId();
  const measurement = measurementOf(item.measurement);
  const box = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [error, setError] = useState('');
  if (!measurement) return null;
  const { unit } = measurement;
  const { answer, verdict, written } = soFar;
  const { units } = pack.person;
  const typed = readMeasurement(text, unit);
  const typedAbout = typed.ok ? aboutMetric(typed.value, unit, units) : null;
  const counting = answer.readings.filter(({ struck }) => !struck);

  /** Also when the box is left: a number typed is a number kept. */
  function record(event?: FormEvent) {
    event?.preventDefault();
    if (text.trim() === '') {
      // Leaving the box for the button has recorded it already.
      if (event && counting.length === 0) setError(t('Enter what you read.'));
      if (event) box.current?.focus();
      return;
    }
    const read = readMeasurement(text, unit);
    if (!read.ok) {
      setError(read.say);
      return;
    }
    setText('');
    setError('');
    const reading = { value: read.value, at: new Date().toISOString(), struck: false };
    void changeItem(aircraft.id, item.key, (before) => ({
      ...before,
      readings: [...before.readings, reading],
    }));
  }

  function strike() {
    void changeItem(aircraft.id, item.key, (before) => {
      const last = before.readings.findLastIndex(({ struck }) => !struck);
      return {
        ...before,
        readings: before.readings.map((reading, index) =>
          index === last ? { ...reading, struck: true } : reading,
        ),
      };
    });
  }

  return (
    <div role="group" aria-label={t(item.title)} className={styles.look}>
      <div>
        <p className={styles.itemTitle}>
          {t(item.title)} <ItemMark soFar={soFar} />
        </p>
        <p className={styles.lookFor}>{t(item.lookFor)}</p>
        <div id={`${id}-limit`}>
          <LimitShown item={item} aircraft={aircraft} unit={unit} units={units} />
        </div>
      </div>
      <form className={styles.typing} onSubmit={record} noValidate>
        <label htmlFor={id} className="out-of-sight">
          {t('{title}, in {label}', { title: t(item.title), label: MEASURE_UNITS[unit].label })}
        </label>
        <span className={styles.box}>
          <input
            id={id}
            ref={box}
            value={text}
            inputMode={MEASURE_UNITS[unit].decimals === 0 ? 'numeric' : 'decimal'}
            autoComplete="off"
            enterKeyHint="done"
            aria-invalid={error ? true : undefined}
            aria-describedby={error ? `${id}-limit ${id}-error` : `${id}-limit`}
            onChange={(event) => setText(event.target.value)}
            onBlur={() => record()}
          />
          <span aria-hidden="true">{MEASURE_UNITS[unit].label}</span>
        </span>
        <button type="submit" className={styles.press}>
          {counting.length > 0 ? t('Read again') : t('Record')}
        </button>
      </form>
      {/* Always there for who reads metric, so that nothing moves while typing. */}
      {aboutMetric(0, unit, units) && <p className={styles.soft}>{typedAbout ?? '\u00a0'}</p>}
      {error && (
        <p id={`${id}-error`} role="alert" className={styles.error}>
          {error}
        </p>
      )}
      {answer.readings.length > 0 && (
        <ul className={styles.readings} aria-label={t('Read so far')}>
          {answer.readings.map(({ value, at, struck }) => (
            <li key={at}>
              {struck ? (
                <>
                  <s>{sayMeasured(value, unit)}</s> <span className={styles.soft}>{t('mistyped')}</span>
                </>
              ) : (
                <b>{sayInUnits(value, unit, units)}</b>
              )}
            </li>
          ))}
        </ul>
      )}
      <div role="status">
        {verdict.raised && written === 0 ? (
          <Proposed pack={pack} aircraftId={aircraft.id} walkId={walk.id} raised={verdict.raised}>
            <button type="button" className={styles.press} onClick={strike}>
              {t('Mistyped')}
            </button>
          </Proposed>
        ) : (
          verdict.line && (
            <p className={styles.soft}>
              <English>{verdict.line.because}</English>
            </p>
          )
        )}
      </div>
      {counting.length > 0 && !(verdict.raised && written === 0) && (
        <button type="button" className={styles.quiet} onClick={strike}>
          {t('Mistyped: take {sayMeasured} back', {
            sayMeasured: sayMeasured(counting.at(-1)?.value ?? 0, unit),
          })}
        </button>
      )}
    </div>
  );
}

/** The limit that judges, with its source. None is said: then the number is recorded and judged by nothing. */
function LimitShown({
  item,
  aircraft,
  unit,
  units,
}: {
  item: NumberItem;
  aircraft: PackAircraft;
  unit: MeasureUnit;
  units: Units | undefined;
}) {
  const t = useWords();
  const measurement = measurementOf(item.measurement);
  const { judging } = measurement ? limitsFor(item, measurement, aircraft.limits) : { judging: [] };
  if (judging.length === 0)
    return <p className={styles.limit}>{t('No limit is stored: recorded, not judged.')}</p>;
  return (
    <>
      {judging.map(({ min, max, source }) => (
        <p key={`${source}${min}${max}`} className={styles.limit}>
          <Tag tone="blue" shape="ring" size="small">
            {sayBoundsInUnits({ min, max }, unit, units)}
          </Tag>{' '}
          <span className={styles.soft}>{source}</span>
        </p>
      ))}
    </>
  );
}
