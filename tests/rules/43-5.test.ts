/**
 * 14 CFR 43.5 with 43.9(d) and part 43 Appendix A(b), B(a), (b), (d): what is complete before an approval. Source of every
 * row: the paragraph named beside it, eCFR of 3 September 2026. Where a limit is a yes or a no there is no number to stand
 * just under or over; each answer has its row, the open one too: unknown is never go (issue 4).
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { checkBeforeApproval, type BeforeApprovalFacts } from '@/lib/rules/part-43/43-5-before-approval';
import { workerStanding43_3 } from '@/lib/rules/part-43/43-3-who-may-perform';
import {
  classifyAsked,
  MAJOR_QUESTIONS,
  majorQuestionsAsked,
  majorQuestionsFor,
} from '@/lib/rules/part-43/43-appendix-a-major';
import { toldOf } from '../fixtures/lines';

const NO = Object.fromEntries(MAJOR_QUESTIONS.map(({ key }) => [key, false]));

const minor: BeforeApprovalFacts = {
  kind: 'minor',
  part: 'propeller',
  jasc: '6111',
  entryMade: true,
  majorAnswers: NO,
  majorRecord: null,
  approvedData: null,
  approver: 'mechanic',
  limitsChanged: unknown('not asked'),
  limitsRevised: null,
  cabinTank: unknown('not asked'),
  copyAboard: unknown('not asked'),
};
const major: BeforeApprovalFacts = {
  ...minor,
  kind: 'major',
  part: 'airframe',
  jasc: '5730',
  majorAnswers: { ...NO, 'airframe-primary-structure': true },
  majorRecord: { kind: 'form-337', reference: '337 of 25 November' },
  approvedData: 'DR-57-1',
  approver: 'inspection-authorization',
  limitsChanged: known(false),
  cabinTank: known(false),
};

const bars = (facts: BeforeApprovalFacts) =>
  checkBeforeApproval(facts)
    .filter((line) => line.effect === 'bars')
    .map((line) => line.cite);

const lines = (facts: BeforeApprovalFacts) => toldOf(checkBeforeApproval(facts));

describe('all complete: every paragraph says so', () => {
  it.each([
    ['a minor repair', minor, ['supports 14cfr43.5(a)', 'supports 14cfr43appA(b)']],
    [
      'a major repair on Form 337',
      major,
      [
        'supports 14cfr43.5(a)',
        'supports 14cfr43appB(a)',
        'supports 14cfr65.95(a)(1)',
        'supports 14cfr43.5(c)',
      ],
    ],
    [
      'a repair station’s on its work order',
      {
        ...major,
        majorRecord: { kind: 'work-order', reference: 'WO 8812' },
        approver: 'repair-station',
      },
      [
        'supports 14cfr43.5(a)',
        'supports 14cfr43appB(b)',
        'supports 14cfr43appB(b)',
        'supports 14cfr43.5(c)',
      ],
    ],
    [
      'limits revised, a tank with its copy aboard',
      {
        ...major,
        limitsChanged: known(true),
        limitsRevised: 'Supplement 4 put in',
        cabinTank: known(true),
        copyAboard: known(true),
      },
      [
        'supports 14cfr43.5(a)',
        'supports 14cfr43appB(a)',
        'supports 14cfr65.95(a)(1)',
        'supports 14cfr43.5(c)',
        'supports 14cfr43appB(d)',
      ],
    ],
    // Neither has a repair form; the entry is all that (a) asks.
    ['an annual', { ...minor, kind: 'annual', majorAnswers: null }, ['supports 14cfr43.5(a)']],
    ['preventive work', { ...minor, kind: 'preventive', majorAnswers: null }, ['supports 14cfr43.5(a)']],
  ] as const)('%s', (_words, facts, expected) => {
    expect(lines(facts)).toEqual(expected);
  });
});

describe('43.5(a): the entry is made', () => {
  it('a whole entry carries a minor repair and a major one', () => {
    expect(bars(minor)).toEqual([]);
    expect(bars(major)).toEqual([]);
  });
  it('without it nothing is approved', () => {
    expect(bars({ ...minor, entryMade: false })).toEqual(['14cfr43.5(a)']);
    expect(bars({ ...minor, kind: 'preventive', majorAnswers: null, entryMade: false })).toEqual([
      '14cfr43.5(a)',
    ]);
  });
});

describe('Appendix A(b): minor only when every question was answered no', () => {
  it.each(majorQuestionsFor('propeller').map(({ key, cite }) => [key, cite] as const))(
    'one yes bars it as minor: %s',
    (key, cite) => {
      expect(bars({ ...minor, majorAnswers: { ...NO, [key]: true } })).toEqual([cite]);
    },
  );
  it('one left open, and none asked at all, are unknown and bar', () => {
    const open = Object.fromEntries(Object.entries(NO).filter(([key]) => key !== 'propeller-hub'));
    for (const majorAnswers of [open, null]) {
      const [line] = checkBeforeApproval({ ...minor, majorAnswers }).filter(
        ({ effect }) => effect === 'bars',
      );
      expect(line?.missing).toContain('whether this propeller work is major');
    }
  });
  it('appliances are asked where the system has them, each text once (A(b)(4))', () => {
    const groups = (part: Parameters<typeof majorQuestionsAsked>[0], jasc: string) => [
      ...new Set(majorQuestionsAsked(part, jasc).map(({ group }) => group)),
    ];
    expect(groups('instrument', '3416')).toEqual(['appliance']);
    expect(groups('avionics', '3452')).toEqual(['appliance']);
    expect(groups('airframe', '2421')).toEqual(['appliance', 'airframe']);
    expect(groups('powerplant', '7310')).toEqual(['appliance', 'powerplant']);
    expect(groups('airframe', '5730')).toEqual(['airframe']);
    expect(groups('propeller', '6111')).toEqual(['propeller']);
    // A propeller has its own list, (b)(3), whatever system the write-up was put under.
    expect(groups('propeller', '2421')).toEqual(['propeller']);
    const texts = majorQuestionsAsked('airframe', '2421').map(({ question }) => question);
    expect(new Set(texts).size).toBe(texts.length);
    // A field coil rewound on an alternator: A(b)(4)(iii).
    const found = classifyAsked('airframe', '2421', { ...NO, 'appliance-field-coil': true });
    expect(found.kind).toEqual(known('major'));
  });
});

describe('43.5(b), 43.9(d), Appendix B: the paper of a major repair', () => {
  it('none, and one without its number, bar (43.9(d))', () => {
    expect(bars({ ...major, majorRecord: null })).toEqual(['14cfr43.9(d)']);
    expect(bars({ ...major, majorRecord: { kind: 'form-337', reference: ' ' } })).toEqual(['14cfr43.9(d)']);
  });
  it('a work order stands in for a repair station and for nobody else (B(b))', () => {
    const workOrder = { ...major, majorRecord: { kind: 'work-order', reference: 'WO 8812' } } as const;
    expect(bars({ ...workOrder, approver: 'repair-station' })).toEqual([]);
    expect(bars({ ...workOrder, approver: 'inspection-authorization' })).toEqual(['14cfr43appB(b)']);
    expect(bars({ ...workOrder, approver: 'mechanic' })).toEqual(['14cfr43appB(b)']);
  });
  it('approved data is named (65.95(a)(1); for a station B(b))', () => {
    expect(bars({ ...major, approvedData: '' })).toEqual(['14cfr65.95(a)(1)']);
    expect(bars({ ...major, approver: 'repair-station', approvedData: null })).toEqual(['14cfr43appB(b)']);
  });
  it('a minor repair has no form', () => {
    expect(bars({ ...minor, majorRecord: null, approvedData: null })).toEqual([]);
  });
});

describe('43.5(c): limits and flight data that changed are revised', () => {
  it.each([
    ['not changed', known(false), null, []],
    ['changed and revised', known(true), 'Supplement 4 put in', []],
    ['changed and not revised', known(true), ' ', ['14cfr43.5(c)']],
    ['not known', unknown('whether limits changed'), null, ['14cfr43.5(c)']],
  ] as const)('%s', (_, limitsChanged, limitsRevised, barred) => {
    expect(bars({ ...major, limitsChanged, limitsRevised })).toEqual(barred);
  });
});

describe('Appendix B(d): a fuel tank in the cabin or baggage compartment', () => {
  it.each([
    ['no tank', known(false), unknown('not asked'), []],
    ['a tank, the copy aboard', known(true), known(true), []],
    ['a tank, no copy aboard', known(true), known(false), ['14cfr43appB(d)']],
    ['a tank, the copy not known', known(true), unknown('the copy'), ['14cfr43appB(d)']],
    ['not known', unknown('the tank'), known(true), ['14cfr43appB(d)']],
  ] as const)('%s', (_, cabinTank, copyAboard, barred) => {
    expect(bars({ ...major, cabinTank, copyAboard })).toEqual(barred);
  });
  it('takes Form 337 itself; a work order does not do', () => {
    const facts = {
      ...major,
      majorRecord: { kind: 'work-order', reference: 'WO 8812' },
      approver: 'repair-station',
      cabinTank: known(true),
      copyAboard: known(true),
    } as const;
    expect(bars(facts)).toEqual(['14cfr43appB(d)']);
  });
  it('no paper at all: the form is asked for, and its copy aboard', () => {
    const facts = { ...major, majorRecord: null, cabinTank: known(true), copyAboard: known(false) };
    expect(bars(facts)).toEqual(['14cfr43.9(d)', '14cfr43appB(d)']);
  });
  // Unknown is never go: what nobody has said is asked for by its name.
  it.each([
    [{ cabinTank: unknown('whether a tank was fitted') }, 'bars 14cfr43appB(d) whether a tank was fitted'],
    [
      { cabinTank: known(true), copyAboard: unknown('whether the copy is aboard') },
      'bars 14cfr43appB(d) whether the copy is aboard',
    ],
    [{ limitsChanged: unknown('whether limits changed') }, 'bars 14cfr43.5(c) whether limits changed'],
  ])('not known: %o', (change, expected) => {
    expect(lines({ ...major, ...change })).toContain(expected);
  });
});

describe('43.3(a), (d): somebody else did the work', () => {
  it.each([
    ['supervised', 'supports', '14cfr43.3(d)'],
    ['certificated', 'supports', '14cfr43.3(a)'],
    [null, 'bars', '14cfr43.3(d)'],
  ] as const)('%s', (standing, effect, cite) => {
    expect(workerStanding43_3(standing)).toMatchObject({ effect, cite });
  });
});
