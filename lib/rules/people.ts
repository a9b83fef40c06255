import type { CalendarDate, Fact } from './facts';
import type { PilotGrade } from './operations';

/** A person's certificates as they stand, for judging whether a signature counts. */
export interface SignerFacts {
  readonly id: string;
  readonly name: string;
  readonly pilot: {
    readonly number: string;
    readonly grade: PilotGrade;
    /** Category and class ratings, for example `airplane-single-engine-land`. */
    readonly ratings: readonly string[];
    /** The last day the certificate itself names; null or left out: it names none. */
    readonly expiresOn?: CalendarDate | null;
  } | null;
  readonly mechanic: {
    readonly number: string;
    readonly ratings: readonly ('airframe' | 'powerplant')[];
    /** 65.83: last day on which six months' experience in the preceding 24 was vouched for. */
    readonly recentExperienceThrough: Fact<CalendarDate>;
  } | null;
  readonly inspectionAuthorization: {
    readonly number: string;
    /** 31 March of an odd year: 65.92(a). */
    readonly expiresOn: CalendarDate;
    /** 65.93(c): activity by 31 March of the first (even) year; unknown bars. */
    readonly firstYearActivityMet: Fact<boolean>;
  } | null;
  readonly repairStation: {
    readonly number: string;
    /** Ratings held: what it may work on. */
    readonly ratings: readonly ('airframe' | 'powerplant' | 'propeller' | 'radio' | 'instrument')[];
    readonly authorisedToSign: Fact<boolean>;
    /** The last day the certificate itself names; null or left out: it names none. */
    readonly expiresOn?: CalendarDate | null;
  } | null;
  /** The operator has named this pilot in writing for preventive maintenance on its aircraft. */
  readonly namedForPreventiveMaintenance: boolean;
  /** A person who left the operator can sign nothing. */
  readonly leftOn: CalendarDate | null;
}
