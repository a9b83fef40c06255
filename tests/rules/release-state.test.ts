/**
 * What becomes of a released flight. The order of things is common practice of a dispatcher's desk, no source; what is
 * decided about an aircraft in the air is 91.7(b) (eCFR of 3 September 2026, see lib/rules/law). Strict readings are ours.
 */
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import {
  HAPPENINGS,
  isOvertaken,
  LOGGED,
  releaseState,
  whyNotAccepted,
  whyNotLogged,
  whyNotWithdrawn,
  type Happening,
  type ReleaseHistory,
} from '@/lib/rules/release-state';

const RELEASED = '2026-11-25T15:00:00.000Z';
const at = (minutes: number) => new Date(Date.parse(RELEASED) + minutes * 60_000).toISOString();
const ms = (instant: string, by: number) => new Date(Date.parse(instant) + by).toISOString();

/** A release with these happenings, each recorded when it happened unless said. */
const history = (
  events: readonly (readonly [Happening, number, number?])[] = [],
  more: Partial<ReleaseHistory> = {},
): ReleaseHistory => ({
  releasedAt: RELEASED,
  accepted: null,
  back: null,
  events: events.map(([what, when, recorded]) => ({
    what,
    at: at(when),
    recordedAt: at(recorded ?? when),
  })),
  ...more,
});

describe('the state', () => {
  test.each([
    ['nothing happened', history(), 'released', false, 0],
    ['accepted', history([], { accepted: at(5) }), 'accepted', false, 5],
    ['in the air without acceptance', history([['airborne', 10]]), 'airborne', false, 10],
    ['in the air', history([['airborne', 10]], { accepted: at(5) }), 'airborne', false, 10],
    [
      'down',
      history([
        ['airborne', 10],
        ['landed', 60],
      ]),
      'landed',
      false,
      60,
    ],
    ['closed without meters', history([['closed', 30]]), 'closed', false, 30],
    [
      'meters read at return',
      history(
        [
          ['airborne', 10],
          ['landed', 60],
        ],
        { back: at(70) },
      ),
      'closed',
      false,
      70,
    ],
    ['meters read at return, nothing logged', history([], { back: at(70) }), 'closed', false, 70],
    ['withdrawn', history([['withdrawn', 20]]), 'withdrawn', false, 20],
    ['warned after it was accepted', history([['warned', 20]], { accepted: at(5) }), 'released', true, 0],
    ['accepted after a warning', history([['warned', 20]], { accepted: at(25) }), 'accepted', true, 25],
    [
      'warned in the air',
      history([
        ['airborne', 10],
        ['warned', 20],
      ]),
      'airborne',
      true,
      10,
    ],
    ['void', history([['void', 20]]), 'void', false, 20],
    ['void after it was accepted', history([['void', 20]], { accepted: at(5) }), 'void', false, 20],
    [
      'void and then closed by the desk',
      history([
        ['void', 20],
        ['closed', 40],
      ]),
      'void',
      false,
      20,
    ],
    ['void, and somebody read meters', history([['void', 20]], { back: at(70) }), 'void', false, 20],
    [
      'void, but in the air before',
      history([
        ['void', 20],
        ['airborne', 10, 50],
      ]),
      'airborne',
      true,
      10,
    ],
    [
      'void, in the air before, down',
      history([
        ['void', 20],
        ['airborne', 10, 50],
        ['landed', 60],
      ]),
      'landed',
      true,
      60,
    ],
    [
      'void, in the air before, back',
      history(
        [
          ['void', 20],
          ['airborne', 10, 50],
        ],
        { back: at(70) },
      ),
      'closed',
      true,
      70,
    ],
  ] as const)('%s', (_, release, name, warned, since) => {
    expect(releaseState(release)).toEqual({ name, warned, since: at(since) });
  });

  test.each([
    [-1, 'airborne'],
    [0, 'void'],
    [1, 'void'],
  ] as const)('a take-off %i ms after the release went void makes it %s', (by, name) => {
    const release = history([['void', 20]]);
    const airborne = { what: 'airborne' as const, at: ms(at(20), by), recordedAt: at(50) };
    expect(releaseState({ ...release, events: [...release.events, airborne] }).name).toBe(name);
  });

  test.each([
    [-1, 'released'],
    [0, 'released'],
    [1, 'accepted'],
  ] as const)('accepted %i ms after the newest warning it is %s', (by, name) => {
    const release = history(
      [
        ['warned', 10],
        ['warned', 20],
      ],
      { accepted: ms(at(20), by) },
    );
    expect(releaseState(release).name).toBe(name);
    expect(whyNotAccepted(release, at(90), at(40)) === null).toBe(name === 'released');
    expect(isOvertaken(release)).toBe(name === 'released');
  });

  test('a warning in the air takes no acceptance back', () => {
    const flying = [
      ['airborne', 20],
      ['warned', 30],
    ] as const;
    expect(isOvertaken(history(flying, { accepted: at(5) }))).toBe(false);
    expect(isOvertaken(history([['warned', 20]]))).toBe(false);
  });

  test('never depends on the order in which the happenings are listed', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...HAPPENINGS), { maxLength: 6 }),
        fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 6, maxLength: 6 }),
        (kinds, minutes) => {
          const events = kinds.map((what, index) => [what, minutes[index] ?? 1] as const);
          expect(releaseState(history([...events].reverse()))).toEqual(releaseState(history(events)));
        },
      ),
    );
  });
});

describe('what may be logged', () => {
  const NOW = at(100);
  const DEPART = at(60);

  test.each([
    [-1, null],
    [0, null],
    [1, 'This has not happened yet.'],
  ])('a take-off %i ms after now', (by, because) => {
    expect(whyNotLogged(history(), 'airborne', ms(NOW, by), NOW, DEPART)?.because ?? null).toBe(because);
  });

  test.each([
    [-1, 'This is before the release. It was not this flight.'],
    [0, null],
    [1, null],
  ])('a take-off %i ms after the release', (by, because) => {
    expect(whyNotLogged(history(), 'airborne', ms(RELEASED, by), NOW, DEPART)?.because ?? null).toBe(because);
  });

  test.each([
    [-1, false],
    [0, false],
    [1, true],
  ])('a landing %i ms after the take-off', (by, may) => {
    const flying = history([['airborne', 10]]);
    expect(whyNotLogged(flying, 'landed', ms(at(10), by), NOW, DEPART) === null).toBe(may);
  });

  // House caution, no source: an hour before the planned departure is the earliest.
  test.each([
    [-1, false],
    [0, true],
    [1, true],
  ])('a take-off %i ms after an hour before the planned departure', (by, may) => {
    const depart = at(70);
    const refused = whyNotLogged(history(), 'airborne', ms(at(10), by), NOW, depart);
    expect(refused === null).toBe(may);
    if (!may) expect(refused).toMatchObject({ field: 'at' });
  });

  test.each([
    [-1, true],
    [0, false],
    [1, false],
  ])('a take-off %i ms after the release went void', (by, may) => {
    const gone = history([['void', 20]]);
    const refused = whyNotLogged(gone, 'airborne', ms(at(20), by), NOW, DEPART);
    expect(refused === null).toBe(may);
    if (!may)
      expect(refused).toMatchObject({ field: 'at', because: expect.stringContaining('void by then') });
  });

  test.each([
    [-1, true],
    [0, false],
    [1, false],
  ])('a take-off %i ms after the meters were read at return', (by, may) => {
    const back = history([], { back: at(70) });
    expect(whyNotLogged(back, 'airborne', ms(at(70), by), NOW, DEPART) === null).toBe(may);
  });

  test.each([
    [-1, false],
    [0, true],
    [1, true],
  ])('an end %i ms after the landing', (by, may) => {
    const down = history([
      ['airborne', 10],
      ['landed', 60],
    ]);
    expect(whyNotLogged(down, 'closed', ms(at(60), by), NOW, DEPART) === null).toBe(may);
  });

  test.each([
    ['landed', history(), 'what'],
    ['closed', history([['airborne', 10]]), 'what'],
    ['closed', history([], { back: at(70) }), 'what'],
    ['airborne', history([['closed', 30]]), 'what'],
    ['closed', history([['closed', 30]]), 'what'],
    ['airborne', history([['airborne', 10]]), 'what'],
    [
      'landed',
      history([
        ['airborne', 10],
        ['landed', 60],
      ]),
      'what',
    ],
    ['airborne', history([['withdrawn', 20]]), 'what'],
    ['closed', history([['withdrawn', 20]]), 'what'],
  ] as const)('no %s out of order (%#)', (what, release, field) => {
    expect(whyNotLogged(release, what, at(80), NOW, DEPART)?.field).toBe(field);
  });

  test('a void release can be closed, so that its alarm ends', () => {
    expect(whyNotLogged(history([['void', 20]]), 'closed', at(30), NOW, DEPART)).toBeNull();
  });

  test('whatever is let through, a void release departs only before it went void', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LOGGED), fc.integer({ min: -5, max: 110 }), (what, minute) => {
        const gone = history([['void', 20]], { accepted: at(5) });
        if (whyNotLogged(gone, what, at(minute), NOW, DEPART) !== null) return;
        const happened = { what, at: at(minute), recordedAt: NOW };
        const { name } = releaseState({ ...gone, events: [...gone.events, happened] });
        expect(name).toBe(what === 'airborne' && minute < 20 ? 'airborne' : 'void');
      }),
    );
  });
});

describe('withdrawing and accepting', () => {
  const STATES = {
    released: history(),
    accepted: history([], { accepted: at(5) }),
    airborne: history([['airborne', 10]]),
    landed: history([
      ['airborne', 10],
      ['landed', 60],
    ]),
    closed: history([['closed', 30]]),
    back: history([], { back: at(70) }),
    void: history([['void', 20]]),
    withdrawn: history([['withdrawn', 20]]),
    out: history([], { isOut: true }),
    'accepted and out': history([], { accepted: at(5), isOut: true }),
  };

  test.each([
    ['released', true, true],
    ['accepted', true, false],
    ['airborne', false, false],
    ['landed', false, false],
    ['closed', false, false],
    ['back', false, false],
    ['void', false, false],
    ['withdrawn', false, false],
    ['out', false, true],
    ['accepted and out', false, false],
  ] as const)('%s: withdraw %s, accept %s', (state, withdraw, accept) => {
    expect(whyNotWithdrawn(STATES[state]) === null).toBe(withdraw);
    expect(whyNotAccepted(STATES[state], at(90), at(40)) === null).toBe(accept);
  });

  test.each([
    [-1, true],
    [0, false],
    [1, false],
  ])('accepting %i ms after the planned arrival', (by, may) => {
    expect(whyNotAccepted(history(), at(90), ms(at(90), by)) === null).toBe(may);
  });
});
