import { formatTenths } from '../rules/hours';
import { dayInWords } from '../rules/in-words';

/** Plain words for papers, where no screen explains a key. A key nobody foresaw is printed in its own letters. */
const said = (words: Readonly<Record<string, string>>, key: string): string =>
  words[key] ?? key.replaceAll('-', ' ');

export const hoursSaid = (tenths: number | null): string | null =>
  tenths === null ? null : `${formatTenths(tenths)} h`;

export const daySaid = (date: string | null): string | null => (date === null ? null : dayInWords(date));

export const partSaid = (part: string): string =>
  said({ avionics: 'radio and avionics', powerplant: 'engine' }, part);

export const workSaid = (kind: string): string =>
  said(
    {
      preventive: 'Preventive maintenance',
      minor: 'Maintenance, not major',
      major: 'Major repair or major alteration',
      annual: 'Annual inspection',
      'hundred-hour': '100-hour inspection',
      'static-test': 'Test of the static pressure system',
      'altimeter-transponder-test': 'Test of altimeter or transponder',
    },
    kind,
  );

export const certificateSaid = (kind: string): string =>
  said(
    {
      mechanic: 'Mechanic',
      'repair-station': 'Repair station',
      pilot: 'Pilot',
      'inspection-authorization': 'Mechanic with inspection authorization',
      none: 'None: determined in the course of flying',
      other: 'Another certificate',
      'not-known': 'Certificate not known',
    },
    kind,
  );

/** The first letters of the hash: enough to find the record by, and to see that a copy belongs to it. */
export const hashSaid = (hash: string): string => hash.slice(0, 16);

/** An instant in the base's own time: "25 Nov 2026, 08:58 PST". */
export function momentSaid(at: string, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  }).formatToParts(new Date(at));
  const part = (kind: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === kind)?.value ?? '';
  return `${part('day')} ${part('month')} ${part('year')}, ${part('hour')}:${part('minute')} ${part('timeZoneName')}`;
}
