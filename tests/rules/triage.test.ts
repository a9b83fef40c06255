import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../lib/rules/aircraft';
import { FINDING_CATALOGUE } from '../../lib/rules/findings/catalogue';
import { settledByOf, triage, type StoredLimit, type TriageInput } from '../../lib/rules/findings/triage';

/** Triage is our design; what each row stands on is named beside it. Limits are invented for one aircraft. */
const ask = (input: Partial<TriageInput>) =>
  triage({ findingKey: null, kind: null, jasc: null, measurements: {}, limits: [], ...input });

const limit = (facts: Partial<StoredLimit>): StoredLimit => ({
  measurement: 'propeller-nick-depth',
  unit: 'thousandth-inch',
  min: null,
  max: 31,
  source: 'Propeller owner’s manual, chapter 5',
  sourceDate: '2020-05-01',
  ...facts,
});
const NICK = [limit({}), limit({ measurement: 'propeller-nick-width' })];
const nick = (depth: number, width = 10) => ({
  'propeller-nick-depth': depth,
  'propeller-nick-width': width,
});
const bars = (proposal: ReturnType<typeof triage>) =>
  proposal.reasons.filter((line) => line.effect === 'bars');

describe('measured against a stored limit', () => {
  // a maximum: at most 0.031 in; one maker's figure, stored for this aircraft (W1, W2)
  it.each([
    [30, 'watch'],
    [31, 'watch'],
    [32, 'grounding'],
  ])('nick depth of %s thousandths: %s', (depth, severity) => {
    for (const findingKey of ['propeller-nick', 'propeller-erosion']) {
      const proposal = ask({ findingKey, measurements: nick(depth), limits: NICK });
      expect(proposal.severity).toEqual({ known: true, value: severity });
      expect(proposal.effective).toBe(severity);
      expect(proposal.settledBy).toBe('mechanic');
    }
  });

  // a minimum: at least 3.0 in (common practice as the stored figure, no source)
  it.each([
    [29, 'grounding'],
    [30, 'watch'],
    [31, 'watch'],
  ])('nose strut of %s tenths: %s', (tenths, severity) => {
    const limits = [limit({ measurement: 'nose-strut-extension', unit: 'tenth-inch', min: 30, max: null })];
    const proposal = ask({
      findingKey: 'nose-strut-low',
      measurements: { 'nose-strut-extension': tenths },
      limits,
    });
    expect(proposal.effective).toBe(severity);
  });

  // at least 5.0 qt (common practice as the stored figure, no source)
  it.each([
    [49, 'grounding'],
    [50, 'watch'],
    [51, 'watch'],
  ])('oil of %s tenths of a quart: %s, settled by servicing', (tenths, severity) => {
    const limits = [limit({ measurement: 'oil-quantity', unit: 'tenth-quart', min: 50, max: null })];
    const proposal = ask({ findingKey: 'oil-low', measurements: { 'oil-quantity': tenths }, limits });
    expect(proposal.effective).toBe(severity);
    expect(proposal.settledBy).toBe('pilot-servicing');
  });

  it('a watch says that a mechanic has still to find it, and names the source', () => {
    const proposal = ask({ findingKey: 'propeller-nick', measurements: nick(20), limits: NICK });
    expect(bars(proposal).map((line) => line.because)).toEqual([
      'Within the stored limit, but a mechanic has still to find so.',
    ]);
    expect(proposal.reasons.some((line) => line.because.includes('chapter 5, 2020-05-01'))).toBe(true);
  });

  it.each<[string, Partial<TriageInput>]>([
    ['no limit stored', { measurements: nick(5), limits: [] }],
    ['limit for one of two', { measurements: nick(5), limits: [limit({})] }],
    ['limit without source', { measurements: nick(5), limits: [limit({ source: ' ' }), NICK[1]!] }],
    ['limit in another unit', { measurements: nick(5), limits: [limit({ unit: 'tenth-inch' }), NICK[1]!] }],
    ['limit without bounds', { measurements: nick(5), limits: [limit({ max: null }), NICK[1]!] }],
    ['needed width not measured', { measurements: { 'propeller-nick-depth': 5 }, limits: NICK }],
    ['a fraction', { measurements: nick(5.5), limits: NICK }],
    ['a negative number', { measurements: nick(-1), limits: NICK }],
    ['not a number', { measurements: nick(Number.NaN), limits: NICK }],
    [
      'one usable and one unusable limit',
      { measurements: nick(5), limits: [...NICK, limit({ source: '' })] },
    ],
  ])('undecided, so grounding: %s', (_title, input) => {
    const proposal = ask({ findingKey: 'propeller-nick', ...input });
    expect(proposal.severity.known).toBe(false);
    expect(proposal.effective).toBe('grounding');
    expect(bars(proposal).some((line) => line.missing)).toBe(true);
  });

  it('outside one limit decides, whatever else is missing', () => {
    const proposal = ask({
      findingKey: 'propeller-nick',
      measurements: { 'propeller-nick-depth': 40 },
      limits: [limit({})],
    });
    expect(proposal.severity).toEqual({ known: true, value: 'grounding' });
  });

  it('of two limits the stricter one decides', () => {
    const limits = [...NICK, limit({ max: 20, source: 'Service bulletin' })];
    expect(ask({ findingKey: 'propeller-nick', measurements: nick(21), limits }).effective).toBe('grounding');
    expect(ask({ findingKey: 'propeller-nick', measurements: nick(20), limits }).effective).toBe('watch');
  });

  it('cord showing stays grounding however good the tread (AC 43.13-1B 9-14a)', () => {
    const limits = [limit({ measurement: 'main-tyre-tread', unit: 'thirty-second-inch', min: 2, max: null })];
    const measurements = { 'main-tyre-tread': 9 };
    expect(ask({ findingKey: 'tyre-cord', measurements, limits }).effective).toBe('grounding');
    expect(ask({ findingKey: 'tyre-worn', measurements, limits }).effective).toBe('watch');
  });

  it('a described measurement is recorded and never lowers anything', () => {
    const limits = [limit({ measurement: 'skin-dent-depth', max: 500 })];
    const proposal = ask({
      findingKey: 'skin-damage',
      jasc: '5330',
      measurements: { 'skin-dent-depth': 10 },
      limits,
    });
    expect(proposal.effective).toBe('grounding');
    expect(proposal.reasons.some((line) => line.because.includes('Recorded, not judged'))).toBe(true);
  });
});

describe('catalogue findings without a measurement', () => {
  const EFFECTIVE = {
    ground: 'grounding',
    hold: 'grounding',
    'ask-91.213': 'limiting',
    service: 'grounding',
    note: 'note',
  } as const;

  it.each(FINDING_CATALOGUE.map((entry) => [entry.key, entry] as const))('%s', (key, entry) => {
    const proposal = ask({ findingKey: key });
    expect(proposal.effective).toBe(EFFECTIVE[entry.proposed]);
    expect(proposal.severity.known).toBe(entry.proposed !== 'hold');
    expect(proposal.kind).toEqual({ known: true, value: entry.kind });
    expect(proposal.title).toBe(entry.title);
    expect(proposal.settledBy).toBe(entry.settledBy);
    expect(proposal.reasons.length).toBeGreaterThan(0);
    if (proposal.effective === 'grounding') expect(bars(proposal).length).toBeGreaterThan(0);
    expect(proposal.jasc.known).toBe(entry.choices.length === 0);
  });

  it('a choice settles code and equipment; without one both stay open', () => {
    expect(ask({ findingKey: 'basic-instrument-faulty', jasc: '3416' }).equipmentFunction).toBe('altimeter');
    expect(ask({ findingKey: 'transponder-fails', jasc: '3416' }).equipmentFunction).toBe(
      'altitude-reporting',
    );
    const open = ask({ findingKey: 'basic-instrument-faulty' });
    expect(open.equipmentFunction).toBeNull();
    expect(open.jasc.known).toBe(false);
    expect(bars(open).some((line) => line.missing?.includes('altimeter'))).toBe(true);
  });

  it('a code outside the table is not taken', () => {
    const proposal = ask({ findingKey: 'landing-light-dead', jasc: '9999' });
    expect(proposal.jasc.known).toBe(false);
  });

  // W4: equipment dead because it is broken is damage first
  it.each(['damage', 'wear', 'leak', 'contamination', 'fastener', 'document'] as const)(
    'a landing light reported as %s is no longer 91.213',
    (kind) => {
      const proposal = ask({ findingKey: 'landing-light-dead', kind });
      expect(proposal.kind).toEqual({ known: true, value: kind });
      expect(proposal.effective).toBe('grounding');
      expect(proposal.settledBy).toBe('mechanic');
      expect(proposal.equipmentFunction).toBe('landing-light');
    },
  );

  it.each(['inoperative', 'servicing', 'cosmetic'] as const)(
    'a crack reported as %s stays a crack',
    (kind) => {
      const proposal = ask({ findingKey: 'propeller-crack', kind });
      expect(proposal.kind).toEqual({ known: true, value: 'damage' });
      expect(proposal.effective).toBe('grounding');
    },
  );
});

describe('something else', () => {
  it.each<[string, FindingKind | null, string | null, string, boolean, string]>([
    ['nothing said', null, null, 'grounding', false, 'mechanic'],
    ['code alone', null, '5330', 'grounding', false, 'mechanic'],
    ['damage', 'damage', '5330', 'grounding', false, 'mechanic'],
    ['wear', 'wear', '5330', 'grounding', false, 'mechanic'],
    ['leak', 'leak', '2820', 'grounding', false, 'mechanic'],
    ['contamination', 'contamination', '2810', 'grounding', false, 'mechanic'],
    ['fastener', 'fastener', '5330', 'grounding', false, 'mechanic'],
    ['document', 'document', '1100', 'grounding', false, 'mechanic'],
    ['servicing', 'servicing', '1230', 'grounding', false, 'mechanic'],
    ['inoperative, code known', 'inoperative', '2210', 'limiting', true, 'deferral-or-repair'],
    ['inoperative, code missing', 'inoperative', null, 'grounding', false, 'deferral-or-repair'],
    ['inoperative, code not in the table', 'inoperative', '9999', 'grounding', false, 'deferral-or-repair'],
    ['cosmetic inside', 'cosmetic', '2520', 'note', true, 'anyone'],
    ['cosmetic, place not said', 'cosmetic', null, 'grounding', false, 'mechanic'],
    ['cosmetic on the propeller', 'cosmetic', '6111', 'grounding', false, 'mechanic'],
    ['cosmetic on the controls', 'cosmetic', '2710', 'grounding', false, 'mechanic'],
    ['cosmetic on the windshield', 'cosmetic', '5610', 'grounding', false, 'mechanic'],
  ])('%s', (_title, kind, jasc, effective, decided, settledBy) => {
    const proposal = ask({ kind, jasc });
    expect(proposal.effective).toBe(effective);
    expect(proposal.severity.known).toBe(decided);
    expect(proposal.settledBy).toBe(settledBy);
  });

  it('a code that names one item of equipment gives its function; one that names several does not', () => {
    expect(ask({ kind: 'inoperative', jasc: '2210' }).equipmentFunction).toBe('autopilot');
    expect(ask({ kind: 'inoperative', jasc: '3340' }).equipmentFunction).toBeNull();
    expect(ask({ kind: 'inoperative', jasc: '2210' }).title).toBe(
      'Something does not work: Autopilot System',
    );
  });

  it('a key the catalogue does not hold grounds, whatever kind is said', () => {
    const proposal = ask({ findingKey: 'no-such', kind: 'cosmetic', jasc: '2520' });
    expect(proposal.severity.known).toBe(false);
    expect(proposal.effective).toBe('grounding');
    expect(proposal.settledBy).toBe('mechanic');
  });

  it('settledByOf: only pure servicing may be closed by a pilot’s record', () => {
    const servicing = FINDING_CATALOGUE.filter((entry) => settledByOf(entry.key) === 'pilot-servicing');
    expect(servicing.map((entry) => entry.key)).toEqual(['tyre-low', 'water-cleared', 'oil-low']);
    expect(settledByOf(null)).toBe('mechanic');
    expect(settledByOf('no-such')).toBe('mechanic');
  });
});
