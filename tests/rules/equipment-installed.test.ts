/**
 * A list that asks for more than the aircraft has. Sources: 91.7(a) (airworthy; our strict reading), 91.213(d)(2)(i) and (ii) for what the type
 * design and the equipment list require. Whether it was taken out is not asked: it is not there.
 */
import { describe, expect, it } from 'vitest';
import { answersByOperation } from '../../lib/rules/answer';
import { known, unknown } from '../../lib/rules/facts';
import { operationId } from '../../lib/rules/operations';
import { BASE, TODAY, equipmentRow, trainer } from '../fixtures/aircraft';

const AT = {
  ...BASE,
  transponderAirspace: known(false),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
const none = { dayVfr: 0, nightVfr: 0, dayIfr: 0, nightIfr: 0 };
const withHorn = (change: object) =>
  trainer({
    equipment: [...trainer().equipment, equipmentRow('other', 'Stall warning', '2730', change)],
  });
const barred = (aircraft: ReturnType<typeof trainer>) =>
  answersByOperation(aircraft, AT, TODAY, '2026-11-25T15:00:00Z')
    .filter(({ answer }) =>
      answer.lines.some(({ effect, cite }) => effect === 'bars' && cite === '14cfr91.7(a)'),
    )
    .map(({ kind }) => operationId(kind));
const ALL = answersByOperation(trainer(), AT, TODAY, '2026-11-25T15:00:00Z').map(({ kind }) =>
  operationId(kind),
);

describe('what the list requires and the aircraft does not have', () => {
  it.each([
    // Under, on and over the border.
    ['one too few', { installed: 1, requiredByList: known({ ...none, dayVfr: 2 }) }, ALL],
    ['as many as it asks for', { installed: 2, requiredByList: known({ ...none, dayVfr: 2 }) }, []],
    ['one more', { installed: 3, requiredByList: known({ ...none, dayVfr: 2 }) }, []],
    [
      'none, asked for at night',
      { installed: 0, requiredByList: known({ ...none, nightVfr: 1 }) },
      ALL.filter((id) => id.includes('night')),
    ],
    ['none, and nobody asks for it', { installed: 0, requiredByList: known(none) }, []],
    ['none, but part of the type’s VFR-day equipment', { installed: 0, vfrDayTypeDesign: known(true) }, ALL],
    // Unknown is never go: with the answer taken away, the two above must not become a go.
    [
      'one, and nobody knows how many it asks for',
      { installed: 1, requiredByList: unknown('the list') },
      ALL,
    ],
    [
      'none, and nobody knows how many it asks for',
      { installed: 0, requiredByList: unknown('the list') },
      ALL,
    ],
    [
      'none, and nobody knows whether it is part of the type’s VFR-day equipment',
      { installed: 0, vfrDayTypeDesign: unknown('type design') },
      ALL,
    ],
    ['one, and nobody knows the same of it', { installed: 1, vfrDayTypeDesign: unknown('type design') }, []],
    [
      'one too few, and nobody knows whether it is type design',
      {
        installed: 1,
        requiredByList: known({ ...none, dayVfr: 2 }),
        vfrDayTypeDesign: unknown('type design'),
      },
      ALL,
    ],
    // The line bars already for that.
    [
      'not confirmed',
      {
        installed: 0,
        requiredByList: known({ ...none, dayVfr: 1 }),
        confirmed: unknown('nobody has confirmed it'),
      },
      [],
    ],
  ] as const)('%s', (_words, change, kinds) => {
    expect(barred(withHorn(change))).toEqual(kinds);
  });
});
