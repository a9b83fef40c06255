import type { EntryContent } from '../work/entry';
import { formatTenths } from '../rules/hours';
import { daySaid, hashSaid } from './words';

export interface Field {
  readonly name: string;
  readonly value: string;
}

const OWED: Readonly<Record<string, string>> = {
  'static-leak': 'leak test of the static system (91.411(a)(2))',
  'altimeter-error': 'test of altitude reporting against the altimeter (91.411(a)(3))',
  'transponder-error': 'test of the transponder (91.413(b))',
};

const OUTCOMES: Readonly<Record<string, string>> = {
  repaired: 'Repaired',
  'could-not-duplicate': 'Could not be found again',
};

/** What an entry says beside the parts every entry has, in the order of a logbook; only what it does say. */
export function fieldsOfEntry(entry: EntryContent): readonly Field[] {
  const { details, requirement, testFor } = entry;
  const fields: readonly (readonly [string, string | null | undefined])[] = [
    ['Answers', requirement],
    ['Method', details?.method],
    ['Revision', details?.revision],
    ['Tested to', details?.testedToFt === undefined ? null : `${details.testedToFt} ft`],
    ['New expiry', details?.newExpiry === undefined ? null : daySaid(details.newExpiry)],
    ['Outcome', entry.outcome === undefined ? null : (OUTCOMES[entry.outcome] ?? entry.outcome)],
    ['How it was looked for', details?.lookedFor],
    ['Hours of work', entry.laborTenths === undefined ? null : `${formatTenths(entry.laborTenths)} h`],
    ['Supervised: 43.3(d)', entry.supervised === undefined ? null : supervised(entry.supervised)],
    ['Form 337 or work order', entry.form337],
    ['Approved data', entry.approvedData],
    ['Limits: 43.5(c)', limits(entry)],
    ['Tests owed', entry.testsOwed?.map((test) => OWED[test] ?? test).join('\n')],
    [
      'Test owed after',
      testFor && `${testFor.title} (record ${testFor.hash ? hashSaid(testFor.hash) : 'unsigned'})`,
    ],
  ];
  return fields.flatMap(([name, value]) => (value ? [{ name, value }] : []));
}

const supervised = (yes: boolean): string =>
  yes
    ? 'Whoever approves supervised the work and was available in person.'
    : 'Whoever did the work holds a certificate for it.';

function limits(entry: EntryContent): string | null {
  if (entry.limitsChanged === undefined) return null;
  if (!entry.limitsChanged) return 'The work changed no operating limit and no flight data.';
  return `The work changed operating limits or flight data. Revised: ${entry.limitsRevised ?? 'not stated'}`;
}
