import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type FlightEventView, type ReleaseStanding } from '@/lib/releases/history';
import { type FlightMeters } from '@/lib/releases/readings';
import { formatTenths } from '@/lib/rules/hours';
import { Moment } from '../_ui/moment';
import Link from '../_ui/link';
import styles from './flight.module.css';

interface Step {
  readonly key: string;
  readonly what: string;
  readonly at: string;
  readonly by: string;
  readonly words?: string;
  readonly event?: FlightEventView;
  /** When it was written down, where that is not when it happened. */
  readonly recordedAt?: string;
}

interface TimelineProps {
  readonly release: Pick<ReleaseStanding, 'acceptance' | 'acceptedBeforeWarning' | 'events'> & {
    readonly releasedAt: string;
    readonly dispatcher: string;
  };
  readonly meters?: FlightMeters;
  readonly zone: string;
}

/** What happened to a release, in order: who, when, and in whose words. */
export function Timeline({ release, meters, zone }: TimelineProps) {
  const t = useWords();
  return (
    <ol className={styles.timeline}>
      {stepsOf(t, release, meters).map(({ key, what, at, by, words, event, recordedAt }) => (
        <li key={key}>
          <p className={styles.what}>{what}</p>
          <p className={styles.soft}>
            {by}, <Moment at={at} zone={zone} />
            {recordedAt && (
              <>
                <Say
                  text=", written down <moment/>"
                  parts={{ moment: <Moment at={recordedAt} zone={zone} /> }}
                />
              </>
            )}
          </p>
          {words && <p className={styles.words}>{words}</p>}
          {event?.writeUp && (
            <Link href={`/ramp/write-up/${event.writeUp.id}`} className={styles.line}>
              {event.writeUp.number}: {event.writeUp.title}
            </Link>
          )}
        </li>
      ))}
    </ol>
  );
}

function stepsOf(t: Translate, release: TimelineProps['release'], meters: FlightMeters | undefined): Step[] {
  const { events, releasedAt, dispatcher } = release;
  // Signed is signed, also where a warning came after it.
  const acceptance = release.acceptance ?? release.acceptedBeforeWarning;
  const steps: Step[] = [
    { key: 'released', what: t('Released'), at: releasedAt, by: dispatcher },
    ...(acceptance
      ? [
          {
            key: 'accepted',
            what: t('Accepted by the pilot in command, signed'),
            at: acceptance.at,
            by: acceptance.by,
          },
        ]
      : []),
    ...events.map((event) => ({
      key: event.id,
      what: t(EVENT_WORDS[event.what]),
      at: event.at,
      by: event.by,
      words: event.words,
      event,
      ...(isLater(event) ? { recordedAt: event.recordedAt } : {}),
    })),
    ...(meters?.out
      ? [{ key: 'out', what: t('Meters at departure: {read}', { read: read(t, meters.out) }), ...meters.out }]
      : []),
    ...(meters?.back
      ? [{ key: 'in', what: t('Meters at return: {read}', { read: read(t, meters.back) }), ...meters.back }]
      : []),
  ];
  return steps.sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

const EVENT_WORDS: Record<FlightEventView['what'], string> = {
  airborne: said('Airborne'),
  landed: said('Landed'),
  closed: said('Closed'),
  void: said('Void'),
  warned: said('Warned: the facts changed'),
  withdrawn: said('Withdrawn'),
};

const A_MINUTE = 60_000;
const isLater = ({ at, recordedAt }: FlightEventView): boolean =>
  Date.parse(recordedAt) - Date.parse(at) > A_MINUTE;

const read = (
  t: Translate,
  { hobbsTenths, tachTenths }: { hobbsTenths: number; tachTenths: number },
): string =>
  t('Hobbs {tenths}, Tach {tenths2}', {
    tenths: formatTenths(hobbsTenths),
    tenths2: formatTenths(tachTenths),
  });
