import { type ReactNode } from 'react';
import { signedInRef } from '@/app/_session/actor-ref';
import { readAlarms } from '@/lib/releases/read-alarms';
import { alarmLine } from './alarms/alarm-line';
import { AlarmStrip } from './alarms/alarm-strip';

/** Over every page of the desk: the released flights whose facts changed. The pages turn away who may not be here. */
export default async function DeskLayout({ children }: { children: ReactNode }) {
  const ref = await signedInRef();
  const alarms = ref && (await readAlarms(ref, {}));
  return (
    <>
      {alarms && <AlarmStrip drawn={alarms.ok ? alarms.value.map(alarmLine) : null} />}
      {children}
    </>
  );
}
