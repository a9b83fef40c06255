import { scaleLinear, scaleUtc } from 'd3-scale';
import { line, symbol, symbolCircle, symbolSquare } from 'd3-shape';
import { dateInWords } from '../../../../_ui/moment';
import styles from './trends.module.css';

/** One value drawn. Round: measured on a walkaround; square: with a finding, or worked out over a span. */
export interface ChartPoint {
  readonly at: string;
  readonly value: number;
  readonly shape: 'round' | 'square';
}

interface ChartProps {
  /** Unique on the page. */
  readonly id: string;
  readonly title: string;
  /** The same in words for whoever cannot see it. */
  readonly description: string;
  /** Oldest first; at least one. */
  readonly points: readonly ChartPoint[];
  readonly limits: readonly { readonly value: number; readonly label: string }[];
  /** Prints a value of the axis, without the unit. */
  readonly say: (value: number) => string;
  readonly unit: string;
  readonly zone: string;
}

const WIDTH = 400;
const HEIGHT = 230;
const EDGE = { top: 24, right: 12, bottom: 32, left: 46 };
const A_DAY = 86_400_000;

/** A line over time, drawn on the server: axes with units, limits as dashed lines that say what they are. */
export function Chart({ id, title, description, points, limits, say, unit, zone }: ChartProps) {
  const times = points.map(({ at }) => Date.parse(at));
  const values = [...points, ...limits].map(({ value }) => value);
  const first = Math.min(...times);
  const last = Math.max(...times);
  // One day or one value alone would make an axis without length.
  const x = scaleUtc()
    .domain(last - first < A_DAY ? [first - A_DAY, last + A_DAY] : [first, last])
    .range([EDGE.left, WIDTH - EDGE.right]);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(1, Math.round((high - low) * 0.15));
  const y = scaleLinear()
    .domain([Math.max(0, low - room), high + room])
    .nice(4)
    .range([HEIGHT - EDGE.bottom, EDGE.top]);
  const path = line<ChartPoint>(
    (point) => x(Date.parse(point.at)),
    (point) => y(point.value),
  )([...points]);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-words`}
      className={styles.chart}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-words`}>{description}</desc>
      <text x={2} y={14} className={styles.axis}>
        {unit}
      </text>
      {y
        .ticks(4)
        .filter(Number.isInteger)
        .map((tick) => (
          <g key={tick}>
            <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(tick)} y2={y(tick)} className={styles.grid} />
            <text x={EDGE.left - 6} y={y(tick) + 4} textAnchor="end" className={styles.axis}>
              {say(tick)}
            </text>
          </g>
        ))}
      {daysOf(x.ticks(4), zone).map(({ tick, day }) => (
        <text key={day} x={x(tick)} y={HEIGHT - 10} textAnchor="middle" className={styles.axis}>
          {day}
        </text>
      ))}
      {limits.map((limit) => (
        <g key={limit.label}>
          <line
            x1={EDGE.left}
            x2={WIDTH - EDGE.right}
            y1={y(limit.value)}
            y2={y(limit.value)}
            className={styles.limit}
          />
          <text x={WIDTH - EDGE.right} y={y(limit.value) - 5} textAnchor="end" className={styles.limitWords}>
            {limit.label}
          </text>
        </g>
      ))}
      {path && <path d={path} className={styles.line} />}
      {points.map((point, index) => (
        <path
          key={`${point.at}/${index}`}
          d={symbol(point.shape === 'round' ? symbolCircle : symbolSquare, 44)() ?? undefined}
          transform={`translate(${x(Date.parse(point.at))} ${y(point.value)})`}
          className={styles.point}
        />
      ))}
    </svg>
  );
}

/** Ticks with their days; a short time has several ticks a day, of which the first is enough. */
function daysOf(ticks: readonly Date[], zone: string): { tick: Date; day: string }[] {
  const named = ticks.map((tick) => ({ tick, day: dayOnAxis(tick, zone) }));
  return named.filter(({ day }, index) => named.findIndex((one) => one.day === day) === index);
}

/** "25 Nov": the year stands in the table. */
function dayOnAxis(at: Date, zone: string): string {
  const date = new Intl.DateTimeFormat('en-CA', { timeZone: zone }).format(at);
  return dateInWords(date).split(' ').slice(0, 2).join(' ');
}
