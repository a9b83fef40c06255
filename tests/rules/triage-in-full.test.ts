/** What triage says beside the severity: who settles it and on what, in words. Triage is our design; limits are invented. */
import { describe, expect, it, test } from 'vitest';
import { FINDING_CATALOGUE } from '@/lib/rules/findings/catalogue';
import {
  isUsableLimit,
  judgeAgainstLimit,
  type StoredLimit,
} from '@/lib/rules/findings/measured-against-limits';
import { measurementOf } from '@/lib/rules/findings/measurements';
import { whyAnew } from '@/lib/rules/findings/observed-worse';
import { triage, type TriageInput } from '@/lib/rules/findings/triage';

const ask = (input: Partial<TriageInput>) =>
  triage({ findingKey: null, kind: null, jasc: null, measurements: {}, limits: [], ...input });
const limit = (facts: Partial<StoredLimit> = {}): StoredLimit => ({
  measurement: 'propeller-nick-depth',
  unit: 'thousandth-inch',
  min: null,
  max: 31,
  source: 'Invented manual, chapter 5',
  sourceDate: '2020-05-01',
  ...facts,
});
const depth = measurementOf('propeller-nick-depth')!;
const first = (input: Partial<TriageInput>) => ask(input).reasons[0];

describe('measured', () => {
  const nick = (
    value: number,
    limits: readonly StoredLimit[] = [limit(), limit({ measurement: 'propeller-nick-width' })],
  ) =>
    ask({
      findingKey: 'propeller-nick',
      measurements: { 'propeller-nick-depth': value, 'propeller-nick-width': 1 },
      limits,
    });

  it('within: a bar until a mechanic has found so, then the lines that judged', () => {
    expect(nick(31).reasons[0]).toMatchObject({
      effect: 'bars',
      cite: '14cfr91.405(a)',
      because: 'Within the stored limit, but a mechanic has still to find so.',
    });
    expect(nick(31).reasons.filter(({ effect }) => effect === 'supports')).toHaveLength(2);
  });

  it('outside: no reason of its own before the line that says by how much', () => {
    expect(nick(32).reasons[0]?.because).toMatch(
      /is over the most allowed, .* \(Invented manual, chapter 5, 2020-05-01\)\.$/,
    );
  });

  it('servicing within its limit may be settled by recording it', () => {
    for (const { key, measurements } of FINDING_CATALOGUE.filter(
      ({ settledBy }) => settledBy === 'pilot-servicing',
    )) {
      const [measured] = measurements.filter(({ role }) => role !== 'described');
      if (!measured) continue;
      const unit = measurementOf(measured.key)!.unit;
      const proposal = ask({
        findingKey: key,
        measurements: { [measured.key]: 50 },
        limits: [limit({ measurement: measured.key, unit, min: 10, max: 100 })],
      });
      if (proposal.effective === 'watch')
        expect(proposal.reasons[0]?.because).toBe(
          'Within the stored limit. Open until the servicing is recorded or a mechanic has found it good.',
        );
      expect(proposal.settledBy).toBe('pilot-servicing');
    }
  });

  it('what anybody may settle unmeasured, only a mechanic settles once measured', () => {
    for (const { key, measurements } of FINDING_CATALOGUE.filter(({ settledBy }) => settledBy === 'anyone')) {
      expect(ask({ findingKey: key }).settledBy).toBe('anyone');
      const [measured] = measurements.filter(({ role }) => role !== 'described');
      if (!measured) continue;
      const unit = measurementOf(measured.key)!.unit;
      const limits = [limit({ measurement: measured.key, unit, min: 10, max: 100 })];
      for (const value of [9, 50, 101, -1])
        expect(ask({ findingKey: key, measurements: { [measured.key]: value }, limits }).settledBy).toBe(
          'mechanic',
        );
    }
  });

  it.each([
    [{ unit: 'tenth-inch' }, false],
    [{ source: '  ' }, false],
    [{ min: null, max: null }, false],
    [{ max: 30.5 }, false],
    [{ min: 1.5, max: 31 }, false],
    [{ min: 1 }, true],
    [{ min: 1, max: null }, true],
    [{}, true],
  ] as const)('a limit with %j can judge: %s', (facts, usable) => {
    expect(isUsableLimit(limit(facts as Partial<StoredLimit>), depth)).toBe(usable);
  });

  it.each([
    [9, 'bars', /under the least allowed/],
    [10, 'supports', /within the stored limit/],
    [11, 'supports', /within the stored limit/],
    [30, 'supports', /within/],
    [31, 'supports', /within/],
    [32, 'bars', /over the most allowed/],
  ])('between 10 and 31: %i %s', (value, effect, because) => {
    const line = judgeAgainstLimit(value, limit({ min: 10 }), depth);
    expect(line).toMatchObject({ effect, cite: '14cfr91.405(a)' });
    expect(line.because).toMatch(because);
  });

  it('a source is said with its revision and date, or as undated', () => {
    const said = (facts: Partial<StoredLimit>) => judgeAgainstLimit(1, limit(facts), depth).because;
    expect(said({ source: ' Manual ', revision: '7', sourceDate: null })).toMatch(
      /\(Manual, revision 7, undated\)\.$/,
    );
    expect(said({ source: 'Manual' })).toMatch(/\(Manual, 2020-05-01\)\.$/);
  });

  it('nothing below nothing, and a zero is a value', () => {
    expect(nick(0).effective).toBe('watch');
    expect(nick(-1).severity.known).toBe(false);
  });

  it('a limit without its source, or none, is named among what is missing', () => {
    const missing = (limits: readonly StoredLimit[]) => {
      const { severity } = nick(10, limits);
      return severity.known ? null : severity.missing;
    };
    expect(missing([])).toContain(
      `a limit with its source for ${depth.label.toLowerCase()} of this aircraft`,
    );
    expect(
      missing([limit(), limit({ source: '' }), limit({ measurement: 'propeller-nick-width' })]),
    ).toContain('a limit with its source');
    expect(missing([limit(), limit({ measurement: 'propeller-nick-width' })])).toBeNull();
  });
});

describe('not measured', () => {
  it.each([
    ['ground', 'bars', '14cfr91.405(a)', 'grounding'],
    ['service', 'bars', '14cfr91.7(b)', 'grounding'],
    ['ask-91.213', 'limits', '14cfr91.213(a)', 'limiting'],
    ['note', 'notes', '14cfr91.7(b)', 'note'],
    ['hold', 'bars', '14cfr91.7(a)', null],
  ] as const)('proposed %s: %s by %s', (proposed, effect, cite, severity) => {
    for (const finding of FINDING_CATALOGUE.filter((one) => one.proposed === proposed)) {
      const proposal = ask({ findingKey: finding.key });
      expect(proposal.severity).toEqual(
        severity === null
          ? { known: false, missing: `what a mechanic finds on looking (${finding.title.toLowerCase()})` }
          : { known: true, value: severity },
      );
      expect(proposal.reasons[0]).toMatchObject({ effect, cite });
      expect(proposal.settledBy).toBe(finding.settledBy);
    }
  });

  it('something else that is only cosmetic says who judges it', () => {
    expect(first({ kind: 'cosmetic', jasc: '2510' })).toEqual({
      effect: 'notes',
      cite: '14cfr91.7(b)',
      because: 'Reported as cosmetic. The pilot in command judges the condition.',
    });
  });
});

describe('an observation that says more than its write-up', () => {
  const writeUp = { number: 'W-7', state: 'deferred', severity: 'limiting', findingKey: null } as const;

  test('a value that nobody measured, or without a usable limit beside it, says nothing', () => {
    expect(whyAnew(writeUp, {}, [limit()])).toBeNull();
    expect(whyAnew(writeUp, { 'propeller-nick-depth': 99 }, [limit({ source: '' })])).toBeNull();
    expect(
      whyAnew(writeUp, { 'propeller-nick-depth': 99 }, [limit({ measurement: 'no-such-thing' })]),
    ).toBeNull();
    expect(whyAnew(writeUp, { 'propeller-nick-depth': 31 }, [limit()])).toBeNull();
  });

  test('a value outside any limit is more, whatever the finding', () => {
    expect(whyAnew(writeUp, { 'propeller-nick-depth': 32 }, [limit()])).toMatch(
      /^More than W-7 stands for\. .*over the most/,
    );
  });

  test('within a limit is more than a note, and not more than a watch', () => {
    const nick = (severity: 'note' | 'watch') =>
      whyAnew({ ...writeUp, findingKey: 'propeller-nick', severity }, { 'propeller-nick-depth': 10 }, [
        limit(),
      ]);
    expect(nick('note')).toBe(
      'More than W-7 stands for. It is measurable. A mechanic has to find it within limits.',
    );
    expect(nick('watch')).toBeNull();
  });
});
