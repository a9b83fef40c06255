/**
 * What the engine still lacks. Source: issue 6, "set-up is done when the engine stops asking"; the paragraphs are those of
 * the rules themselves, which lib/rules/lacking.ts only gathers.
 */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answersByOperation } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import { lackingFor, type Lacking } from '@/lib/rules/lacking';
import { operationId } from '@/lib/rules/operations';
import type { ReferenceBase } from '@/lib/rules/use-of-flight';
import { BASE, TODAY, trainer, trainerType } from '../fixtures/aircraft';

const NOW = '2026-11-25T15:00:00Z';
const AT_BASE: ReferenceBase = {
  ...BASE,
  transponderAirspace: known(true),
  adsbAirspace: known(true),
  controlledAirspace: known(true),
};
const lackingOf = (aircraft: AircraftFacts, base: ReferenceBase = AT_BASE): Lacking[] =>
  lackingFor(aircraft, base, TODAY, NOW);
const ALL = answersByOperation(trainer(), AT_BASE, TODAY, NOW).map(({ kind }) => operationId(kind));
const noGos = (aircraft: AircraftFacts, base: ReferenceBase): string[] =>
  answersByOperation(aircraft, base, TODAY, NOW)
    .filter(({ answer }) => answer.outcome === 'no-go')
    .map(({ kind }) => operationId(kind));
const without = (fn: string): AircraftFacts =>
  trainer({ equipment: trainer().equipment.filter((row) => row.function !== fn) });

it('asks nothing about a complete aircraft', () => {
  expect(lackingOf(trainer())).toEqual([]);
});

describe('one fact taken away', () => {
  it("says the issue's own example: no certification date, the light rule of 91.205(b)(11)", () => {
    const type = trainerType({ certificatedOn: unknown('the certification date of type Invented trainer') });
    expect(lackingOf(trainer({ type }))).toMatchObject([
      {
        missing: 'the certification date of type Invented trainer',
        cite: '14cfr91.205(b)(11)',
        because:
          'No certification date of type Invented trainer: the anticollision light rule of 91.205(b)(11) cannot be judged.',
        kinds: ALL,
        enterAt: 'type',
      },
    ]);
  });

  it('names a fact once, however many paragraphs ask for it', () => {
    const type = trainerType({ seats: unknown('the number of seats') });
    const [only, ...more] = lackingOf(trainer({ type }));
    expect(more).toEqual([]);
    expect(only?.cites).toEqual(['14cfr91.205(b)(13)', '14cfr91.205(b)(14)']);
    expect(only?.because).toBe(
      'No number of seats: the safety belt rule of 91.205(b)(13) and the shoulder harness rule of 91.205(b)(14) cannot be judged.',
    );
  });

  it('says which kinds of operation it holds up', () => {
    expect(lackingOf(without('landing-light'))).toMatchObject([
      { cite: '14cfr91.205(c)(4)', kinds: ['night-vfr-hire', 'night-ifr-hire'], enterAt: 'equipment' },
    ]);
    const requirements = trainer().requirements.filter(({ kind }) => kind !== 'vor-check');
    expect(lackingOf(trainer({ requirements }))).toMatchObject([
      {
        missing: 'when the VOR was last checked',
        because:
          'Not known when the VOR was last checked: the VOR check rule of 91.171(a)(2) cannot be judged.',
        kinds: ['day-ifr-private', 'day-ifr-hire', 'night-ifr-private', 'night-ifr-hire'],
        enterAt: 'requirements',
      },
    ]);
  });

  it.each([
    ['annual', 'when the last annual inspection was done', '14cfr91.409(a)'],
    ['hundred-hour', 'when the last 100-hour inspection was done', '14cfr91.409(b)'],
    [
      'static-and-altimeter',
      'when the static system, altimeter and altitude reporting were last tested',
      '14cfr91.411(a)(1)',
    ],
    ['transponder', 'when the transponder was last tested', '14cfr91.413(a)'],
    ['elt-inspection', 'when the emergency locator transmitter was last inspected', '14cfr91.207(d)'],
    ['elt-battery', 'the expiry date of the emergency locator transmitter battery', '14cfr91.207(c)(2)'],
  ])('a %s that was never recorded is asked for', (kind, missing, cite) => {
    const requirements = trainer().requirements.filter((row) => row.kind !== kind);
    expect(lackingOf(trainer({ requirements }))).toMatchObject([{ missing, cite, enterAt: 'requirements' }]);
  });

  it('a paper that was never entered is asked for', () => {
    const papers = trainer().papers.filter(({ kind }) => kind !== 'airworthiness-certificate');
    expect(lackingOf(trainer({ papers }))).toMatchObject([
      {
        missing: 'whether the airworthiness certificate is aboard',
        cite: '14cfr91.203(a)(1)',
        about: { kind: 'paper', label: 'Airworthiness certificate' },
        kinds: ALL,
        enterAt: 'papers',
      },
    ]);
  });

  it('two rows with the same missing words are two things to enter', () => {
    const [row] = trainer().requirements.filter(({ kind }) => kind === 'annual');
    const bare = { ...row!, lastDone: unknown('when "Annual" was last done') };
    const requirements = [...trainer().requirements, { ...bare, id: 'second' }, { ...bare, id: 'third' }];
    expect(lackingOf(trainer({ requirements })).map(({ about }) => about?.id)).toEqual(['second', 'third']);
  });

  it('comes in the order of setting up', () => {
    const bare = trainer({
      type: trainerType({ turbine: known(false), seats: unknown('the number of seats') }),
      standardCategory: unknown('whether it is in standard category'),
      papers: [],
      directives: unknown('which airworthiness directives apply'),
      equipment: [],
    });
    const base = { ...AT_BASE, transponderAirspace: unknown('whether 0WC lies in transponder airspace') };
    const places = [...new Set(lackingOf(bare, base).map(({ enterAt }) => enterAt))];
    expect(places).toEqual(['base', 'type', 'aircraft', 'equipment', 'papers', 'directives']);
  });
});

describe('what is known is not asked for', () => {
  it('an item of which the list says that none is installed rules its kinds out, and nothing more is asked for them', () => {
    const equipment = trainer().equipment.map((row) =>
      row.function === 'vor-receiver' ? { ...row, installed: 0 } : row,
    );
    const requirements = trainer().requirements.filter(({ kind }) => kind !== 'vor-check');
    const dayOnly = trainer({ equipment, requirements });
    expect(noGos(dayOnly, AT_BASE)).toEqual(ALL.filter((id) => id.includes('ifr')));
    expect(lackingOf(dayOnly)).toEqual([]);
    // But what every kind asks for is still asked for.
    expect(lackingOf({ ...dayOnly, papers: [] }).length).toBeGreaterThan(0);
  });

  it('an inspection that ran out is no go and not lacking', () => {
    const requirements = trainer().requirements.map((row) =>
      row.kind === 'annual' && row.lastDone.known
        ? { ...row, lastDone: known({ ...row.lastDone.value, on: '2024-01-10' }) }
        : row,
    );
    const late = trainer({ requirements });
    expect(noGos(late, AT_BASE)).toEqual(ALL);
    expect(lackingOf(late)).toEqual([]);
  });

  it('a write-up that grounds does not hide what else is lacking', () => {
    const type = trainerType({ certificatedOn: unknown('the certification date') });
    const requirements = trainer().requirements.map((row) =>
      row.kind === 'annual' && row.lastDone.known
        ? { ...row, lastDone: known({ ...row.lastDone.value, on: '2024-01-10' }) }
        : row,
    );
    expect(lackingOf(trainer({ type, requirements }))).toHaveLength(1);
  });
});
