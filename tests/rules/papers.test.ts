import { describe, expect, it } from 'vitest';
import type { PaperFacts, PaperKind } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { paperName } from '@/lib/rules/papers-in-words';
import { registrationExpiry, stretchedRegistrationExpiry } from '@/lib/rules/part-47/47-40-registration';
import { checkPapers } from '@/lib/rules/part-91/91-203-papers';
import { trainer, trainerPapers, useOf } from '../fixtures/aircraft';

const withPaper = (kind: PaperKind, change: Partial<PaperFacts>) =>
  trainer({
    papers: trainerPapers().map((paper) => (paper.kind === kind ? { ...paper, ...change } : paper)),
  });
const without = (kind: PaperKind) =>
  trainer({ papers: trainerPapers().filter((paper) => paper.kind !== kind) });

const PARAGRAPHS = [
  ['airworthiness-certificate', '14cfr91.203(a)(1)'],
  ['registration', '14cfr91.203(a)(2)'],
  ['flight-manual', '14cfr91.9(b)'],
  ['weight-and-balance', '14cfr91.9(b)'],
] as const;

describe('papers aboard (14 CFR 91.203(a), 91.9(b))', () => {
  it('supports each of the four, under its paragraph', () => {
    const lines = checkPapers(trainer(), useOf());
    expect(lines.map(({ effect, cite }) => [effect, cite])).toEqual(
      PARAGRAPHS.map(([, cite]) => ['supports', cite]),
    );
  });

  it.each(PARAGRAPHS)('%s not aboard bars under %s', (kind, cite) => {
    const barred = checkPapers(withPaper(kind, { aboard: known(false) }), useOf()).filter(
      (line) => line.effect === 'bars',
    );
    expect(barred).toHaveLength(1);
    expect(barred[0]).toMatchObject({ cite, about: { kind: 'paper', id: kind } });
    expect(barred[0]?.missing).toBeUndefined();
  });

  it.each(PARAGRAPHS)('%s not known to be aboard bars and names what is missing', (kind, cite) => {
    const lines = checkPapers(withPaper(kind, { aboard: unknown('whether it is aboard') }), useOf());
    expect(lines).toContainEqual(
      expect.objectContaining({ effect: 'bars', cite, missing: 'whether it is aboard' }),
    );
  });

  it.each(PARAGRAPHS)('%s absent from the list of papers bars as not known', (kind, cite) => {
    const barred = checkPapers(without(kind), useOf()).filter((line) => line.effect === 'bars');
    expect(barred).toHaveLength(1);
    expect(barred[0]).toMatchObject({ cite });
    expect(barred[0]?.missing).toMatch(/^whether the .* is aboard$/);
  });

  it('says that weight and balance is a reading of 91.9(b), which does not name it', () => {
    const [line] = checkPapers(trainer(), useOf()).filter(
      (candidate) =>
        candidate.about?.id === 'weight-and-balance' || candidate.about?.label.startsWith('Weight'),
    );
    expect(line?.strictReading).toMatch(/does not name/);
  });
});

describe('registration in force on the last day of the flight (14 CFR 91.203(a)(2), 47.40(a))', () => {
  // Common practice for "through": the last day itself counts.
  it.each([
    ['the day before it', '2026-11-24', 'bars'],
    ['on it', '2026-11-25', 'supports'],
    ['the day after it', '2026-11-26', 'supports'],
  ])('a flight of 25 Nov 2026, certificate ending %s', (_words, through, effect) => {
    const aircraft = withPaper('registration', { validThrough: known(through) });
    const line = checkPapers(aircraft, useOf()).find((candidate) => candidate.about?.id === 'registration');
    expect(line?.effect).toBe(effect);
    if (effect === 'bars') expect(line?.cite).toBe('14cfr47.40(a)');
  });

  it('counts the day of arrival, not of departure', () => {
    const aircraft = withPaper('registration', { validThrough: known('2026-11-25') });
    const overnight = useOf({ departOn: '2026-11-25', arriveOn: '2026-11-26' });
    expect(checkPapers(aircraft, overnight).some((line) => line.effect === 'bars')).toBe(true);
  });

  it('takes no registration without an end', () => {
    const aircraft = withPaper('registration', { validThrough: known(null) });
    expect(checkPapers(aircraft, useOf())).toContainEqual(
      expect.objectContaining({ effect: 'bars', missing: 'when the registration runs out' }),
    );
  });

  it('takes the new certificate when the old one is still on the list', () => {
    const old: PaperFacts = {
      id: 'old',
      kind: 'registration',
      aboard: known(true),
      validThrough: known('2023-05-31'),
    };
    const aircraft = trainer({ papers: [old, ...trainerPapers()] });
    expect(checkPapers(aircraft, useOf()).every((line) => line.effect === 'supports')).toBe(true);
  });
});

describe('how long a registration lasts (14 CFR 47.40(a))', () => {
  it.each([
    // Source: 87 FR 71210, seven years after the last day of the month of issue.
    ['2024-02-10', '2031-02-28'],
    ['2024-02-29', '2031-02-28'],
    ['2023-01-23', '2030-01-31'],
    // Issued under the three-year rule and still in force on 23 Jan 2023: seven years in all.
    ['2020-05-12', '2027-05-31'],
    ['2020-01-05', '2027-01-31'],
    // Already expired on 31 Dec 2022, before the change: not stretched.
    ['2019-12-31', '2022-12-31'],
    // The day before the change, the day of it, the day after: seven years either way, the first by the stretching.
    ['2023-01-22', '2030-01-31'],
    ['2023-01-24', '2030-01-31'],
    // The day after 31 Dec 2019: three years to the end of January 2023, past the change.
    ['2020-01-01', '2027-01-31'],
  ])('issued %s: through %s', (issuedOn, through) => {
    expect(registrationExpiry(issuedOn)).toBe(through);
  });

  it.each([
    // Source: FAA words on the change as quoted by agairupdate.com: the printed date plus four years.
    ['2023-05-31', '2027-05-31'],
    ['2023-01-31', '2027-01-31'],
    ['2022-12-31', '2022-12-31'],
    // In force on the day of the change or not: expired the day before, on its last day, a day more. 87 FR 71210.
    ['2023-01-22', '2023-01-22'],
    ['2023-01-23', '2027-01-31'],
    ['2023-01-24', '2027-01-31'],
  ])('printed %s: through %s', (printed, through) => {
    expect(stretchedRegistrationExpiry(printed)).toBe(through);
  });
});

// Names: 91.203(a), 91.9(b); weight and balance data: common practice, no source.
describe('what a paper is called', () => {
  it.each([
    ['airworthiness-certificate', /airworthiness/i],
    ['registration', /registration/i],
    ['flight-manual', /manual/i],
    ['weight-and-balance', /balance/i],
  ])('%s', (kind, name) => {
    expect(paperName(kind)).toMatch(name);
    expect(paperName(kind)).not.toBe(kind);
  });
  it('one that is not known keeps its own letters', () => {
    expect(paperName('noise-certificate')).toBe('noise-certificate');
  });
});
