/**
 * What is taken over from paper never says more than the same said here. Sources: 14 CFR 91.213(d)(4), 65.83 as lib/rules/law
 * cites them; that a paper may be stricter and never looser is our own design (issue 6).
 */
import fc from 'fast-check';
import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { LAST_DONE_DOCS } from '@/lib/carry-over/last-done-columns';
import { WRITE_UP_DOCS } from '@/lib/carry-over/write-up-columns';
import { MEL_DOCS } from '@/lib/mel/mel-columns';
import {
  carriedDetermination,
  carriedRecordSigned,
  type DeterminationRow,
  type OtherDeferral,
} from '@/lib/fleet/carried-determination';
import type { Severity } from '@/lib/rules/aircraft';
import {
  judgeDeterminerOnPaper,
  severityCarriedOver,
  signerOnPaper,
  type DeterminerOnPaper,
  type OnPaper,
} from '@/lib/rules/carried-over';
import { mayDetermine } from '@/lib/rules/part-91/91-213-steps';
import { mayDetermineNoHazard } from '@/lib/rules/who-may-determine';

const RATING = 'airplane-single-engine-land';
const ON = '2026-11-03';

const ANSWERS: readonly OnPaper[] = ['yes', 'no', 'not-known'];
const answer = fc.constantFrom(...ANSWERS);
const paper: fc.Arbitrary<DeterminerOnPaper> = fc.record({
  name: fc.constantFrom('', 'Otto Birkmoor'),
  certificate: fc.constantFrom('mechanic', 'repair-station', 'pilot', 'other', 'not-known'),
  number: fc.constantFrom('', '1234567'),
  ratings: fc.subarray(['airframe', 'powerplant'] as const),
  recent: answer,
  authorised: answer,
  grade: fc.constantFrom(
    null,
    'student',
    'sport',
    'recreational',
    'private',
    'commercial',
    'airline-transport',
  ),
  rated: answer,
});

describe('who determined on paper', () => {
  test('allowed only where the rule for a person of ours allows the same (property)', () => {
    fc.assert(
      fc.property(paper, fc.constantFrom(null, ON), (one, on) => {
        const judged = judgeDeterminerOnPaper(one, RATING, on);
        const here = on !== null && mayDetermineNoHazard(signerOnPaper(one, RATING, on), RATING, on).allowed;
        if (judged.allowed) expect(here).toBe(true);
        // What the deferral rules will read of it agrees.
        expect(mayDetermine(judged.determiner)).toBe(judged.allowed);
        if (judged.allowed) expect([one.name, one.number, on]).not.toContain('');
      }),
    );
  });

  test('forgetting an answer never makes it count (property)', () => {
    fc.assert(
      fc.property(
        paper,
        fc.constantFrom('recent', 'authorised', 'rated', 'grade', 'name', 'number', 'ratings'),
        (one, what) => {
          const blank = {
            recent: 'not-known',
            authorised: 'not-known',
            rated: 'not-known',
            grade: null,
            name: '',
            number: '',
            ratings: [],
          } as const;
          const forgotten = { ...one, [what]: blank[what] };
          const before = judgeDeterminerOnPaper(one, RATING, ON).allowed;
          const after = judgeDeterminerOnPaper(forgotten, RATING, ON).allowed;
          expect(after && !before).toBe(false);
        },
      ),
    );
  });

  const mechanic: DeterminerOnPaper = {
    name: 'Otto Birkmoor',
    certificate: 'mechanic',
    number: '1234567',
    ratings: ['airframe'],
    recent: 'yes',
    authorised: 'not-known',
    grade: null,
    rated: 'not-known',
  };
  test.each([
    ['a mechanic with one rating and recent experience', {}, true, null],
    ['recent experience not known', { recent: 'not-known' }, false, /recent experience/],
    // Known not to have it: nothing is missing, it is simply no.
    ['no recent experience', { recent: 'no' }, false, null],
    ['no rating', { ratings: [] }, false, null],
    ['no number', { number: '' }, false, /certificate number/],
    ['another certificate', { certificate: 'other' }, false, null],
  ] as const)('%s', (_what, change, allowed, missing) => {
    const judged = judgeDeterminerOnPaper({ ...mechanic, ...change }, RATING, ON);
    expect(judged.allowed).toBe(allowed);
    if (missing === null) expect(judged.missing).toBeNull();
    else expect(judged.missing).toMatch(missing);
  });
});

describe('severity', () => {
  const SEVERITIES: readonly (Severity | null)[] = [null, 'grounding', 'limiting', 'watch', 'note'];
  // Both of these ground (91.7(a)).
  const strict = (one: Severity | null) =>
    one === null || one === 'grounding' ? 0 : SEVERITIES.indexOf(one);

  test('never looser than the paper nor than a report of today (all pairs)', () => {
    for (const onPaper of SEVERITIES) {
      for (const here of SEVERITIES) {
        const counts = severityCarriedOver(onPaper, here);
        expect(strict(counts)).toBeLessThanOrEqual(Math.min(strict(onPaper), strict(here)));
      }
    }
  });
});

describe('the determination as the deferral rules read it', () => {
  const at = (day: string) => new Date(`${day}T12:00:00Z`);
  const row = (change: object = {}, signedAt = at('2026-11-25')): DeterminationRow => ({
    vouchingId: 'v',
    personName: 'Otto Birkmoor',
    signedAt,
    content: {
      determiner: {
        name: 'Otto Birkmoor',
        pilotGrade: null,
        pilotRatedForAircraft: false,
        mechanicRatings: ['airframe'],
        repairStation: false,
      },
      carriedOver: {
        determinedOn: ON,
        missing: null,
        noHazard: 'yes',
        countedTogether: 'yes',
        record: { signed: 'yes', by: 'Otto Birkmoor', authorised: 'yes' },
        document: 'Sheet 42',
        vouchedBy: 'Max Overfield',
        ...change,
      },
    },
  });
  const own = { number: 'W-0001', openedAt: at('2026-11-02') };
  const read = (one: DeterminationRow, others: readonly OtherDeferral[] = []) =>
    carriedDetermination(one, own, others, 'UTC');
  const other = (openedOn: string, determination: DeterminationRow): OtherDeferral => ({
    number: 'W-0002',
    openedAt: at(openedOn),
    determination,
  });

  test('its day is the day of the paper, not of the signature that vouches for it', () => {
    expect(read(row())).toMatchObject({
      known: true,
      value: { on: ON, by: { mechanicRatings: ['airframe'] } },
    });
  });

  test.each([
    ['content that cannot be read', { determinedOn: 7 }],
    ['something about it is not known', { missing: 'who determined' }],
    ['no day', { determinedOn: null }],
    ['no word of hazard', { noHazard: 'not-known' }],
    ['a hazard', { noHazard: 'no' }],
  ] as const)('not known: %s', (_what, change) => {
    expect(read(row(change)).known).toBe(false);
  });

  test.each([
    // Just before, on and just after the day of the paper.
    ['2026-11-02', true],
    ['2026-11-03', true],
    ['2026-11-04', false],
  ] as const)('it says that it counted all that was out; the other was found %s: %s', (openedOn, counted) => {
    const theirs = row({ countedTogether: 'no' });
    expect(read(row(), [other(openedOn, theirs)]).known).toBe(counted);
  });

  test('the other paper counted this one', () => {
    expect(
      read(row({ countedTogether: 'no' }), [other('2026-11-04', row({ determinedOn: '2026-11-04' }))]).known,
    ).toBe(true);
    expect(
      read(row({ countedTogether: 'no' }), [other('2026-11-01', row({ determinedOn: '2026-11-01' }))]).known,
    ).toBe(false);
  });

  const made = (signedAt: Date): DeterminationRow => ({ ...row({}, signedAt), vouchingId: null });
  test.each([
    ['2026-11-24', false],
    ['2026-11-25', false],
    ['2026-11-26', true],
  ] as const)('one made here on %s, this one carried over on 2026-11-25: counted %s', (day, counted) => {
    expect(read(row({ countedTogether: 'no' }), [other('2026-11-24', made(at(day)))]).known).toBe(counted);
  });

  test('the part 43 record counts with a name and with authority, and only then', () => {
    for (const signed of ANSWERS) {
      for (const authorised of ANSWERS) {
        for (const by of ['', 'Otto Birkmoor']) {
          const counts = carriedRecordSigned(row({ record: { signed, authorised, by } }));
          expect(counts).toBe(signed === 'yes' && authorised === 'yes' && by !== '');
        }
      }
    }
    // Not vouched for: no record of the paper at all.
    expect(carriedRecordSigned({ ...row(), vouchingId: null })).toBe(false);
  });
});

test('docs/import.md names every column of the three files, and says of each the same', async () => {
  const docs = (await readFile('docs/import.md', 'utf8')).replace(/ +/g, ' ');
  for (const { column, needed, what } of [...WRITE_UP_DOCS, ...LAST_DONE_DOCS, ...MEL_DOCS]) {
    expect(docs).toContain(`| \`${column}\` | ${needed ? 'yes' : 'no'} | ${what} |`);
  }
});
