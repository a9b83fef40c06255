/**
 * What the flight form asks and sends. The claim behind it, that a question which is not asked cannot decide, is proved
 * against the rules themselves: 91.205(b)(12), (d)(2), (e), 91.171, 91.207(e)(2), (f)(3), 91.407(b), 91.411, 91.215, 91.225.
 */
import { describe, expect, test } from 'vitest';
import { callInWords } from '@/app/desk/flight/call-in-words';
import {
  asksAltitude,
  emptyFlightForm,
  flightAsTyped,
  problemOfForm,
  questionsFor,
  QUESTIONS,
} from '@/lib/releases/flight-form';
import type { Question } from '@/lib/releases/flight-form';
import { baseIn, identIn, placeText } from '@/lib/releases/place-text';
import { formOfFlight, formOfPlan, withChange, type PlanToCompose } from '@/lib/releases/prefill';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import type { ProposedFlight, Purpose } from '@/lib/rules/operations';
import { AWAY, deferralOf, flightOf, trainer, withBroken, withoutEquipment } from '../fixtures/aircraft';
import { inEnglish } from '@/lib/words/translate';

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

// Places and ways to fill the form in one press are our own design, no source.
const BASES = [
  { id: 'base-1', ident: 'ZZQB', name: 'Quillback Field', zone: 'America/Chicago' },
  { id: 'base-2', ident: 'ZZTM', name: 'Tamarack Shore', zone: 'America/New_York' },
];

describe('places', () => {
  test.each([
    ['ZZQB, Quillback Field', 'ZZQB'],
    ['  zzqb ', 'ZZQB'],
    ['kden,', 'KDEN'],
    ['', ''],
    [',', ''],
  ])('%j means the place %j', (text, ident) => expect(identIn(text)).toBe(ident));

  test('what a chosen place is written as reads back as that place', () => {
    for (const base of BASES) expect(baseIn(placeText(base), BASES)).toBe(base);
  });

  test('a base goes by its number, an airport by its identifier, nothing as nothing', () => {
    const sent = flightAsTyped({ ...emptyFlightForm('a'), from: 'zzqb', to: 'KDEN, Denver' }, BASES);
    expect(sent).toMatchObject({ fromBaseId: 'base-1', toBaseId: '', toIdent: 'KDEN' });
    expect(sent).not.toHaveProperty('fromIdent');
    const empty = flightAsTyped(emptyFlightForm('a'), BASES);
    expect(empty).toMatchObject({ fromBaseId: '', toBaseId: '' });
    expect(empty).not.toHaveProperty('fromIdent');
    expect(empty).not.toHaveProperty('toIdent');
  });

  test('the start of an identifier is no base: it is not guessed', () => {
    expect(flightAsTyped({ ...emptyFlightForm('a'), from: 'ZZQ' }, BASES)).toMatchObject({
      fromBaseId: '',
      fromIdent: 'ZZQ',
    });
  });

  test('a refusal of either way to send a place stands beside the one field, said once', () => {
    const refused = problemOfForm({
      code: 'invalid',
      say: 'no',
      fields: {
        fromBaseId: ['Choose it.'],
        fromIdent: ['Choose it.'],
        toIdent: ['No such.'],
        rules: ['Choose.'],
      },
    });
    expect(refused.fields).toEqual({ from: ['Choose it.'], to: ['No such.'], rules: ['Choose.'] });
    const other = { code: 'try_again', say: 'later' } as const;
    expect(problemOfForm(other)).toBe(other);
  });
});

const PLAN: PlanToCompose = {
  id: 'plan',
  aircraftId: 'a',
  pilotId: null,
  departAt: '2026-11-27T21:00:00.000Z',
  arriveAt: '2026-11-27T23:30:00.000Z',
  plannedTenths: 21,
  from: { ident: 'ZZQB', name: 'Quillback Field', zone: 'America/Chicago' },
  to: { ident: 'ZZTM', name: 'Tamarack Shore', zone: 'America/New_York' },
  rules: null,
  purpose: null,
};

describe('from a plan', () => {
  test('each time in the zone of its own place, what the plan does not say is left to answer', () => {
    const form = formOfPlan(PLAN);
    expect(form).toMatchObject({
      from: 'ZZQB, Quillback Field',
      to: 'ZZTM, Tamarack Shore',
      departLocal: '2026-11-27T15:00',
      arriveLocal: '2026-11-27T18:30',
      plannedHours: '2.1',
      pilotId: '',
      rules: '',
      purpose: '',
    });
    for (const question of QUESTIONS) expect(form[question]).toBe('');
    expect(formOfPlan({ ...PLAN, plannedTenths: null }).plannedHours).toBe('');
  });

  test('the plan is named as long as it is flown with its aircraft', () => {
    const form = formOfPlan(PLAN);
    expect(flightAsTyped(form, BASES).plannedFlightId).toBe('plan');
    expect(flightAsTyped({ ...form, aircraftId: 'b' }, BASES)).not.toHaveProperty('plannedFlightId');
    expect(flightAsTyped(emptyFlightForm('a'), BASES)).not.toHaveProperty('plannedFlightId');
  });
});

test('released anew: the same flight, but no permit and no word of air traffic control', () => {
  const flight = flightOf({
    rules: 'IFR',
    usesVor: known(true),
    controlledAirspace: known(false),
    adsbAirspace: unknown('whether'),
    highestAltitudeFtMsl: known(5500),
    atcTransponder: 'granted',
    continuingToRepair: true,
  });
  const form = formOfFlight({ aircraftId: 'a', pilotId: 'p', flight, plannedFlightId: null }, (ident) =>
    ident === flight.from.ident ? 'Home' : undefined,
  );
  expect(form).toMatchObject({
    aircraftId: 'a',
    pilotId: 'p',
    from: `${flight.from.ident}, Home`,
    rules: 'IFR',
    usesVor: 'yes',
    controlledAirspace: 'no',
    adsbAirspace: '',
    highestAltitudeFtMsl: '5500',
    permitId: '',
    atcTransponder: 'not-asked',
    continuingToRepair: false,
    plannedFlightId: '',
  });
});

describe('a proposal taken', () => {
  const form = {
    ...emptyFlightForm('a'),
    permitId: 'permit',
    arriveLocal: '2026-11-27T22:30',
    plannedHours: '4.0',
  };
  test('an earlier return changes the times and nothing else', () => {
    const change = { arriveLocal: '2026-11-27T17:05', plannedHours: '1.0' };
    expect(withChange(form, change)).toEqual({ ...form, ...change });
  });
  test('another aircraft does not fly under the first one’s permit', () => {
    expect(withChange(form, { aircraftId: 'b' })).toEqual({ ...form, aircraftId: 'b', permitId: '' });
    expect(withChange(form, { aircraftId: 'a' })).toEqual(form);
  });
});

test('what is said to the mechanic names aircraft, time, what holds it, and what is asked', () => {
  const about = {
    aircraftId: 'a',
    registration: 'N042QB',
    departAt: '2026-11-27T21:00:00.000Z',
    zone: 'America/Chicago',
    fromIdent: 'ZZQB',
  };
  const item = (label: string) => ({ kind: 'discrepancy', id: label, label }) as const;
  const one = callInWords(inEnglish, about, [item('W-0047 Landing light dead')]);
  expect(one).toContain('N042QB is wanted Fri 27 Nov 2026, 15:00 CST.');
  expect(one).toContain('One thing holds it: W-0047 Landing light dead.');
  expect(callInWords(inEnglish, about, [item('W-1 A'), item('W-2 B')])).toContain(
    '2 things hold it: W-1 A; W-2 B.',
  );
  expect(callInWords(inEnglish, about, [])).toContain('It may not go as it stands.');
});
