import { type Mark, type Picture } from '@/lib/insight/picture';
import styles from './insight.module.css';

/** A chart on the page, in the page's colours; the file of the same chart comes from the same marks. */
export function Drawing({ id, picture }: { id: string; picture: Picture }) {
  const { title, description, width, height, marks } = picture;
  return (
    <svg
      viewBox={`-6 0 ${width + 12} ${height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-words`}
      className={styles.chart}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-words`}>{description}</desc>
      {marks.map((mark, index) => (
        <Drawn key={index} mark={mark} />
      ))}
    </svg>
  );
}

function Drawn({ mark }: { mark: Mark }) {
  const look = styles[mark.look];
  switch (mark.is) {
    case 'rect':
      return <rect x={mark.x} y={mark.y} width={mark.width} height={mark.height} className={look} />;
    case 'circle':
      return <circle cx={mark.x} cy={mark.y} r={mark.r} className={look} />;
    case 'line':
      return <line x1={mark.x1} y1={mark.y1} x2={mark.x2} y2={mark.y2} className={look} />;
    case 'text':
      return (
        <text x={mark.x} y={mark.y} textAnchor={mark.anchor} className={look}>
          {mark.text}
        </text>
      );
  }
}
