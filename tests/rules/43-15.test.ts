/**
 * 14 CFR 43.15(a), (c)(1) and (c)(2). Source of every row unless said: the eCFR of 24 August 2026, section 43.15, in the
 * stored copy github.com/Lyutenant/FAR-AIM.
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import {
  checkPerformance4315,
  RUN_UP_CHECKS,
  type PerformanceFacts,
  type RunUpCheck,
  type RunUpKey,
} from '../../lib/rules/part-43/43-15-performance';
import { toldOf } from '../fixtures/lines';

const good: RunUpCheck = { answer: 'satisfactory', reading: '2,320' };
const allGood = Object.fromEntries(RUN_UP_CHECKS.map(({ key }) => [key, good])) as Record<
  RunUpKey,
  RunUpCheck
>;

const facts = (change: Partial<PerformanceFacts> = {}): PerformanceFacts => ({
  madeToDetermineAirworthiness: known(true),
  checklist: 'Invented maker’s checklist, revision 7',
  checklistCoversAppendixD: known(true),
  turbine: known(false),
  runUp: allGood,
  engineListed: false,
  ...change,
});

const barred = (change: Partial<PerformanceFacts>, approving = true) =>
  checkPerformance4315(facts(change), approving)
    .filter((line) => line.effect === 'bars')
    .map(({ cite }) => cite);

it('asks for the things of (c)(2) and no others', () => {
  expect(RUN_UP_CHECKS.map(({ paragraph, key }) => `${paragraph} ${key}`)).toEqual([
    '(i) static-rpm',
    '(i) idle-rpm',
    '(ii) magnetos',
    '(iii) fuel-pressure',
    '(iii) oil-pressure',
    '(iv) cylinder-temperature',
    '(iv) oil-temperature',
  ]);
});

const lines = (change: Partial<PerformanceFacts>, approving: boolean) =>
  toldOf(checkPerformance4315(facts(change), approving));

describe('(a) and (c)(1)', () => {
  it.each([
    ['all of it', {}, []],
    ['not made so', { madeToDetermineAirworthiness: known(false) }, ['14cfr43.15(a)']],
    ['nobody says how it was made', { madeToDetermineAirworthiness: unknown('how') }, ['14cfr43.15(a)']],
    ['no checklist', { checklist: null }, ['14cfr43.15(c)(1)']],
    ['a blank checklist', { checklist: ' ' }, ['14cfr43.15(c)(1)']],
    ['a shorter checklist', { checklistCoversAppendixD: known(false) }, ['14cfr43.15(c)(1)']],
    ['nobody says whether it covers', { checklistCoversAppendixD: unknown('whether') }, ['14cfr43.15(c)(1)']],
  ])('%s', (_words, change, expected) => {
    expect(barred(change)).toEqual(expected);
    // Also of an aircraft that is not approved.
    expect(barred(change, false)).toEqual(expected);
  });
  it('all of it good: each paragraph says so, the engine run where it is asked', () => {
    expect(lines({}, true)).toEqual([
      'supports 14cfr43.15(a)',
      'supports 14cfr43.15(c)(1)',
      'supports 14cfr43.15(c)(2)',
    ]);
    expect(lines({}, false)).toEqual(['supports 14cfr43.15(a)', 'supports 14cfr43.15(c)(1)']);
  });
  // Unknown is never go: what nobody has said is asked for by its name.
  it.each([
    [{ madeToDetermineAirworthiness: unknown('how it was made') }, 'bars 14cfr43.15(a) how it was made'],
    [
      { checklistCoversAppendixD: unknown('whether it covers Appendix D') },
      'bars 14cfr43.15(c)(1) whether it covers Appendix D',
    ],
    [{ turbine: unknown('the kind of engine') }, 'bars 14cfr43.15(c)(2) the kind of engine'],
  ])('not known: %o', (change, expected) => {
    expect(lines(change, true)).toContain(expected);
  });
});

describe('(c)(2) the engine run, before an approval', () => {
  const withOne = (key: RunUpKey, check: RunUpCheck | undefined) => {
    const { [key]: _left, ...others } = allGood;
    return { runUp: check ? { ...others, [key]: check } : others };
  };

  it.each(RUN_UP_CHECKS.map(({ key }) => key))('each one missing bars: %s', (key) => {
    expect(barred(withOne(key, undefined))).toEqual(['14cfr43.15(c)(2)']);
  });
  it.each([
    ['satisfactory', 'not more than 125 rpm', []],
    ['not-satisfactory', '250 rpm on the left', ['14cfr43.15(c)(2)']],
    ['not-run', '', ['14cfr43.15(c)(2)']],
    // Many aircraft show no cylinder temperature; how it was judged then is written. Common practice, no source.
    ['no-instrument', 'by the exhaust, even', []],
    ['no-instrument', ' ', ['14cfr43.15(c)(2)']],
  ] as const)('%s, "%s"', (answer, reading, expected) => {
    expect(barred(withOne('magnetos', { answer, reading }))).toEqual(expected);
  });
  /** The lines after those of (a) and (c)(1), by effect. */
  const run = (change: Partial<PerformanceFacts>, approving = true) =>
    checkPerformance4315(facts(change), approving).slice(2);

  it.each([
    ['satisfactory', 'as read', ['supports']],
    // Written beside the run, which stands.
    ['no-instrument', 'by the exhaust', ['notes', 'supports']],
    // One thing that was not good takes the word away from all the others.
    ['no-instrument', '', ['bars']],
    ['not-satisfactory', 'as read', ['bars']],
    ['not-run', '', ['bars']],
  ] as const)('what is said of the run: %s, "%s"', (answer, reading, effects) => {
    expect(run(withOne('oil-pressure', { answer, reading })).map(({ effect }) => effect)).toEqual(effects);
  });
  it('a blank judgement is asked for', () => {
    const blank = { answer: 'no-instrument', reading: '' } as const;
    expect(run(withOne('cylinder-temperature', blank))[0]?.missing).toMatch(/temperature .*judged/);
  });
  it('one thing noted does not stand for another that was not good', () => {
    const noted = { answer: 'no-instrument', reading: 'by the exhaust' } as const;
    const bad = { answer: 'not-satisfactory', reading: 'low' } as const;
    const runUp = { ...allGood, 'cylinder-temperature': noted, 'oil-pressure': bad };
    expect(run({ runUp }).map(({ effect }) => effect)).toEqual(['bars', 'notes']);
  });
  // An engine that ran badly and one that was never run are two findings; the owner reads which.
  it.each([true, false])('says whether it ran, approving: %s', (approving) => {
    const said = (answer: RunUpCheck['answer']) =>
      run(withOne('magnetos', { answer, reading: '' }), approving)[0]?.because;
    expect(said('not-run')).toMatch(/was not run/);
    expect(said('not-satisfactory')).toMatch(/was not satisfactory/);
  });
  it('not approved: nothing is said of a run that was good, nor where the list speaks of the engine', () => {
    expect(run({}, false)).toEqual([]);
    const bad = withOne('magnetos', { answer: 'not-satisfactory', reading: '250 rpm' });
    expect(run({ ...bad, engineListed: true }, false)).toEqual([]);
    expect(run(bad, false)).toMatchObject([
      { effect: 'bars', cite: '14cfr43.15(c)(2)', strictReading: expect.stringContaining('43.11(b)') },
    ]);
  });
  // What the run showed is a discrepancy found, and 43.11(b) lists it. Strict reading of ours.
  it.each([
    ['satisfactory', false, []],
    ['no-instrument', false, []],
    ['not-satisfactory', false, ['14cfr43.15(c)(2)']],
    ['not-satisfactory', true, []],
    ['not-run', false, ['14cfr43.15(c)(2)']],
    ['not-run', true, []],
  ] as const)('not approved, %s, engine or propeller listed: %s', (answer, engineListed, expected) => {
    expect(barred({ ...withOne('magnetos', { answer, reading: 'as read' }), engineListed }, false)).toEqual(
      expected,
    );
  });
  it('approved, a listed engine write-up makes up for nothing', () => {
    const change = withOne('magnetos', { answer: 'not-satisfactory', reading: '250 rpm' });
    expect(barred({ ...change, engineListed: true })).toEqual(['14cfr43.15(c)(2)']);
  });
  it('is not asked where the aircraft is not approved', () => {
    expect(barred({ runUp: {} }, false)).toEqual([]);
  });
  it('an unknown engine bars, and a turbine is not offered here', () => {
    expect(barred({ turbine: unknown('the engine') })).toEqual(['14cfr43.15(c)(2)']);
    expect(barred({ turbine: known(true) })).toEqual(['14cfr43.15(c)']);
  });
});
