import { sayMeasured } from '@/lib/rules/findings/measurements';
import { type OilSpan } from '@/lib/rules/trend';
import { type TrendsView } from '@/lib/trends/read-trends';
import { DateText, HoursText, momentInWords } from '../../../../_ui/moment';
import { EmptyState, Section } from '../../../../_ui/page';
import { Tag } from '../../../../_ui/tag';
import { Chart } from './chart';
import styles from './trends.module.css';

/** Oil used in an hour, span by span; spans that cannot be worked out are said, not guessed. */
export function OilUse({ oil, zone }: { oil: NonNullable<TrendsView['oil']>; zone: string }) {
  const { spans, use } = oil;
  const counted = spans.filter(({ rateThousandths }) => rateThousandths !== null);
  const notRecorded = spans.filter(({ leftOut }) => leftOut === 'addition-not-recorded').length;
  const noTime = spans.filter(({ leftOut }) => leftOut === 'time-not-known').length;
  return (
    <Section title="Oil used in an hour">
      <div className={styles.sheet}>
        {use === null ? (
          <EmptyState title="Not known yet.">
            <p>It takes two readings of the dipstick with flying between and the meters read.</p>
          </EmptyState>
        ) : (
          <p>
            Last {use.recentCount} spans: <b>{sayRate(use.recent)}</b>.
            {use.before !== null && (
              <>
                {' '}
                The {use.beforeCount} before: {sayRate(use.before)}. {compared(use.recent, use.before)}
              </>
            )}
          </p>
        )}
        {notRecorded > 0 && (
          <p>
            <Tag tone="amber" size="small">
              Addition not recorded
            </Tag>{' '}
            The level rose {notRecorded === 1 ? 'once' : `${notRecorded} times`} without oil recorded as
            added. Left out.
          </p>
        )}
        {noTime > 0 && (
          <p className={styles.soft}>
            {noTime} {noTime === 1 ? 'span has' : 'spans have'} no known time in service and{' '}
            {noTime === 1 ? 'is' : 'are'} left out.
          </p>
        )}
        {counted.length > 0 && (
          <Chart
            id="oil-used"
            title="Oil used in an hour over time"
            description={described(counted, zone)}
            points={counted.map((span) => ({
              at: span.to,
              value: span.rateThousandths ?? 0,
              shape: 'square',
            }))}
            limits={[]}
            say={twoPlaces}
            unit="qt/h"
            zone={zone}
          />
        )}
        <Spans spans={spans} zone={zone} />
      </div>
    </Section>
  );
}

function Spans({ spans, zone }: { spans: readonly OilSpan[]; zone: string }) {
  if (spans.length === 0) return null;
  return (
    <details className={styles.figures}>
      <summary>The same as a table: oil used in an hour</summary>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Until</th>
            <th scope="col">Flown</th>
            <th scope="col">Added</th>
            <th scope="col">Used</th>
            <th scope="col">In an hour</th>
          </tr>
        </thead>
        <tbody>
          {spans.toReversed().map((span) => (
            <tr key={`${span.from}/${span.to}`}>
              <td>
                <DateText date={dayOf(span.to, zone)} />
              </td>
              <td>
                <HoursText tenths={span.flownTenths} />
              </td>
              <td>{sayMeasured(span.addedTenths, 'tenth-quart')}</td>
              <td>{span.usedTenths < 0 ? 'level rose' : sayMeasured(span.usedTenths, 'tenth-quart')}</td>
              <td>
                {span.rateThousandths === null
                  ? LEFT_OUT[span.leftOut ?? 'time-not-known']
                  : sayRate(span.rateThousandths)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

const LEFT_OUT: Readonly<Record<NonNullable<OilSpan['leftOut']>, string>> = {
  'addition-not-recorded': 'left out: addition not recorded',
  'time-not-known': 'left out: time in service not known',
};

/** Thousandths of a quart as "0.12", rounded: a dipstick does not read to thousandths. */
const twoPlaces = (thousandths: number): string => (thousandths / 1000).toFixed(2);
const sayRate = (thousandths: number): string => `${twoPlaces(thousandths)} qt/h`;

/** Said only where it is more than a quarter: a dipstick is read to half a quart. Our choice. */
function compared(recent: number, before: number): string {
  if (recent * 4 > before * 5) return 'It uses more lately.';
  return recent * 5 < before * 4 ? 'It uses less lately.' : 'About the same.';
}

function described(counted: readonly OilSpan[], zone: string): string {
  const rates = counted.map(({ rateThousandths }) => rateThousandths ?? 0);
  const [first, last] = [counted[0], counted.at(-1)];
  if (!first || !last) return '';
  return [
    `${counted.length} spans from ${momentInWords(first.from, zone)} to ${momentInWords(last.to, zone)}`,
    `least ${sayRate(Math.min(...rates))}, most ${sayRate(Math.max(...rates))}`,
    `newest ${sayRate(last.rateThousandths ?? 0)}`,
  ].join('; ');
}

const dayOf = (at: string, zone: string): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: zone }).format(new Date(at));
