import { type ActorRef } from '@/lib/access/actor';
import { readAlarms, type FlightAlarm } from '@/lib/releases/read-alarms';
import { alarmLine } from '../../desk/alarms/alarm-line';
import Link from '../../_ui/link';
import { Moment } from '../../_ui/moment';
import { ShapeMark } from '../../_ui/tag';
import own from '../flight/flight.module.css';

/**
 * The asking pilot's own releases that went void or were warned about, on a page that stays fresh: what comes in while it
 * is open is told at once. Alarms that cannot be read are said to be not known: nothing here must mean that there are none.
 */
export async function OwnAlarms({ actor }: { actor: ActorRef }) {
  const read = await readAlarms(actor, {});
  const mine = read.ok ? read.value.filter(({ isMine }) => isMine) : [];
  // It stands there empty too: a screen reader tells only of what comes into it.
  return (
    <div role="alert" className={own.alarms}>
      {!read.ok && (
        <p className={`${own.alarm} ${own.warned}`}>Whether your releases still hold is not known.</p>
      )}
      {mine.map((alarm) => (
        <AlarmLink key={`${alarm.releaseId} ${alarm.event.id}`} alarm={alarm} />
      ))}
    </div>
  );
}

function AlarmLink({ alarm }: { alarm: FlightAlarm }) {
  const { releaseId, registration, isVoid, because, at, zone } = alarmLine(alarm);
  return (
    <Link href={`/ramp/flight/${releaseId}`} className={`${own.alarm} ${isVoid ? own.void : own.warned}`}>
      <ShapeMark shape={isVoid ? 'cross' : 'wedge'} />
      <span>
        <b>
          {isVoid
            ? `Do not fly ${registration}: this release is void.`
            : `${registration}: ${WARNED[alarm.state.name] ?? 'the facts changed since your release. Read them before the flight.'}`}
        </b>{' '}
        {because} <Moment at={at} zone={zone} clock />
      </span>
    </Link>
  );
}

const WARNED: Partial<Record<FlightAlarm['state']['name'], string>> = {
  airborne: 'something came in after you took off.',
  landed: 'something came in while you were out.',
};
