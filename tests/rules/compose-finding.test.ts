import { describe, expect, it } from 'vitest';
import {
  composeFinding,
  EMPTY_DRAFT,
  NOT_SURE,
  questionsFor,
  SOMETHING_ELSE,
  type FindingDraft,
} from '../../lib/findings/compose-finding';
import { offerFindings } from '../../lib/findings/offer-findings';
import { isClosedByServicing } from '../../lib/findings/servicing';

/** Our design throughout (issue 2, "raise a finding"), no outside source, but where a paragraph is named. */
const EQUIPMENT = [
  { id: 'landing', name: 'Landing light', function: 'landing-light', installed: 1 },
  { id: 'position', name: 'Position lights', function: 'position-lights', installed: 3 },
  { id: 'com-1', name: 'Radio 1', function: 'two-way-radio', installed: 1 },
  { id: 'com-2', name: 'Radio 2', function: 'two-way-radio', installed: 1 },
];
const offers = offerFindings('cabin-power-on', EQUIPMENT);
const draftOf = (part: Partial<FindingDraft>): FindingDraft => ({ ...EMPTY_DRAFT, words: 'Dark', ...part });
const compose = (part: Partial<FindingDraft>, at: Parameters<typeof offerFindings>[0] = 'cabin-power-on') =>
  composeFinding(draftOf(part), {
    requestId: 'r',
    aircraftId: 'a',
    walkaroundId: null,
    station: at,
    foundAt: '2026-11-25T15:00:00Z',
    offers: offerFindings(at, EQUIPMENT),
    equipment: EQUIPMENT,
  });
const inputOf = (part: Partial<FindingDraft>, at?: Parameters<typeof offerFindings>[0]) => {
  const composed = compose(part, at);
  if (!composed.ok) throw new Error(JSON.stringify(composed.fields));
  return composed.input;
};
const fieldsOf = (part: Partial<FindingDraft>, at?: Parameters<typeof offerFindings>[0]) => {
  const composed = compose(part, at);
  return composed.ok ? [] : Object.keys(composed.fields).sort();
};

describe('a finding composed from a form', () => {
  it('needs what was found and a few words, all said at once', () => {
    expect(fieldsOf({ words: '  ' })).toEqual(['finding', 'words']);
  });

  it('counts one where only one is installed, and asks nothing', () => {
    expect(questionsFor(draftOf({ finding: 'landing-light-dead' }), offers, EQUIPMENT).countUpTo).toBe(0);
    expect(inputOf({ finding: 'landing-light-dead' })).toMatchObject({
      findingKey: 'landing-light-dead',
      kind: null,
      jasc: null,
      equipmentId: 'landing',
      inoperativeCount: 1,
    });
  });

  it('asks how many where several are installed; "not sure" goes out as unknown, never as one', () => {
    const finding = 'position-light-dead';
    expect(fieldsOf({ finding })).toEqual(['count']);
    expect(inputOf({ finding, count: '1' }).inoperativeCount).toBe(1);
    expect(inputOf({ finding, count: '3' }).inoperativeCount).toBe(3);
    expect(fieldsOf({ finding, count: '4' })).toEqual(['count']);
    expect(inputOf({ finding, count: NOT_SURE })).toMatchObject({
      equipmentId: 'position',
      inoperativeCount: null,
    });
  });

  it('asks which gauge where the catalogue has several, and keeps "not sure" unknown', () => {
    const finding = 'vacuum-gyro-dead';
    expect(fieldsOf({ finding })).toEqual(['choice']);
    expect(inputOf({ finding, choice: '3422' }).jasc).toBe('3422');
    expect(inputOf({ finding, choice: NOT_SURE }).jasc).toBeNull();
  });

  it('does not take an answer left over from another finding', () => {
    expect(fieldsOf({ finding: 'vacuum-gyro-dead', choice: '9999' })).toEqual(['choice']);
    expect(fieldsOf({ finding: SOMETHING_ELSE, kind: 'inoperative', item: 'gone' })).toEqual(['item']);
  });

  it('outside the catalogue asks the kind, and which item when it does not work', () => {
    expect(fieldsOf({ finding: SOMETHING_ELSE })).toEqual(['kind']);
    expect(inputOf({ finding: SOMETHING_ELSE, kind: 'leak' })).toMatchObject({
      findingKey: null,
      kind: 'leak',
      equipmentId: null,
      inoperativeCount: null,
    });
    expect(inputOf({ finding: SOMETHING_ELSE, kind: NOT_SURE }).kind).toBeNull();
    expect(inputOf({ finding: SOMETHING_ELSE, kind: 'inoperative', item: 'com-2' })).toMatchObject({
      equipmentId: 'com-2',
      inoperativeCount: 1,
    });
    expect(inputOf({ finding: SOMETHING_ELSE, kind: 'inoperative', item: NOT_SURE }).equipmentId).toBeNull();
  });

  it('sends measurements as whole numbers of the smallest unit, and refuses what it cannot read', () => {
    const finding = 'propeller-nick';
    const measured = (depth: string) => ({ finding, measurements: { 'propeller-nick-depth': depth } });
    expect(inputOf(measured('0.031'), 'propeller').measurements).toEqual({ 'propeller-nick-depth': 31 });
    expect(inputOf(measured(' '), 'propeller').measurements).toEqual({});
    expect(fieldsOf(measured('deep'), 'propeller')).toEqual(['measurements.propeller-nick-depth']);
  });
});

describe('closed by recording servicing', () => {
  it.each([
    // Adding air is no maintenance: common practice, no source.
    ['tyre-low', 'servicing', true],
    ['water-cleared', 'contamination', true],
    // 14 CFR part 43 appendix A(c)(3): servicing a strut is preventive maintenance and wants its entry.
    ['nose-strut-low', 'servicing', false],
    // A mechanic has said that it is more than that.
    ['tyre-low', 'leak', false],
    ['propeller-nick', 'damage', false],
    ['no-such-finding', 'servicing', false],
    [null, 'servicing', false],
  ])('%s as %s: %s', (findingKey, kind, closes) => {
    expect(isClosedByServicing({ findingKey, kind })).toBe(closes);
  });
});
