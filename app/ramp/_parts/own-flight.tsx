import { readOwnFlights } from '@/lib/releases/not-back';
import { signedInRef } from '../../_session/actor-ref';
import { OutcomeMark } from '../../_ui/marks';
import { Moment } from '../../_ui/moment';
import { Card } from '../../_ui/page';
import { VerdictLines } from '../../_ui/verdict-lines';
import phone from '../out/out.module.css';
import { Go } from '../out/place';
import styles from './ramp.module.css';

/**
 * The asking pilot's own released flight of an aircraft on a page of the server: its limits, and the next thing to do about
 * the meters. Nothing when there is none. The same as app/ramp/out/meters/flight-card.tsx, which draws it on the phone.
 */
export async function OwnFlight({ aircraftId, zone }: { aircraftId: string; zone: string }) {
  const flights = await readOwnFlights(await signedInRef(), { aircraftId });
  if (!flights.ok) return null;
  const flight = flights.value.find(({ out }) => out !== null) ?? flights.value[0];
  if (!flight) return null;
  const { releaseId, departAt, outcome, limits, out } = flight;
  return (
    <div className={styles.rowWhole}>
      <Card edge="blue">
        <section className={styles.answer} aria-label="Your flight">
          <p>
            <b>Your flight</b>, departs <Moment at={departAt} zone={zone} />
          </p>
          <p>
            Released as <OutcomeMark outcome={outcome} size="small" />
          </p>
          {limits.length > 0 && <VerdictLines lines={limits} compact />}
          {/* A plain load: the page is one the phone keeps. */}
          <Go
            href={`/ramp/${aircraftId}/meters?release=${releaseId}&moment=${out ? 'in' : 'out'}`}
            className={phone.press}
          >
            {out ? 'Meters at return' : 'Meters at departure'}
          </Go>
        </section>
      </Card>
    </div>
  );
}
