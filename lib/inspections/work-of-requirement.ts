import type { RequirementKind } from '../rules/aircraft';
import type { PartOfAircraft } from '../rules/jasc';
import type { WorkKind } from '../rules/who-may-sign';

/** Work that answers a requirement of some kind, where the law says what it is. */
export interface FixedWork {
  readonly workKind: WorkKind;
  readonly part: PartOfAircraft;
  readonly jasc: string;
  readonly swapOnly: boolean;
}

/**
 * How something due is answered: `fixed` by work whose kind follows from the paragraph, `chosen` by work on whatever system
 * it names, `inspection` by an inspection of 43.11, `check` by the VOR check of 91.171.
 */
export type WayToAnswer =
  | { readonly by: 'fixed'; readonly work: FixedWork }
  | { readonly by: 'chosen'; readonly preventive: boolean }
  | { readonly by: 'inspection' }
  | { readonly by: 'check' };

const fixed = (workKind: WorkKind, part: PartOfAircraft, jasc: string): WayToAnswer => ({
  by: 'fixed',
  work: { workKind, part, jasc, swapOnly: false },
});

/**
 * 91.411(b): the whole test of altimeter and static system, so never a mechanic's static test alone. 91.413(c). 91.207(c)
 * and (d): work on the airframe. Preventive maintenance only where the maker asks for it: what a directive or a limit
 * requires is read as more than the list of Appendix A(c) means (strict reading).
 */
export const WAYS: Readonly<Record<RequirementKind, WayToAnswer>> = {
  annual: { by: 'inspection' },
  'hundred-hour': { by: 'inspection' },
  'static-and-altimeter': fixed('altimeter-transponder-test', 'instrument', '3416'),
  transponder: fixed('altimeter-transponder-test', 'avionics', '3452'),
  'elt-inspection': fixed('minor', 'airframe', '2562'),
  'elt-battery': fixed('minor', 'airframe', '2562'),
  'vor-check': { by: 'check' },
  directive: { by: 'chosen', preventive: false },
  'life-limit': { by: 'chosen', preventive: false },
  'maker-interval': { by: 'chosen', preventive: true },
};
