import { English, useWords } from '#words';
import { words } from '@/app/_words/words';
import { said } from '@/lib/words/said';
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
  const t = await words();
  const read = await readAlarms(actor, {});
  const mine = read.ok ? read.value.filter(({ isMine }) => isMine) : [];
  // It stands there empty too: a screen reader tells only of what comes into it.
  return (
    <div role="alert" className={own.alarms}>
      {!read.ok && (
        <p className={`${own.alarm} ${own.warned}`}>{t('Whether your releases still hold is not known.')}</p>
      )}
      {mine.map((alarm) => (
        <AlarmLink key={`${alarm.releaseId} ${alarm.event.id}`} alarm={alarm} />
      ))}
    </div>
  );
}

function AlarmLink({ alarm }: { alarm: FlightAlarm }) {
  const t = useWords();
  const { releaseId, registration, isVoid, because, at, zone } = alarmLine(t, alarm);
  return (
    <Link href={`/ramp/flight/${releaseId}`} className={`${own.alarm} ${isVoid ? own.void : own.warned}`}>
      <ShapeMark shape={isVoid ? 'cross' : 'wedge'} />
      <span>
        <b>
          {isVoid
            ? t('Do not fly {registration}: this release is void.', { registration })
            : `${registration}: ${WARNED[alarm.state.name] ?? t('the facts changed since your release. Read them before the flight.')}`}
        </b>{' '}
        <English>{because}</English> <Moment at={at} zone={zone} clock />
      </span>
    </Link>
  );
}

const WARNED: Partial<Record<FlightAlarm['state']['name'], string>> = {
  airborne: said('something came in after you took off.'),
  landed: said('something came in while you were out.'),
};
