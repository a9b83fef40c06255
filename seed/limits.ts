import type { LimitPlan } from './shapes';

/** Limits stored per aircraft, each with its invented source. No limit here is anybody's real figure. */

const manual = (section: string) => `Aircraft maintenance manual, section ${section}, invented for the demo`;

const limit = (
  findingKey: string,
  measurement: string,
  unit: string,
  bounds: { readonly min?: number; readonly max?: number },
  section: string,
): LimitPlan => ({
  findingKey,
  measurement,
  unit,
  min: bounds.min ?? null,
  max: bounds.max ?? null,
  source: manual(section),
});

/** The limits of one type; oil in tenths of a quart, strut in tenths of an inch. */
const limitsOf = (given: { oil: number; strutLow: number; strutHigh: number; nickDepth: number }) => [
  limit('propeller-nick', 'propeller-nick-depth', 'thousandth-inch', { max: given.nickDepth }, '61'),
  limit('propeller-nick', 'propeller-nick-width', 'thousandth-inch', { max: 62 }, '61'),
  limit('tyre-worn', 'main-tyre-tread', 'thirty-second-inch', { min: 2 }, '32'),
  limit('tyre-worn', 'nose-tyre-tread', 'thirty-second-inch', { min: 2 }, '32'),
  limit('tyre-low', 'main-tyre-pressure', 'tenth-psi', { min: 210, max: 300 }, '12'),
  limit('tyre-low', 'nose-tyre-pressure', 'tenth-psi', { min: 260, max: 350 }, '12'),
  limit('oil-low', 'oil-quantity', 'tenth-quart', { min: given.oil }, '12'),
  limit(
    'nose-strut-low',
    'nose-strut-extension',
    'tenth-inch',
    { min: given.strutLow, max: given.strutHigh },
    '32',
  ),
  limit('brake-pads-worn', 'brake-pad-thickness', 'thousandth-inch', { min: 100 }, '32'),
  limit('trim-tab-play', 'trim-tab-play', 'thousandth-inch', { max: 125 }, '27'),
  limit('battery-weak', 'battery-voltage', 'tenth-volt', { min: 122 }, '24'),
];

export const SEDGE_LIMITS = limitsOf({ oil: 50, strutLow: 20, strutHigh: 35, nickDepth: 31 });
export const BRACKEN_LIMITS = limitsOf({ oil: 60, strutLow: 25, strutHigh: 40, nickDepth: 40 });
export const FOXGLOVE_LIMITS = limitsOf({ oil: 70, strutLow: 30, strutHigh: 45, nickDepth: 31 });
