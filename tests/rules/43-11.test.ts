/**
 * 14 CFR 43.11 and the disposition of 91.405(c) before an inspection is signed. Source of every row unless said: the eCFR
 * of 3 September 2026, sections 43.11 and 91.405, in the stored copy github.com/Lyutenant/FAR-AIM.
 */
import { describe, expect, it } from 'vitest';
import type { DiscrepancyFacts, Severity } from '../../lib/rules/aircraft';
import { known, unknown } from '../../lib/rules/facts';
import {
  checkEntry4311,
  checkFindings4311,
  inspectionStatement,
  standingAtInspection,
  type InspectionEntryFacts,
  type ListedItem,
} from '../../lib/rules/part-43/43-11-inspection-entry';
import { dispositionsOwed } from '../../lib/rules/part-91/91-405-maintenance-required';
import { deferralOf, discrepancyOf } from '../fixtures/aircraft';

const ON = '2026-11-25';

const entry = (change: Partial<InspectionEntryFacts> = {}): InspectionEntryFacts => ({
  kind: 'annual',
  extent: 'Whole aircraft, Appendix D and the maker’s checklist.',
  begunOn: known('2026-11-23'),
  completedOn: known('2026-11-25'),
  ttisTenths: known(45_123),
  onRecordTenths: known(45_123),
  signer: {
    name: 'Test Person',
    signed: true,
    certificateNumber: 'X3',
    certificateKind: 'inspection authorization',
  },
  airworthy: known(true),
  listDated: null,
  ...change,
});

const barred = (change: Partial<InspectionEntryFacts>) =>
  checkEntry4311(entry(change), ON)
    .filter((line) => line.effect === 'bars')
    .map(({ cite, missing }) => (missing === undefined ? cite : `${cite} missing`));

describe('43.11(a), paragraph by paragraph', () => {
  it('a whole entry bars nothing and cites each paragraph', () => {
    const lines = checkEntry4311(entry(), ON);
    expect(lines.map(({ effect, cite }) => [effect, cite])).toEqual([
      ['supports', '14cfr43.11(a)(1)'],
      ['supports', '14cfr43.11(a)(2)'],
      ['supports', '14cfr43.11(a)(2)'],
      ['supports', '14cfr43.11(a)(3)'],
      ['supports', '14cfr43.11(a)(4)'],
    ]);
  });

  it.each([
    ['(a)(1) no extent', { extent: null }, ['14cfr43.11(a)(1) missing']],
    ['(a)(1) a blank extent', { extent: '  ' }, ['14cfr43.11(a)(1) missing']],
    ['(a)(2) no date', { completedOn: unknown('the date') }, ['14cfr43.11(a)(2) missing']],
    [
      '(a)(2) nobody knows when it began',
      { begunOn: unknown('when it began') },
      ['14cfr43.11(a)(2) missing'],
    ],
    ['(a)(2) no total time', { ttisTenths: unknown('the total time') }, ['14cfr43.11(a)(2) missing']],
    ['(a)(2) nothing on record', { onRecordTenths: unknown('the total time') }, ['14cfr43.11(a)(2) missing']],
    ['nobody says what was found', { airworthy: unknown('what was found') }, ['14cfr43.11(a) missing']],
    ['(a)(5) no list', { airworthy: known(false) }, ['14cfr43.11(a)(5) missing']],
    ['(a)(5) with its list', { airworthy: known(false), listDated: '2026-11-25' }, []],
  ])('%s', (_words, change, expected) => {
    expect(barred(change)).toEqual(expected);
  });

  it('(a)(3): one line for each thing missing', () => {
    const signer = { name: '', signed: false, certificateNumber: null, certificateKind: ' ' };
    expect(barred({ signer })).toEqual(Array.from({ length: 4 }, () => '14cfr43.11(a)(3) missing'));
  });

  it.each([
    // Just before it began, the first day, the day of signing, the day after.
    ['2026-11-22', ['14cfr43.11(a)(2)']],
    ['2026-11-23', []],
    ['2026-11-25', []],
    ['2026-11-26', ['14cfr43.11(a)(2)']],
  ])('(a)(2) dated %s', (day, expected) => {
    expect(barred({ completedOn: known(day) })).toEqual(expected);
  });

  it.each([
    [45_122, ['14cfr43.11(a)(2)']],
    [45_123, []],
    // Ahead of the aircraft's own record: common practice, no source. Such a record could never be relied on.
    [45_124, ['14cfr43.11(a)(2)']],
  ])('(a)(2) %i tenths on an aircraft with 45123', (written, expected) => {
    expect(barred({ ttisTenths: known(written) })).toEqual(expected);
  });
  it.each([
    [45_122, /less/],
    [45_124, /more/],
  ])('(a)(2) %i tenths: which way it is wrong', (written, way) => {
    const wrong = checkEntry4311(entry({ ttisTenths: known(written) }), ON).find(
      ({ effect }) => effect === 'bars',
    );
    expect(wrong?.because).toMatch(way);
  });

  it('(a)(5): the list of one that is not approved is cited', () => {
    const lines = checkEntry4311(entry({ airworthy: known(false), listDated: ON }), ON);
    expect(lines.at(-1)).toMatchObject({ effect: 'supports', cite: '14cfr43.11(a)(5)' });
  });
});

describe('the statements, in the words of the regulation', () => {
  it.each([
    [
      'annual',
      'I certify that this aircraft has been inspected in accordance with an annual inspection and was determined to be in airworthy condition.',
    ],
    [
      'hundred-hour',
      'I certify that this aircraft has been inspected in accordance with a 100-hour inspection and was determined to be in airworthy condition.',
    ],
  ] as const)('(a)(4) %s', (kind, words) => {
    expect(inspectionStatement(kind, { airworthy: true })).toBe(words);
  });
  it('(a)(5) names the list by its date', () => {
    expect(inspectionStatement('annual', { airworthy: false, listDated: '2026-11-25' })).toBe(
      'I certify that this aircraft has been inspected in accordance with an annual inspection and a list of discrepancies and unairworthy items dated 25 Nov 2026 has been provided for the aircraft owner or operator.',
    );
  });
});

const watch: Partial<DiscrepancyFacts> = {
  kind: 'wear',
  severity: known('watch'),
  withinLimits: { by: 'Test Person', on: ON, limit: '2 mm', source: 'Invented manual' },
};

const severe = (severity: Severity): Partial<DiscrepancyFacts> => ({ severity: known(severity) });

describe('what an open write-up is at an inspection', () => {
  it.each([
    ['grounding', { kind: 'damage', ...severe('grounding') }, 'repair-owed'],
    ['undecided', { severity: unknown('how severe') }, 'repair-owed'],
    ['inoperative and not deferred', {}, 'repair-owed'],
    ['a watch without its finding within limits', { ...watch, withinLimits: null }, 'repair-owed'],
    ['found within limits', watch, 'within-limits'],
    ['cosmetic', { kind: 'cosmetic', ...severe('note') }, 'cosmetic'],
    ['deferred', { deferral: deferralOf() }, 'deferred'],
    // A finding within limits is believed of a watch alone; graver since, the repair is owed (43.11(b); our reading).
    ['grounding, once found within limits', { ...watch, ...severe('grounding') }, 'repair-owed'],
    ['limiting, once found within limits', { ...watch, ...severe('limiting') }, 'repair-owed'],
    ['undecided, once found within limits', { ...watch, severity: unknown('how severe') }, 'repair-owed'],
    // Looks alone are cosmetic: the kind and the severity both say so (common practice, no source).
    ['a grounding one, called cosmetic', { kind: 'cosmetic', ...severe('grounding') }, 'repair-owed'],
    ['a watch, called cosmetic', { kind: 'cosmetic', ...severe('watch') }, 'repair-owed'],
    ['a limiting one, called cosmetic', { kind: 'cosmetic', ...severe('limiting') }, 'repair-owed'],
    ['a note of wear', { kind: 'wear', ...severe('note') }, 'repair-owed'],
    ['a note of damage', { kind: 'damage', ...severe('note') }, 'repair-owed'],
  ] as const)('%s', (_words, change, standing) => {
    expect(standingAtInspection(discrepancyOf(change))).toBe(standing);
  });
});

describe('43.11(b), (a)(4) and (a)(5): what stands open', () => {
  const listed = (standing: ListedItem['standing']): readonly ListedItem[] => [
    { discrepancyId: 'discrepancy-1', standing },
  ];
  const deferred = discrepancyOf({ deferral: deferralOf() });
  const noPlacard = discrepancyOf({ deferral: deferralOf({ placardPlaced: false }) });
  const damage = discrepancyOf({ kind: 'damage', severity: known('grounding') });
  const cites = (open: readonly DiscrepancyFacts[], list: readonly ListedItem[] | null, airworthy: boolean) =>
    checkFindings4311(open, list, airworthy).map(({ effect, cite }) => `${effect} ${cite}`);

  it.each([
    ['nothing open', [], null, true, []],
    ['a grounding write-up', [damage], null, true, ['bars 14cfr43.11(a)(4)']],
    ['also when it is listed', [damage], listed('unairworthy'), true, ['bars 14cfr43.11(a)(4)']],
    ['found within limits', [discrepancyOf(watch)], null, true, []],
    [
      'found within limits, and listed as unairworthy now',
      [discrepancyOf(watch)],
      listed('unairworthy'),
      true,
      ['bars 14cfr43.11(a)(4)'],
    ],
    ['deferred, no list', [deferred], null, true, ['bars 14cfr43.11(b)']],
    ['deferred, not on the list', [deferred], [], true, ['bars 14cfr43.11(b)']],
    ['deferred and listed', [deferred], listed('inoperative-placarded'), true, []],
    [
      'deferred without its placard',
      [noPlacard],
      listed('inoperative-placarded'),
      true,
      ['bars 14cfr43.11(b)'],
    ],
  ] as const)('airworthy: %s', (_words, open, list, airworthy, expected) => {
    expect(cites(open, list, airworthy)).toEqual(expected);
  });

  it.each([
    ['nothing to say why', [], null, ['bars 14cfr43.11(a)(5)']],
    ['no list', [damage], null, ['bars 14cfr43.11(b)', 'bars 14cfr43.11(a)(5)']],
    ['a list without it', [damage], [], ['bars 14cfr43.11(b)', 'bars 14cfr43.11(a)(5)']],
    ['only deferred items listed', [deferred], listed('inoperative-placarded'), ['bars 14cfr43.11(a)(5)']],
    ['listed', [damage], listed('unairworthy'), []],
    ['found within limits, listed all the same', [discrepancyOf(watch)], listed('unairworthy'), []],
  ] as const)('not airworthy: %s', (_words, open, list, expected) => {
    expect(cites(open, list, false)).toEqual(expected);
  });

  // The list speaks of one write-up in one standing. Of another write-up, or in the other standing, it clears nothing.
  const another = (standing: ListedItem['standing']): readonly ListedItem[] => [
    { discrepancyId: 'discrepancy-2', standing },
  ];
  it.each([
    ['damage, another listed', damage, another('unairworthy'), false, ['bars 14cfr43.11(b)']],
    [
      'damage, listed as placarded',
      damage,
      listed('inoperative-placarded'),
      false,
      ['bars 14cfr43.11(b)', 'bars 14cfr43.11(a)(5)'],
    ],
    ['deferred, another listed', deferred, another('inoperative-placarded'), true, ['bars 14cfr43.11(b)']],
    ['deferred, listed as unairworthy', deferred, listed('unairworthy'), true, ['bars 14cfr43.11(b)']],
    ['within limits, another listed', discrepancyOf(watch), another('unairworthy'), true, []],
    ['within limits, listed as placarded', discrepancyOf(watch), listed('inoperative-placarded'), true, []],
    ['among others', damage, [...another('inoperative-placarded'), ...listed('unairworthy')], false, []],
  ] as const)('%s', (_words, one, list, airworthy, expected) => {
    expect(cites([one], list, airworthy)).toEqual(expected);
  });
  it('the line names the write-up that is meant', () => {
    const open = [damage, deferred, noPlacard].map((d, index) => ({ ...d, id: `d-${index}` }));
    const about = { kind: 'discrepancy' } as const;
    expect(checkFindings4311(open, null, true)).toMatchObject(
      ['d-0', 'd-1', 'd-2'].map((id) => ({ about: { ...about, id } })),
    );
  });
});

describe('91.405(c): a disposition for every live deferral', () => {
  const deferred = discrepancyOf({ deferral: deferralOf() });
  it('bars without one, by its paragraph', () => {
    expect(dispositionsOwed([deferred], new Set())).toMatchObject([
      { effect: 'bars', cite: '14cfr91.405(c)' },
    ]);
  });
  it('another deferral’s is not this one’s', () => {
    expect(dispositionsOwed([deferred], new Set(['another']))).toHaveLength(1);
  });
  it('nothing is owed once disposed of, nor where nothing is deferred', () => {
    expect(dispositionsOwed([deferred], new Set(['deferral-1']))).toEqual([]);
    expect(dispositionsOwed([discrepancyOf()], new Set())).toEqual([]);
  });
  it('an item under a list is held to it too, and the line says that this is strict', () => {
    const [line] = dispositionsOwed([discrepancyOf({ deferral: deferralOf({ basis: 'mel' }) })], new Set());
    expect(line?.strictReading).toContain('91.213(d)(2)');
  });
});
