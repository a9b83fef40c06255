import { describe, expect, it } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import { checkEntry439, type EntryFacts439 } from '../../lib/rules/part-43/43-9-entry';
import {
  classifyWork,
  majorQuestionsFor,
  MAJOR_QUESTIONS,
} from '../../lib/rules/part-43/43-appendix-a-major';
import {
  preventiveItem,
  PREVENTIVE_ITEMS,
} from '../../lib/rules/part-43/43-appendix-a-preventive-maintenance';

const ON = '2026-11-25';
const entry = (facts: Partial<EntryFacts439> = {}): EntryFacts439 => ({
  description: 'Changed the left position light bulb.',
  dataReference: null,
  startedOn: known('2026-11-24'),
  completedOn: known('2026-11-25'),
  performedBy: ['Test Person'],
  approver: {
    name: 'Test Person',
    signed: true,
    certificateNumber: 'X2',
    certificateKind: 'mechanic, airframe',
  },
  ...facts,
});
const missing = (facts: Partial<EntryFacts439>) =>
  checkEntry439(entry(facts), ON)
    .filter((line) => line.effect === 'bars')
    .map((line) => line.cite);

/** 14 CFR 43.9(a), eCFR copy of 24 August 2026. */
describe('43.9(a) entry', () => {
  it('a complete entry supports, paragraph by paragraph', () => {
    const lines = checkEntry439(entry(), ON);
    expect(lines.map((line) => [line.effect, line.cite])).toEqual([
      ['supports', '14cfr43.9(a)(1)'],
      ['supports', '14cfr43.9(a)(2)'],
      ['supports', '14cfr43.9(a)(3)'],
      ['supports', '14cfr43.9(a)(4)'],
    ]);
  });

  it('(a)(1): a description or a reference, not nothing and not blanks', () => {
    expect(missing({ description: null })).toEqual(['14cfr43.9(a)(1)']);
    expect(missing({ description: '  ', dataReference: ' ' })).toEqual(['14cfr43.9(a)(1)']);
    expect(missing({ description: null, dataReference: 'Maintenance manual 33-40' })).toEqual([]);
  });

  // (a)(2): not in the future of the day of signing
  it.each([
    ['2026-11-24', []],
    ['2026-11-25', []],
    ['2026-11-26', ['14cfr43.9(a)(2)']],
  ])('completed on %s, signed on 25 November', (day, cites) => {
    expect(missing({ completedOn: known(day) })).toEqual(cites);
  });

  // (a)(2): not before the work began
  it.each([
    ['2026-11-23', ['14cfr43.9(a)(2)']],
    ['2026-11-24', []],
    ['2026-11-25', []],
  ])('completed on %s, begun on 24 November', (day, cites) => {
    expect(missing({ completedOn: known(day) })).toEqual(cites);
  });

  it('(a)(2): unknown dates bar and name themselves', () => {
    const lines = checkEntry439(entry({ completedOn: unknown('the completion date') }), ON);
    expect(lines.find((line) => line.effect === 'bars')?.missing).toBe('the completion date');
    expect(missing({ startedOn: unknown('when the work began') })).toEqual(['14cfr43.9(a)(2)']);
  });

  it('(a)(3): somebody did the work', () => {
    expect(missing({ performedBy: [] })).toEqual(['14cfr43.9(a)(3)']);
    expect(missing({ performedBy: ['Test Person', ' '] })).toEqual(['14cfr43.9(a)(3)']);
    expect(missing({ performedBy: ['Another Person'] })).toEqual([]);
  });

  it.each([
    ['signature', { signed: false }],
    ['number', { certificateNumber: null }],
    ['number blank', { certificateNumber: '' }],
    ['kind', { certificateKind: null }],
    ['name', { name: ' ' }],
  ])('(a)(4): without %s', (_title, gap) => {
    expect(missing({ approver: { ...entry().approver, ...gap } })).toEqual(['14cfr43.9(a)(4)']);
  });

  it('every gap is named at once', () => {
    const approver = { name: '', signed: false, certificateNumber: null, certificateKind: null };
    expect(missing({ description: null, performedBy: [], approver })).toHaveLength(6);
  });
});

/** Part 43 Appendix A(c), eCFR copy of 24 August 2026 (items), 77 FR 71096 (item 32 removed). */
describe('Appendix A(c)', () => {
  it('has items 1 to 31, each with its own paragraph', () => {
    expect(PREVENTIVE_ITEMS.map((item) => item.item)).toEqual(
      Array.from({ length: 31 }, (_, index) => index + 1),
    );
    for (const item of PREVENTIVE_ITEMS) expect(item.cite).toBe(`14cfr43appA(c)(${item.item})`);
  });

  it.each([
    [1, /tyre/],
    [8, /hydraulic/],
    [14, /belt/],
    [17, /position and landing lights/],
    [23, /strainer/],
    [31, /transponder/],
  ])('item %s is about %s', (item, words) => {
    const found = preventiveItem(item);
    expect(found.known && found.value.task).toMatch(words);
  });

  it.each([null, 0, -1, 32, 1.5, Number.NaN])('%s is no item', (item) => {
    expect(preventiveItem(item).known).toBe(false);
  });

  // 43.3(k), 77 FR 71096: a database update was item 32 and is no maintenance now. Of 32 alone that is said.
  it.each([
    [32, true],
    [0, false],
    [33, false],
    [null, false],
  ])('%s: 43.3(k) is named: %s', (item, named) => {
    const found = preventiveItem(item);
    expect(!found.known && found.missing.includes('43.3(k)')).toBe(named);
  });
});

/** Part 43 Appendix A(b), eCFR copy of 24 August 2026. */
describe('Appendix A(b)', () => {
  const no = (group: 'airframe' | 'powerplant' | 'propeller' | 'appliance') =>
    Object.fromEntries(majorQuestionsFor(group).map((question) => [question.key, false]));

  it.each(MAJOR_QUESTIONS.map((question) => [question.key, question] as const))(
    '%s: one yes is major, also with the rest open',
    (key, question) => {
      for (const answers of [{ [key]: true }, { ...no(question.group), [key]: true }]) {
        const result = classifyWork(question.group, answers);
        expect(result.kind).toEqual({ known: true, value: 'major' });
        expect(result.lines.map((line) => line.cite)).toEqual([question.cite]);
      }
    },
  );

  it.each(MAJOR_QUESTIONS.map((question) => [question.key, question] as const))(
    '%s: left open, the work is neither',
    (key, question) => {
      const result = classifyWork(question.group, { ...no(question.group), [key]: undefined });
      expect(result.kind.known).toBe(false);
      expect(result.lines[0]?.effect).toBe('bars');
      expect(result.lines[0]?.missing).toBeTruthy();
    },
  );

  it.each(['airframe', 'powerplant', 'propeller', 'appliance'] as const)('%s: all no is minor', (group) => {
    expect(classifyWork(group, no(group)).kind).toEqual({ known: true, value: 'minor' });
  });

  it('an answer to another group’s question decides nothing', () => {
    expect(classifyWork('airframe', { 'propeller-shortened': true }).kind.known).toBe(false);
  });
});
