import { said } from './said';
import type { CalendarDate, Fact, Instant, HoursTenths } from './facts';

/** The kinds of operation a deferral table and the fleet board are drawn for. */
export interface OperationKind {
  readonly light: 'day' | 'night';
  readonly rules: 'VFR' | 'IFR';
  /** Carriage for hire, or instruction for hire in an aircraft the instructor's side provides. */
  readonly hire: boolean;
}

/** All eight kinds, in the order in which tables show them. */
export const OPERATION_KINDS: readonly OperationKind[] = (['VFR', 'IFR'] as const).flatMap((rules) =>
  (['day', 'night'] as const).flatMap((light) => [false, true].map((hire) => ({ light, rules, hire }))),
);

export type OperationId = `${'day' | 'night'}-${'vfr' | 'ifr'}-${'private' | 'hire'}`;

/** A stable key such as `night-vfr-hire`. */
export const operationId = (kind: OperationKind): OperationId =>
  `${kind.light}-${kind.rules.toLowerCase() as 'vfr' | 'ifr'}-${kind.hire ? 'hire' : 'private'}`;

/** Plain words: "Night VFR, for hire". */
export const operationName = (kind: OperationKind): string => OPERATION_NAMES[operationId(kind)];

const OPERATION_NAMES: Readonly<Record<OperationId, string>> = {
  'day-vfr-private': said('Day VFR, private'),
  'day-vfr-hire': said('Day VFR, for hire'),
  'night-vfr-private': said('Night VFR, private'),
  'night-vfr-hire': said('Night VFR, for hire'),
  'day-ifr-private': said('Day IFR, private'),
  'day-ifr-hire': said('Day IFR, for hire'),
  'night-ifr-private': said('Night IFR, private'),
  'night-ifr-hire': said('Night IFR, for hire'),
};

/** A place on the ground. Longitude east positive. `zone` is an IANA name. */
export interface Place {
  readonly ident: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly zone: string;
  /** Whether maintenance able to repair the aircraft is to be had here. */
  readonly repairAvailable: Fact<boolean>;
}

/** What the flight is for. It decides what counts as for hire, the 100-hour rule and training reliefs. */
export type Purpose =
  | 'instruction-for-hire'
  | 'carriage-for-hire'
  | 'student-solo'
  | 'private'
  | 'check-flight'
  | 'to-inspection';

/** Answer of air traffic control to a request under 91.215(d) or 91.225(g). */
export type AtcAnswer = 'not-asked' | 'granted' | 'refused';

/** A special flight permit (21.197, 21.199) as recorded from the paper. It is for one flight. */
export interface SpecialFlightPermit {
  readonly reference: string;
  /** Its conditions, in its own words. */
  readonly limits: readonly string[];
  /** First and last local day on which it may be used. */
  readonly goodFrom: CalendarDate;
  readonly goodThrough: CalendarDate;
  readonly fromIdent: string;
  readonly toIdent: string;
  /** Ids of the discrepancies, requirements and directives it names as ways in which the aircraft does not comply. */
  readonly covers: readonly string[];
  /** The inspection it asks for before the flight. */
  readonly inspection: 'not-asked' | 'owed' | 'signed';
  /** A flight was released under it already. */
  readonly used: boolean;
}

/** A flight somebody proposes to make, as composed at the desk. */
export interface ProposedFlight {
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly from: Place;
  readonly to: Place;
  readonly rules: 'VFR' | 'IFR';
  readonly purpose: Purpose;
  /** Planned time in service, whole tenths of an hour. */
  readonly plannedTenths: HoursTenths;
  readonly overWaterBeyondGlide: Fact<boolean>;
  /** Airspace of 91.215(b): needs transponder with altitude reporting. */
  readonly transponderAirspace: Fact<boolean>;
  /** Airspace of 91.225(a), (b) or (d): needs ADS-B Out. */
  readonly adsbAirspace: Fact<boolean>;
  /** IFR in controlled airspace (91.411). */
  readonly controlledAirspace: Fact<boolean>;
  /** IFR navigation by VOR on this route (91.171). */
  readonly usesVor: Fact<boolean>;
  readonly highestAltitudeFtMsl: Fact<number>;
  /** Training conducted wholly within 50 nautical miles of the departure airport (91.207(f)(3)). */
  readonly trainingWithin50Nm: Fact<boolean>;
  /** Nobody aboard but required crewmembers (91.407(b)). */
  readonly crewOnly: Fact<boolean>;
  /** Grade of the pilot in command, where it matters (91.407(b)). */
  readonly pilotInCommandGrade: Fact<PilotGrade>;
  readonly atcTransponder: AtcAnswer;
  readonly atcAdsb: AtcAnswer;
  /** The failure was met under way and this flight goes on to a place where it can be repaired. */
  readonly continuingToRepair: boolean;
  /** A special flight permit issued for this flight (21.197), with its limits in words, or null. */
  readonly specialFlightPermit: SpecialFlightPermit | null;
}

export type PilotGrade =
  'student' | 'sport' | 'recreational' | 'private' | 'commercial' | 'airline-transport';

/**
 * One use of the aircraft, with the light already worked out. The rules judge uses; `useOfFlight` makes one from
 * a proposed flight (via sun position), `referenceUse` makes one for a column of the board.
 */
export interface UseOfAircraft extends ProposedFlight {
  readonly light: 'day' | 'night';
  /** Any part between sunset and sunrise: lights of 91.209 are needed although it may not be night yet. */
  readonly betweenSunsetAndSunrise: boolean;
  /** Carriage for hire, or instruction for hire (strict reading: all instruction the school provides). */
  readonly hire: boolean;
  /** Local date of departure at `from`, and of arrival at `to`. */
  readonly departOn: string;
  readonly arriveOn: string;
  /** Present for a real flight by day: the sunset it must be down by if position lights are deferred. */
  readonly sunsetAt: Instant | null;
}
