import { type Translate } from '@/lib/words/translate';
import { KIND_TITLES } from '@/lib/rules/findings/kinds';
import { areaTitle } from '@/lib/rules/walkaround/areas';

/** Plain words for what records say in keys. A key this version does not know is shown in its own letters. */
const inTable = (words: Readonly<Record<string, string>>, key: string): string =>
  words[key] ?? key.replaceAll('-', ' ');

const KINDS: Readonly<Record<string, string>> = KIND_TITLES;
export const kindWords = (t: Translate, kind: string) => t(inTable(KINDS, kind));

export const stateWords = (t: Translate, state: string) =>
  inTable({ open: t('Open'), deferred: t('Deferred'), closed: t('Closed') }, state);

export const closedWords = (t: Translate, how: string) =>
  inTable(
    {
      repaired: t('Repaired and signed off'),
      'within-limits': t('Found within limits'),
      serviced: t('Serviced'),
      cosmetic: t('Cosmetic'),
      'could-not-duplicate': t('Could not be found again'),
      removed: t('Removed for good'),
    },
    how,
  );

export const outcomeWords = (t: Translate, outcome: string) =>
  inTable({ repaired: t('Repaired'), 'could-not-duplicate': t('Could not be found again') }, outcome);

export const partWords = (t: Translate, part: string) =>
  inTable(
    {
      airframe: t('Airframe'),
      powerplant: t('Powerplant'),
      propeller: t('Propeller'),
      instrument: t('Instrument'),
      avionics: t('Radio and avionics'),
    },
    part,
  );

export const workKindWords = (t: Translate, kind: string) =>
  inTable(
    {
      preventive: t('Preventive maintenance'),
      minor: t('Minor repair'),
      major: t('Major repair'),
      annual: t('Annual inspection'),
      'hundred-hour': t('100-hour inspection'),
      'static-test': t('Static system test'),
      'altimeter-transponder-test': t('Altimeter or transponder test'),
    },
    kind,
  );

export const workStateWords = (t: Translate, state: string) =>
  inTable(
    {
      started: t('Begun, entry owed'),
      entered: t('Entry written, signature owed'),
      signed: t('Signed'),
      abandoned: t('Given up, not done'),
    },
    state,
  );

export const certificateWords = (t: Translate, kind: string) =>
  inTable(
    {
      mechanic: t('mechanic certificate'),
      'repair-station': t('repair station certificate'),
      pilot: t('pilot certificate'),
      'inspection-authorization': t('inspection authorization'),
      none: t('no certificate on file'),
      other: t('another certificate'),
      'not-known': t('certificate not known'),
    },
    kind,
  );

export const determinationWords = (t: Translate, kind: string) =>
  inTable(
    {
      severity: t('Judged'),
      'within-limits': t('Found within limits'),
      'no-hazard': t('Determined to be no hazard (91.213(d)(4))'),
      servicing: t('Servicing recorded'),
      'inspected-at-inspection': t('Inspected at a required inspection, left deferred (91.405(c))'),
      'removed-for-good': t('Removed for good at a required inspection (91.405(c))'),
    },
    kind,
  );

export const methodWords = (t: Translate, method: string) =>
  inTable({ removed: t('Removed'), deactivated: t('Deactivated') }, method);

export const basisWords = (t: Translate, basis: string) =>
  inTable({ '91.213(d)': t('14 CFR 91.213(d)'), mel: t('the minimum equipment list') }, basis);

export const endWords = (t: Translate, how: string) =>
  inTable(
    {
      repaired: t('ended by repair'),
      'could-not-duplicate': t('ended: not found again'),
      removed: t('ended: removed for good'),
      'does-not-count': t('ended: carried over, and did not count; deferred anew'),
    },
    how,
  );

export const stationWords = (t: Translate, station: string) => t(areaTitle(station));
