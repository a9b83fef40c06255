import { type PackFlight } from '@/lib/walkarounds/pack';

/**
 * Nobody departs on this release: void, withdrawn or closed. A pack from before says it by a line that bars, which no
 * release was given with.
 */
export const isGone = ({ state, limits }: PackFlight): boolean =>
  state === undefined
    ? limits.some(({ effect }) => effect === 'bars')
    : state === 'void' || state === 'withdrawn' || state === 'closed';
