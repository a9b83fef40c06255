import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type ObservationView, type RelatedWriteUp } from '@/lib/findings/observations';
import { type Units } from '@/lib/units/say';
import { areaTitle } from '@/lib/rules/walkaround/areas';
import Link from './link';
import { Measured } from './measured';
import { Moment } from './moment';
import { PhotoList } from './photo-list';
import styles from './seen-again.module.css';

const PHASES: Readonly<Record<string, string>> = {
  'before-flight': said(', before flight'),
  'in-flight': said(', in flight'),
  'after-flight': said(', after flight'),
};

/** Who has seen the same since, oldest first: when, where, in their words, with what they measured and photographed. */
export function SeenAgain(props: {
  observations: readonly ObservationView[];
  zone: string;
  units: Units;
  from: 'ramp' | 'bench';
}) {
  const t = useWords();
  const { observations, zone, units, from } = props;
  if (observations.length === 0) return null;
  return (
    <ol className={styles.list}>
      {observations.map(({ id, by, foundAt, phase, station, words, measurements, photos }) => (
        <li key={id}>
          <p className={styles.who}>
            <Say
              text="Seen again by {by} on <moment/>{phase}. {areaTitle}."
              parts={{ moment: <Moment at={foundAt} zone={zone} /> }}
              values={{
                by,
                phase: phase && PHASES[phase] && t(PHASES[phase]),
                areaTitle: t(areaTitle(station)),
              }}
            />
          </p>
          <p className={styles.words}>{words}</p>
          <Measured measurements={measurements} units={units} />
          <PhotoList
            photos={photos}
            from={from}
            alt={(number) =>
              t('Seen again by {by}, number {number} of {photos}', { by, number, photos: photos.length })
            }
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
  const t = useWords();
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
            <>
              {t('Came back after this was closed:')} {linked(earlier)}
            </>
          ) : (
            <>
              {t('Worse than when this was written up:')} {linked(earlier)}
            </>
          )}
        </li>
      )}
      {later.map((one) => (
        <li key={one.id}>
          {one.how === 'back' ? (
            <>
              {t('Came back as')} {linked(one)}
            </>
          ) : (
            <>
              {t('Found worse, written up as')} {linked(one)}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
