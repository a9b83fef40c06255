import { digitsOf, MEASURE_UNITS, sayBounds, sayMeasured } from '@/lib/rules/findings/measurements';
import { type TrendSeries } from '@/lib/trends/read-trends';
import { HoursText, Moment, momentInWords } from '../../../../_ui/moment';
import { Section } from '../../../../_ui/page';
import { Chart } from './chart';
import styles from './trends.module.css';

/** One measured thing: its chart, what the newest values say against those before, and the figures. */
export function Series({ series, zone }: { series: TrendSeries; zone: string }) {
  const { measurement, points, limit, level } = series;
  const { unit } = measurement;
  const newest = points.at(-1);
  if (!newest) return null;
  return (
    <Section title={measurement.label}>
      <div className={styles.sheet}>
        <p>
          Newest {sayMeasured(newest.value, unit)}, <Moment at={newest.at} zone={zone} />.
          {level !== null && level.before !== null && (
            <>
              {' '}
              Mean of the last {level.recentCount}: {sayMeasured(level.recent, unit)}; of the{' '}
              {level.beforeCount} before: {sayMeasured(level.before, unit)}.
            </>
          )}
        </p>
        {limit && (
          <p className={styles.soft}>
            Limit: {sayBounds(limit, unit)}. {limit.source}
          </p>
        )}
        <Chart
          id={measurement.key}
          title={`${measurement.label} over time`}
          description={described(series, zone)}
          points={points.map(({ at, value, from }) => ({
            at,
            value,
            shape: from === 'walkaround' ? 'round' : 'square',
          }))}
          limits={[
            ...(limit?.min === null || limit?.min === undefined
              ? []
              : [{ value: limit.min, label: `least ${sayMeasured(limit.min, unit)}` }]),
            ...(limit?.max === null || limit?.max === undefined
              ? []
              : [{ value: limit.max, label: `most ${sayMeasured(limit.max, unit)}` }]),
          ]}
          say={(value) => digitsOf(value, unit)}
          unit={MEASURE_UNITS[unit].label}
          zone={zone}
        />
        <details className={styles.figures}>
          <summary>The same as a table: {measurement.label}</summary>
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">When</th>
                <th scope="col">Value</th>
                <th scope="col">Time in service</th>
                <th scope="col">From</th>
              </tr>
            </thead>
            <tbody>
              {points.toReversed().map((point, index) => (
                <tr key={`${point.at}/${index}`}>
                  <td>
                    <Moment at={point.at} zone={zone} />
                  </td>
                  <td>{sayMeasured(point.value, unit)}</td>
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

function described({ measurement: { unit }, points, limit }: TrendSeries, zone: string): string {
  const values = points.map(({ value }) => value);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return '';
  return [
    `${points.length} values from ${momentInWords(first.at, zone)} to ${momentInWords(last.at, zone)}`,
    `least ${sayMeasured(Math.min(...values), unit)}, most ${sayMeasured(Math.max(...values), unit)}`,
    `newest ${sayMeasured(last.value, unit)}`,
    ...(limit ? [`limit ${sayBounds(limit, unit)}`] : []),
  ].join('; ');
}
