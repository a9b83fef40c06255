import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { digitsOf, MEASURE_UNITS, sayBounds, sayMeasured } from '@/lib/rules/findings/measurements';
import { sayBoundsInUnits, sayInUnits, type Units } from '@/lib/units/say';
import { type TrendSeries } from '@/lib/trends/read-trends';
import { HoursText, Moment, momentInWords } from '../../../../_ui/moment';
import { Section } from '../../../../_ui/page';
import { Chart } from './chart';
import styles from './trends.module.css';

/** One measured thing: its chart, what the newest values say against those before, and the figures. */
export function Series({
  series,
  zone,
  units,
}: {
  series: TrendSeries;
  zone: string;
  units: Units | undefined;
}) {
  const t = useWords();
  const { measurement, points, limit, level } = series;
  const { unit } = measurement;
  const newest = points.at(-1);
  if (!newest) return null;
  return (
    <Section title={measurement.label}>
      <div className={styles.sheet}>
        <p>
          <Say
            text="Newest {sayMeasured}, <moment/>."
            parts={{ moment: <Moment at={newest.at} zone={zone} /> }}
            values={{ sayMeasured: sayInUnits(newest.value, unit, units) }}
          />
          {level !== null && level.before !== null && (
            <>
              {' '}
              {t(
                'Mean of the last {recentCount}: {sayMeasured}; of the {beforeCount} before: {sayMeasured2}.',
                {
                  recentCount: level.recentCount,
                  sayMeasured: sayInUnits(level.recent, unit, units),
                  beforeCount: level.beforeCount,
                  sayMeasured2: sayInUnits(level.before, unit, units),
                },
              )}
            </>
          )}
        </p>
        {limit && (
          <p className={styles.soft}>
            {t('Limit: {sayBounds}. {source}', {
              sayBounds: sayBoundsInUnits(limit, unit, units),
              source: limit.source,
            })}
          </p>
        )}
        <Chart
          id={measurement.key}
          title={t('{label} over time', { label: measurement.label })}
          description={described(t, series, zone)}
          points={points.map(({ at, value, from }) => ({
            at,
            value,
            shape: from === 'walkaround' ? 'round' : 'square',
          }))}
          limits={[
            ...(limit?.min === null || limit?.min === undefined
              ? []
              : [
                  {
                    value: limit.min,
                    label: t('least {sayMeasured}', { sayMeasured: sayMeasured(limit.min, unit) }),
                  },
                ]),
            ...(limit?.max === null || limit?.max === undefined
              ? []
              : [
                  {
                    value: limit.max,
                    label: t('most {sayMeasured}', { sayMeasured: sayMeasured(limit.max, unit) }),
                  },
                ]),
          ]}
          say={(value) => digitsOf(value, unit)}
          unit={MEASURE_UNITS[unit].label}
          zone={zone}
        />
        <details className={styles.figures}>
          <summary>{t('The same as a table: {label}', { label: measurement.label })}</summary>
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">{t('When')}</th>
                <th scope="col">{t('Value')}</th>
                <th scope="col">{t('Time in service')}</th>
                <th scope="col">{t('From')}</th>
              </tr>
            </thead>
            <tbody>
              {points.toReversed().map((point, index) => (
                <tr key={`${point.at}/${index}`}>
                  <td>
                    <Moment at={point.at} zone={zone} />
                  </td>
                  <td>{sayInUnits(point.value, unit, units)}</td>
                  <td>
                    <HoursText tenths={point.ttisTenths} />
                  </td>
                  <td>{point.from}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      </div>
    </Section>
  );
}

function described(
  t: Translate,
  { measurement: { unit }, points, limit }: TrendSeries,
  zone: string,
): string {
  const values = points.map(({ value }) => value);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return '';
  return [
    t('{points} values from {moment} to {moment2}', {
      points: points.length,
      moment: momentInWords(first.at, zone),
      moment2: momentInWords(last.at, zone),
    }),
    t('least {sayMeasured}, most {sayMeasured2}', {
      sayMeasured: sayMeasured(Math.min(...values), unit),
      sayMeasured2: sayMeasured(Math.max(...values), unit),
    }),
    t('newest {sayMeasured}', { sayMeasured: sayMeasured(last.value, unit) }),
    ...(limit ? [t('limit {sayBounds}', { sayBounds: sayBounds(limit, unit) })] : []),
  ].join('; ');
}
