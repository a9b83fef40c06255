import { type ObservationView, type RelatedWriteUp } from '@/lib/findings/observations';
import { areaTitle } from '@/lib/rules/walkaround/areas';
import Link from './link';
import { Measured } from './measured';
import { Moment } from './moment';
import { PhotoList } from './photo-list';
import styles from './seen-again.module.css';

const PHASES: Readonly<Record<string, string>> = {
  'before-flight': ', before flight',
  'in-flight': ', in flight',
  'after-flight': ', after flight',
};

/** Who has seen the same since, oldest first: when, where, in their words, with what they measured and photographed. */
export function SeenAgain(props: {
  observations: readonly ObservationView[];
  zone: string;
  from: 'ramp' | 'bench';
}) {
  const { observations, zone, from } = props;
  if (observations.length === 0) return null;
  return (
    <ol className={styles.list}>
      {observations.map(({ id, by, foundAt, phase, station, words, measurements, photos }) => (
        <li key={id}>
          <p className={styles.who}>
            Seen again by {by} on <Moment at={foundAt} zone={zone} />
            {phase && PHASES[phase]}. {areaTitle(station)}.
          </p>
          <p className={styles.words}>{words}</p>
          <Measured measurements={measurements} />
          <PhotoList
            photos={photos}
            from={from}
            alt={(number) => `Seen again by ${by}, number ${number} of ${photos.length}`}
          />
        </li>
      ))}
    </ol>
  );
}

/** The write-ups about the same thing, before and after this one. */
export function RelatedWriteUps(props: {
  earlier: RelatedWriteUp | null;
  later: readonly RelatedWriteUp[];
  from: 'ramp' | 'bench';
}) {
  const { earlier, later, from } = props;
  if (!earlier && later.length === 0) return null;
  const linked = ({ id, number, title }: RelatedWriteUp) => (
    <Link href={`/${from}/write-up/${id}`}>
      {number} {title}
    </Link>
  );
  return (
    <ul className={styles.related}>
      {earlier && (
        <li>
          {earlier.how === 'back' ? (
            <>Came back after this was closed: {linked(earlier)}</>
          ) : (
            <>Worse than when this was written up: {linked(earlier)}</>
          )}
        </li>
      )}
      {later.map((one) => (
        <li key={one.id}>
          {one.how === 'back' ? (
            <>Came back as {linked(one)}</>
          ) : (
            <>Found worse, written up as {linked(one)}</>
          )}
        </li>
      ))}
    </ul>
  );
}
