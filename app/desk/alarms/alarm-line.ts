import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type FlightAlarm } from '@/lib/releases/read-alarms';

/** One alarm as the strip shows it; plain data, for the page and for asking anew. */
export interface AlarmLine {
  readonly releaseId: string;
  readonly registration: string;
  readonly isVoid: boolean;
  /** "Do not fly: release void", with whose flight it is. */
  readonly title: string;
  readonly because: string;
  readonly at: string;
  readonly zone: string;
}

/** The strip's words. Void is as if it had not been released; a warning is for a flight that may go on. */
export function alarmLine(
  t: Translate,
  { releaseId, registration, zone, pilot, state, event }: FlightAlarm,
): AlarmLine {
  const isVoid = state.name === 'void';
  const decides = event.lines.find(({ effect }) => effect === 'bars' || effect === 'limits');
  const because = event.writeUp?.title ?? decides?.because ?? event.words;
  return {
    releaseId,
    registration,
    isVoid,
    title: `${isVoid ? t('release void') : t(WARNED[state.name] ?? said('facts changed after release'))}${pilot ? `, ${pilot}` : ''}`,
    because,
    at: event.at,
    zone,
  };
}

const WARNED: Partial<Record<FlightAlarm['state']['name'], string>> = {
  airborne: said('facts changed, already airborne'),
  landed: said('facts changed while it was out'),
};
