import type { AircraftTypeFacts } from './aircraft';
import type { PartOfAircraft } from './jasc';

/** The kinds of work the law tells apart when it says who may approve. */
export const WORK_KINDS = [
  'preventive',
  'minor',
  'major',
  'annual',
  'hundred-hour',
  'static-test',
  'altimeter-transponder-test',
] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Work for which somebody wants to approve return to service, as far as the law asks. */
export interface WorkToSign {
  /**
   * What was worked on. For a 100-hour inspection the half that is signed (`airframe`, or `powerplant` or
   * `propeller`). For an altimeter or transponder test `instrument` means altimeter and altitude reporter, `avionics`
   * means transponder. An annual covers the whole aircraft, whatever is said here.
   */
  readonly part: PartOfAircraft;
  readonly kind: WorkKind;
  /** Item of part 43 Appendix A(c), 1 to 31; null when the work is not preventive maintenance. */
  readonly preventiveItem: number | null;
  /** An instrument or radio was removed or installed as a unit; nothing inside it was repaired. */
  readonly swapOnly: boolean;
  readonly aircraftCategory: AircraftTypeFacts['category'];
  /** The signer did the work with their own hands (a pilot may approve nobody else's). */
  readonly performedBySigner: boolean;
}

/** Plain words for a kind of work. */
export const WORK_KIND_NAMES: Readonly<Record<WorkKind, string>> = {
  preventive: 'preventive maintenance',
  minor: 'a minor repair',
  major: 'a major repair',
  annual: 'an annual inspection',
  'hundred-hour': 'a 100-hour inspection',
  'static-test': 'a static system test',
  'altimeter-transponder-test': 'an altimeter or transponder test',
};
