import { describe, expect, it } from 'vitest';
import {
  composeFinding,
  composeObservation,
  draftOfFinding,
  EMPTY_DRAFT,
  NOT_SURE,
  NOT_THE_SAME,
  questionsFor,
  readSame,
  sameAnswer,
  SOMETHING_ELSE,
  type FindingDraft,
  type FindingSetting,
} from '../../lib/findings/compose-finding';
import { offerFindings } from '../../lib/findings/offer-findings';
import { isClosedByServicing } from '../../lib/findings/servicing';
import { FINDING_CATALOGUE, findingsAt } from '../../lib/rules/findings/catalogue';
import { AREA_KEYS, usualStationOf, type AreaKey } from '../../lib/rules/walkaround/areas';
import { PACK_FINDINGS } from '../../lib/walkarounds/pack-law';

/** Our design throughout (issue 2, "raise a finding"; issue 3), no outside source, but where a paragraph is named. */
const EQUIPMENT = [
  { id: 'landing', name: 'Landing light', function: 'landing-light', installed: 1 },
  { id: 'position', name: 'Position lights', function: 'position-lights', installed: 3 },
  { id: 'com-1', name: 'Radio 1', function: 'two-way-radio', installed: 1 },
  { id: 'com-2', name: 'Radio 2', function: 'two-way-radio', installed: 1 },
];
const offersAt = (at: AreaKey) => offerFindings(PACK_FINDINGS, at, EQUIPMENT);
const offers = offersAt('cabin-power-on');
const draftOf = (part: Partial<FindingDraft>): FindingDraft => ({ ...EMPTY_DRAFT, words: 'Dark', ...part });
const settingAt = (at: AreaKey, part: Partial<FindingSetting> = {}): FindingSetting => ({
  requestId: 'r',
  aircraftId: 'a',
  walkaroundId: null,
  station: at,
  itemKey: null,
  foundAt: '2026-11-25T15:00:00Z',
  offers: offersAt(at),
  equipment: EQUIPMENT,
  ...part,
});
const compose = (part: Partial<FindingDraft>, at: AreaKey = 'cabin-power-on') =>
  composeFinding(draftOf(part), settingAt(at));
const inputOf = (part: Partial<FindingDraft>, at?: AreaKey) => {
  const composed = compose(part, at);
  if (!composed.ok) throw new Error(JSON.stringify(composed.fields));
  return composed.input;
};
const fieldsOf = (part: Partial<FindingDraft>, at?: AreaKey) => {
  const composed = compose(part, at);
  return composed.ok ? [] : Object.keys(composed.fields).sort();
};

describe('what is offered at an area', () => {
  it('is the same, in the same order, as the catalogue says of its usual station', () => {
    for (const area of AREA_KEYS) {
      expect(
        offersAt(area).map(({ key }) => key),
        area,
      ).toEqual(findingsAt(usualStationOf(area)).map(({ key }) => key));
    }
  });

  it('reaches every finding of the catalogue from some area', () => {
    const reached = new Set(AREA_KEYS.flatMap((area) => offersAt(area).map(({ key }) => key)));
    expect([...reached].sort()).toEqual(FINDING_CATALOGUE.map(({ key }) => key).sort());
  });

  it('is nothing at a place nobody knows', () => {
    expect(offerFindings(PACK_FINDINGS, 'galley', EQUIPMENT)).toEqual([]);
  });
});

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

  it('says when it was noticed, before the flight on a walkaround, and else only what was answered', () => {
    const finding = 'landing-light-dead';
    const phaseOf = (phase: string, walkaroundId: string | null) => {
      const made = composeFinding(draftOf({ finding, phase }), settingAt('cabin-power-on', { walkaroundId }));
      return made.ok ? made.input.phase : made.fields;
    };
    expect(phaseOf('', null)).toBeNull();
    expect(phaseOf('', 'w')).toBe('before-flight');
    expect(phaseOf('in-flight', null)).toBe('in-flight');
    expect(phaseOf('after-flight', null)).toBe('after-flight');
    expect(phaseOf('on-the-moon', null)).toBeNull();
  });

  it('names the item of the list it was met at', () => {
    const made = composeFinding(
      draftOf({ finding: 'landing-light-dead' }),
      settingAt('cabin-power-on', { itemKey: 'lights' }),
    );
    expect(made).toMatchObject({ ok: true, input: { itemKey: 'lights' } });
  });

  it('names the earlier write-up only when it is worse or back', () => {
    const finding = 'landing-light-dead';
    expect(inputOf({ finding }).relatedId).toBeNull();
    expect(inputOf({ finding, same: NOT_THE_SAME }).relatedId).toBeNull();
    expect(inputOf({ finding, same: sameAnswer('worse', 'd') }).relatedId).toBe('d');
    expect(inputOf({ finding, same: sameAnswer('back', 'd') }).relatedId).toBe('d');
    // The same as written is an observation; should it go out as a finding all the same, it claims nothing.
    expect(inputOf({ finding, same: sameAnswer('same', 'd') }).relatedId).toBeNull();
  });
});

describe('is it this one', () => {
  it('reads the answer back, and nothing out of no answer', () => {
    for (const how of ['same', 'worse', 'back'] as const) {
      expect(readSame(sameAnswer(how, 'a:b'))).toEqual({ how, writeUpId: 'a:b' });
    }
    expect(readSame('')).toBeNull();
    expect(readSame(NOT_THE_SAME)).toBeNull();
    expect(readSame('same:')).toBeNull();
  });
});

describe('an observation composed from a form', () => {
  const observe = (
    part: Partial<FindingDraft>,
    setting: Partial<FindingSetting> = {},
    at: AreaKey = 'propeller',
  ) => composeObservation(draftOf(part), 'd', settingAt(at, setting));

  it('carries the words with the place, where and when, and asks nothing the write-up knows', () => {
    expect(
      observe(
        { finding: SOMETHING_ELSE, words: ' Deeper now ', place: 'near the tip' },
        { walkaroundId: 'w', itemKey: 'blades' },
      ),
    ).toEqual({
      ok: true,
      input: {
        requestId: 'r',
        discrepancyId: 'd',
        walkaroundId: 'w',
        station: 'propeller',
        itemKey: 'blades',
        words: 'Deeper now / near the tip',
        measurements: {},
        foundAt: '2026-11-25T15:00:00Z',
        phase: 'before-flight',
      },
    });
  });

  it('says that it was seen where there are no words', () => {
    expect(observe({ words: ' ' })).toMatchObject({ ok: true, input: { words: 'Seen again, as written.' } });
  });

  it.each([
    [1999, true],
    [2000, true],
    [2001, false],
  ])('with %i characters of words and place together is taken: %s', (length, isTaken) => {
    // "x... / tip" is six longer than the words alone.
    expect(observe({ words: 'x'.repeat(length - 6), place: 'tip' }).ok).toBe(isTaken);
  });

  it('takes what was measured, and refuses what it cannot read', () => {
    const measured = (depth: string) => ({
      finding: 'propeller-nick',
      measurements: { 'propeller-nick-depth': depth },
    });
    expect(observe(measured('0.031'))).toMatchObject({
      ok: true,
      input: { measurements: { 'propeller-nick-depth': 31 } },
    });
    const refused = observe(measured('deep'));
    expect(refused.ok ? [] : Object.keys(refused.fields)).toEqual(['measurements.propeller-nick-depth']);
  });
});

describe('a form opened again from what was refused', () => {
  /** Whatever was answered composes to the same message again. */
  const again = (part: Partial<FindingDraft>, at: AreaKey = 'cabin-power-on') => {
    const input = inputOf(part, at);
    return [
      composeFinding(draftOfFinding(input, offersAt(at), 'worse'), settingAt(at)),
      { ok: true, input },
    ] as const;
  };

  it.each<[string, Partial<FindingDraft>, AreaKey]>([
    ['one of one', { finding: 'landing-light-dead', place: 'left' }, 'cabin-power-on'],
    ['how many', { finding: 'position-light-dead', count: '2' }, 'cabin-power-on'],
    ['how many, not sure', { finding: 'position-light-dead', count: NOT_SURE }, 'cabin-power-on'],
    ['which gauge', { finding: 'vacuum-gyro-dead', choice: '3422' }, 'cabin-power-on'],
    ['which gauge, not sure', { finding: 'vacuum-gyro-dead', choice: NOT_SURE }, 'cabin-power-on'],
    ['something else', { finding: SOMETHING_ELSE, kind: 'leak', phase: 'in-flight' }, 'tail'],
    ['something else, not sure', { finding: SOMETHING_ELSE, kind: NOT_SURE }, 'tail'],
    ['which item', { finding: SOMETHING_ELSE, kind: 'inoperative', item: 'com-2' }, 'cabin'],
    ['which item, not sure', { finding: SOMETHING_ELSE, kind: 'inoperative', item: NOT_SURE }, 'cabin'],
    [
      'measured, and worse than written',
      {
        finding: 'propeller-nick',
        measurements: { 'propeller-nick-depth': '.031', 'propeller-nick-from-tip': '4' },
        same: sameAnswer('worse', 'd'),
      },
      'propeller',
    ],
  ])('%s', (_, part, at) => {
    const [made, expected] = again(part, at);
    expect(made).toEqual(expected);
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
