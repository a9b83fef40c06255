import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { sayInUnits, type Units } from '@/lib/units/say';
import { type OilSpan } from '@/lib/rules/trend';
import { type TrendsView } from '@/lib/trends/read-trends';
import { DateText, HoursText, momentInWords } from '../../../../_ui/moment';
import { EmptyState, Section } from '../../../../_ui/page';
import { Tag } from '../../../../_ui/tag';
import { Chart } from './chart';
import styles from './trends.module.css';

/** Oil used in an hour, span by span; spans that cannot be worked out are said, not guessed. */
export function OilUse(props: {
  oil: NonNullable<TrendsView['oil']>;
  zone: string;
  units: Units | undefined;
}) {
  const { oil, zone, units } = props;
  const t = useWords();
  const { spans, use } = oil;
  const counted = spans.filter(({ rateThousandths }) => rateThousandths !== null);
  const notRecorded = spans.filter(({ leftOut }) => leftOut === 'addition-not-recorded').length;
  const noTime = spans.filter(({ leftOut }) => leftOut === 'time-not-known').length;
  return (
    <Section title={t('Oil used in an hour')}>
      <div className={styles.sheet}>
        {use === null ? (
          <EmptyState title={t('Not known yet.')}>
            <p>{t('It takes two readings of the dipstick with flying between and the meters read.')}</p>
          </EmptyState>
        ) : (
          <p>
            <Say
              text="Last {recentCount} spans: <b>{sayRate}</b>."
              parts={{ b: <b /> }}
              values={{ recentCount: use.recentCount, sayRate: sayRate(t, use.recent) }}
            />
            {use.before !== null && (
              <>
                {' '}
                {t('The {beforeCount} before: {sayRate}. {compared}', {
                  beforeCount: use.beforeCount,
                  sayRate: sayRate(t, use.before),
                  compared: compared(t, use.recent, use.before),
                })}
              </>
            )}
          </p>
        )}
        {notRecorded > 0 && (
          <p>
            <Tag tone="amber" size="small">
              {t('Addition not recorded')}
            </Tag>{' '}
            {t('The level rose {which} without oil recorded as added. Left out.', {
              which: notRecorded === 1 ? t('once') : t('{notRecorded} times', { notRecorded }),
            })}
          </p>
        )}
        {noTime > 0 && (
          <p className={styles.soft}>
            {t('{noTime} {which} no known time in service and {which2} left out.', {
              noTime,
              which: noTime === 1 ? t('span has') : t('spans have'),
              which2: noTime === 1 ? t('is') : t('are'),
            })}
          </p>
        )}
        {counted.length > 0 && (
          <Chart
            id="oil-used"
            title={t('Oil used in an hour over time')}
            description={described(t, counted, zone)}
            points={counted.map((span) => ({
              at: span.to,
              value: span.rateThousandths ?? 0,
              shape: 'square',
            }))}
            limits={[]}
            say={twoPlaces}
            unit={t('qt/h')}
            zone={zone}
          />
        )}
        <Spans spans={spans} zone={zone} units={units} />
      </div>
    </Section>
  );
}

function Spans(props: { spans: readonly OilSpan[]; zone: string; units: Units | undefined }) {
  const { spans, zone, units } = props;
  const t = useWords();
  if (spans.length === 0) return null;
  return (
    <details className={styles.figures}>
      <summary>{t('The same as a table: oil used in an hour')}</summary>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{t('Until')}</th>
            <th scope="col">{t('Flown')}</th>
            <th scope="col">{t('Added')}</th>
            <th scope="col">{t('Used')}</th>
            <th scope="col">{t('In an hour')}</th>
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
              <td>{sayInUnits(span.addedTenths, 'tenth-quart', units)}</td>
              <td>
                {span.usedTenths < 0 ? t('level rose') : sayInUnits(span.usedTenths, 'tenth-quart', units)}
              </td>
              <td>
                {span.rateThousandths === null
                  ? t(LEFT_OUT[span.leftOut ?? 'time-not-known'])
                  : sayRate(t, span.rateThousandths)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

const LEFT_OUT: Readonly<Record<NonNullable<OilSpan['leftOut']>, string>> = {
  'addition-not-recorded': said('left out: addition not recorded'),
  'time-not-known': said('left out: time in service not known'),
};

/** Thousandths of a quart as "0.12", rounded: a dipstick does not read to thousandths. */
const twoPlaces = (thousandths: number): string => (thousandths / 1000).toFixed(2);
const sayRate = (t: Translate, thousandths: number): string =>
  t('{twoPlaces} qt/h', { twoPlaces: twoPlaces(thousandths) });

/** Said only where it is more than a quarter: a dipstick is read to half a quart. Our choice. */
function compared(t: Translate, recent: number, before: number): string {
  if (recent * 4 > before * 5) return t('It uses more lately.');
  return recent * 5 < before * 4 ? t('It uses less lately.') : t('About the same.');
}

function described(t: Translate, counted: readonly OilSpan[], zone: string): string {
  const rates = counted.map(({ rateThousandths }) => rateThousandths ?? 0);
  const [first, last] = [counted[0], counted.at(-1)];
  if (!first || !last) return '';
  return [
    t('{counted} spans from {moment} to {moment2}', {
      counted: counted.length,
      moment: momentInWords(first.from, zone),
      moment2: momentInWords(last.to, zone),
    }),
    t('least {sayRate}, most {sayRate2}', {
      sayRate: sayRate(t, Math.min(...rates)),
      sayRate2: sayRate(t, Math.max(...rates)),
    }),
    t('newest {sayRate}', { sayRate: sayRate(t, last.rateThousandths ?? 0) }),
  ].join('; ');
}

const dayOf = (at: string, zone: string): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: zone }).format(new Date(at));
