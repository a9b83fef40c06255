import { type ReactNode } from 'react';
import { signedInRef } from '@/app/_session/actor-ref';
import { MoreWords } from '@/app/_words/more-words';
import { words } from '@/app/_words/words';
import { readAlarms } from '@/lib/releases/read-alarms';
import { alarmLine } from './alarms/alarm-line';
import { AlarmStrip } from './alarms/alarm-strip';

/** Over every page of the desk: the released flights whose facts changed. The pages turn away who may not be here. */
export default async function DeskLayout({ children }: { children: ReactNode }) {
  const t = await words();
  const ref = await signedInRef();
  const alarms = ref && (await readAlarms(ref, {}));
  return (
    <MoreWords>
      {alarms && <AlarmStrip drawn={alarms.ok ? alarms.value.map((one) => alarmLine(t, one)) : null} />}
      {children}
    </MoreWords>
  );
}
