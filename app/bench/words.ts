import { KIND_TITLES } from '@/lib/rules/findings/kinds';
import { areaTitle } from '@/lib/rules/walkaround/areas';

/** Plain words for what records say in keys. A key this version does not know is shown in its own letters. */
const said = (words: Readonly<Record<string, string>>, key: string): string =>
  words[key] ?? key.replaceAll('-', ' ');

const KINDS: Readonly<Record<string, string>> = KIND_TITLES;
export const kindWords = (kind: string) => said(KINDS, kind);

export const stateWords = (state: string) =>
  said({ open: 'Open', deferred: 'Deferred', closed: 'Closed' }, state);

export const closedWords = (how: string) =>
  said(
    {
      repaired: 'Repaired and signed off',
      'within-limits': 'Found within limits',
      serviced: 'Serviced',
      cosmetic: 'Cosmetic',
      'could-not-duplicate': 'Could not be found again',
      removed: 'Removed for good',
    },
    how,
  );

export const outcomeWords = (outcome: string) =>
  said({ repaired: 'Repaired', 'could-not-duplicate': 'Could not be found again' }, outcome);

export const partWords = (part: string) =>
  said(
    {
      airframe: 'Airframe',
      powerplant: 'Powerplant',
      propeller: 'Propeller',
      instrument: 'Instrument',
      avionics: 'Radio and avionics',
    },
    part,
  );

export const workKindWords = (kind: string) =>
  said(
    {
      preventive: 'Preventive maintenance',
      minor: 'Minor repair',
      major: 'Major repair',
      annual: 'Annual inspection',
      'hundred-hour': '100-hour inspection',
      'static-test': 'Static system test',
      'altimeter-transponder-test': 'Altimeter or transponder test',
    },
    kind,
  );

export const workStateWords = (state: string) =>
  said(
    {
      started: 'Begun, entry owed',
      entered: 'Entry written, signature owed',
      signed: 'Signed',
      abandoned: 'Given up, not done',
    },
    state,
  );

export const certificateWords = (kind: string) =>
  said(
    {
      mechanic: 'mechanic certificate',
      'repair-station': 'repair station certificate',
      pilot: 'pilot certificate',
      'inspection-authorization': 'inspection authorization',
      none: 'no certificate on file',
    },
    kind,
  );

export const determinationWords = (kind: string) =>
  said(
    {
      severity: 'Judged',
      'within-limits': 'Found within limits',
      'no-hazard': 'Determined to be no hazard (91.213(d)(4))',
      servicing: 'Servicing recorded',
      'inspected-at-inspection': 'Inspected at a required inspection, left deferred (91.405(c))',
      'removed-for-good': 'Removed for good at a required inspection (91.405(c))',
    },
    kind,
  );

export const methodWords = (method: string) =>
  said({ removed: 'Removed', deactivated: 'Deactivated' }, method);

export const basisWords = (basis: string) =>
  said({ '91.213(d)': '14 CFR 91.213(d)', mel: 'the minimum equipment list' }, basis);

export const endWords = (how: string) =>
  said(
    {
      repaired: 'ended by repair',
      'could-not-duplicate': 'ended: not found again',
      removed: 'ended: removed for good',
    },
    how,
  );

export const stationWords = (station: string) => areaTitle(station);
