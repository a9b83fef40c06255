import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { readOwnFlights, type OwnFlight as Flight } from '@/lib/releases/not-back';
import { type ReleaseStateName } from '@/lib/rules/release-state';
import { signedInRef } from '../../_session/actor-ref';
import { FreshMark } from '../../_ui/freshness';
import Link from '../../_ui/link';
import { Moment } from '../../_ui/moment';
import { Card } from '../../_ui/page';
import { Tag } from '../../_ui/tag';
import { VerdictLines } from '../../_ui/verdict-lines';
import phone from '../out/out.module.css';
import { Go } from '../out/place';
import styles from './ramp.module.css';

/**
 * The asking pilot's own released flight of an aircraft on a page of the server: its limits, and the next thing to do about
 * the meters; above it those whose release is gone and whose meters were read at departure. Nothing when there is none. The
 * same as app/ramp/out/meters/flight-card.tsx, which draws it on the phone.
 */
export async function OwnFlight({ aircraftId, zone }: { aircraftId: string; zone: string }) {
  const flights = await readOwnFlights(await signedInRef(), { aircraftId });
  if (!flights.ok) return null;
  const gone = flights.value.filter(({ state }) => GONE.includes(state));
  const standing = flights.value.filter(({ state }) => !GONE.includes(state));
  const next = standing.find(({ out }) => out !== null) ?? standing[0];
  return (
    <>
      {gone.map((flight) => (
        <GoneFlight key={flight.releaseId} {...{ flight, aircraftId, zone }} />
      ))}
      {next && <NextFlight {...{ flight: next, aircraftId, zone }} />}
    </>
  );
}

/** Nobody departs on one of these: no outcome stands beside it. */
const GONE: readonly ReleaseStateName[] = ['void', 'withdrawn', 'closed'];

interface FlightProps {
  readonly flight: Flight;
  readonly aircraftId: string;
  readonly zone: string;
}

function NextFlight({ flight, aircraftId, zone }: FlightProps) {
  const t = useWords();
  const { releaseId, departAt, outcome, limits } = flight;
  return (
    <div className={styles.rowWhole}>
      <Card edge="blue">
        <section className={styles.answer} aria-label={t('Your flight')}>
          <p>
            <Say
              text="<b>Your flight</b>, departs <moment/>"
              parts={{ b: <b />, moment: <Moment at={departAt} zone={zone} /> }}
            />
          </p>
          <p>
            <Say
              text="Released as <freshMark/>"
              parts={{ freshMark: <FreshMark outcome={outcome} size="small" /> }}
            />
          </p>
          {limits.length > 0 && <VerdictLines lines={limits} compact />}
          <Link href={`/ramp/flight/${releaseId}`} className={phone.press}>
            {t('Read it, take the aircraft, log it')}
          </Link>
          <ToMeters {...{ flight, aircraftId }} />
        </section>
      </Card>
    </div>
  );
}

function GoneFlight({ flight, aircraftId, zone }: FlightProps) {
  const t = useWords();
  const { releaseId, departAt, state, limits, out } = flight;
  const isVoid = state === 'void';
  const why = limits.filter(({ effect }) => effect === 'bars');
  return (
    <div className={styles.rowWhole}>
      <Card edge={isVoid ? 'red' : undefined}>
        <section className={styles.answer} aria-label={t('Your flight, release gone')}>
          <p>
            <Say
              text="<b>Your flight</b> of <moment/>"
              parts={{ b: <b />, moment: <Moment at={departAt} zone={zone} /> }}
            />
          </p>
          <p>
            <Tag tone={isVoid ? 'red' : 'grey'} shape={isVoid ? 'cross' : 'dashes'} size="small">
              {GONE_WORDS[state] ?? t('Over')}
            </Tag>{' '}
            <b>{t('Do not depart on this release.')}</b>
          </p>
          {why.length > 0 && <VerdictLines lines={why} compact />}
          <Link href={`/ramp/flight/${releaseId}`} className={phone.press}>
            {t('Read why')}
          </Link>
          {/* Hours that ran have run. */}
          {out && <ToMeters {...{ flight, aircraftId }} />}
        </section>
      </Card>
    </div>
  );
}

const GONE_WORDS: Partial<Record<ReleaseStateName, string>> = {
  void: said('VOID'),
  withdrawn: said('Withdrawn'),
};

/** A plain load: the page is one the phone keeps. */
function ToMeters({ flight: { releaseId, out }, aircraftId }: Omit<FlightProps, 'zone'>) {
  const t = useWords();
  return (
    <Go
      href={`/ramp/${aircraftId}/meters?release=${releaseId}&moment=${out ? 'in' : 'out'}`}
      className={phone.press}
    >
      {out ? t('Meters at return') : t('Meters at departure')}
    </Go>
  );
}
