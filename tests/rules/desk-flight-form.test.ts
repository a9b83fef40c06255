/**
 * What the flight form asks and sends. The claim behind it, that a question which is not asked cannot decide, is proved
 * against the rules themselves: 91.205(b)(12), (d)(2), (e), 91.171, 91.207(e)(2), (f)(3), 91.407(b), 91.411, 91.215, 91.225.
 */
import { describe, expect, test } from 'vitest';
import {
  asksAltitude,
  emptyFlightForm,
  flightAsTyped,
  questionsFor,
  QUESTIONS,
} from '@/lib/releases/flight-form';
import type { Question } from '@/lib/releases/flight-form';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import type { ProposedFlight, Purpose } from '@/lib/rules/operations';
import { AWAY, deferralOf, flightOf, trainer, withBroken, withoutEquipment } from '../fixtures/aircraft';

const PURPOSES: readonly Purpose[] = [
  'instruction-for-hire',
  'carriage-for-hire',
  'student-solo',
  'private',
  'check-flight',
  'to-inspection',
];
const CHOICES = (['VFR', 'IFR'] as const).flatMap((rules) => PURPOSES.map((purpose) => ({ rules, purpose })));

const checkFlightOwed: AircraftFacts = {
  ...trainer(),
  work: [{ id: 'work', title: 'Aileron rigged', state: 'signed', checkFlight: known('owed'), testsOwed: [] }],
};
const lapsedElt: AircraftFacts = {
  ...trainer(),
  requirements: trainer().requirements.map((row) =>
    row.kind === 'elt-battery' ? { ...row, fixedExpiry: '2026-10-31' } : row,
  ),
};
const AIRCRAFT: Record<string, AircraftFacts> = {
  healthy: trainer(),
  'landing light deferred': withBroken(trainer(), 'landing-light', { deferral: deferralOf() }),
  'VOR receiver deferred': withBroken(trainer(), 'vor-receiver', { deferral: deferralOf() }),
  'transponder deferred': withBroken(trainer(), 'transponder', { deferral: deferralOf() }),
  'ADS-B Out deferred': withBroken(trainer(), 'adsb-out', { deferral: deferralOf() }),
  'altimeter test not recorded': {
    ...trainer(),
    requirements: trainer().requirements.filter((row) => row.kind !== 'static-and-altimeter'),
  },
  'transmitter broken': withBroken(trainer(), 'elt'),
  'no transmitter': withoutEquipment(trainer(), 'elt'),
  'transmitter battery lapsed': lapsedElt,
  'check flight owed': checkFlightOwed,
};

const notAsked = (choice: (typeof CHOICES)[number]): Question[] => {
  const asked = [...questionsFor(choice, 'asked'), ...questionsFor(choice, 'aside')];
  return QUESTIONS.filter((question) => !asked.includes(question));
};

describe.each(Object.entries(AIRCRAFT))('%s', (_name, aircraft) => {
  test.each(CHOICES)('a question not asked for $rules $purpose cannot decide', (choice) => {
    const answer = (overrides: Partial<ProposedFlight>) =>
      answerForFlight(aircraft, flightOf({ ...choice, from: AWAY, ...overrides })).answer;
    for (const question of notAsked(choice)) {
      const left = answer({ [question]: unknown(`MISSING ${question}`) });
      expect(left.lines.some((line) => line.because.includes('MISSING'))).toBe(false);
      expect(answer({ [question]: known(true) }).outcome).toBe(left.outcome);
      expect(answer({ [question]: known(false) }).outcome).toBe(left.outcome);
    }
    if (!asksAltitude(choice)) {
      const left = answer({ highestAltitudeFtMsl: unknown('MISSING altitude') });
      expect(left.lines.some((line) => line.because.includes('MISSING'))).toBe(false);
      expect(answer({ highestAltitudeFtMsl: known(45_000) }).outcome).toBe(left.outcome);
    }
  });
});

test('each question can decide somewhere: leaving it out of the form would be felt', () => {
  const decides = (question: Question) =>
    Object.values(AIRCRAFT).some((aircraft) =>
      CHOICES.some((choice) => {
        const of = (value: boolean) =>
          answerForFlight(
            aircraft,
            flightOf({ ...choice, from: AWAY, to: flightOf().to, [question]: known(value) }),
          ).answer.outcome;
        return of(true) !== of(false);
      }),
    );
  expect(QUESTIONS.filter((question) => !decides(question))).toEqual([]);
});

test('nothing is answered for the person at the desk: an empty form sends not said everywhere', () => {
  const sent = flightAsTyped(emptyFlightForm());
  for (const question of QUESTIONS) expect(sent[question]).toBe('not-said');
  expect(sent).toMatchObject({ pilotId: null, highestAltitudeFtMsl: null, continuingToRepair: false });
});

test('an answer to a question that is asked no more stays typed but is not sent', () => {
  const ifr = { ...emptyFlightForm('a'), rules: 'IFR', purpose: 'private', usesVor: 'no' } as const;
  expect(flightAsTyped(ifr).usesVor).toBe('no');
  expect(flightAsTyped({ ...ifr, rules: 'VFR' }).usesVor).toBe('not-said');
});

test.each([
  ['', null],
  [' 5500 ', 5500],
  ['0', 0],
  ['5500 ft', '5500 ft'],
  ['5,500', '5,500'],
  ['-100', '-100'],
])(
  'the altitude %j is sent as %j: what is no whole number goes as typed and is refused there',
  (typed, sent) => {
    const form = { ...emptyFlightForm('a'), rules: 'IFR', highestAltitudeFtMsl: typed } as const;
    expect(flightAsTyped(form).highestAltitudeFtMsl).toBe(sent);
  },
);
