import type { CalendarDate, Fact, HoursTenths, Instant } from './facts';
import type { HouseReadings, HouseRule } from './house/house-rule';
import type { PilotGrade } from './operations';

/** What an instrument or piece of equipment does, as 91.205 and its neighbours name it. */
export const EQUIPMENT_FUNCTIONS = [
  'airspeed-indicator',
  'altimeter',
  'magnetic-direction-indicator',
  'tachometer',
  'oil-pressure-gauge',
  'oil-temperature-gauge',
  'coolant-temperature-gauge',
  'manifold-pressure-gauge',
  'fuel-quantity-gauge',
  'gear-position-indicator',
  'anticollision-lights',
  'position-lights',
  'landing-light',
  'taxi-light',
  'instrument-lights',
  'flotation-and-signal',
  'seat-belts',
  'shoulder-harness',
  'elt',
  'electrical-source',
  'spare-fuses',
  'two-way-radio',
  'vor-receiver',
  'gps-navigator',
  'dme',
  'rate-of-turn-indicator',
  'slip-skid-indicator',
  'clock',
  'generator',
  'attitude-indicator',
  'heading-gyro',
  'transponder',
  'altitude-reporting',
  'adsb-out',
  'pitot-heat',
  'stall-warning',
  'vacuum-gauge',
  'vacuum-pump',
  'autopilot',
  'intercom',
  'cabin-heat',
  'fire-extinguisher',
  'flaps',
  'other',
] as const;
export type EquipmentFunction = (typeof EQUIPMENT_FUNCTIONS)[number];

export interface AircraftTypeFacts {
  readonly name: string;
  readonly category:
    'airplane' | 'rotorcraft' | 'glider' | 'lighter-than-air' | 'powered-parachute' | 'weight-shift-control';
  readonly turbine: Fact<boolean>;
  readonly maxTakeoffWeightLb: Fact<number>;
  /** Whether FAA has published a master minimum equipment list for the type. */
  readonly mmelPublished: Fact<boolean>;
  /** Date of certification for 91.205(b)(11). */
  readonly certificatedOn: Fact<CalendarDate>;
  readonly certificatedUnderPart23: Fact<boolean>;
  readonly engines: number;
  readonly cooling: Fact<'air' | 'liquid'>;
  /** Turbocharged or supercharged: 91.205(b)(8). */
  readonly altitudeEngine: Fact<boolean>;
  readonly retractableGear: Fact<boolean>;
  readonly fuelTanks: Fact<number>;
  /** Occupant seats in all, pilot seats included. */
  readonly seats: Fact<number>;
  readonly frontSeats: Fact<number>;
  /** True when the electrical system is protected by fuses a pilot could replace; false with breakers only. */
  readonly usesFuses: Fact<boolean>;
}

/** How many of an item the equipment list or kinds-of-operation list asks for, by kind of operation. */
export interface RequiredCounts {
  readonly dayVfr: number;
  readonly nightVfr: number;
  readonly dayIfr: number;
  readonly nightIfr: number;
}

export interface EquipmentFacts {
  readonly id: string;
  readonly name: string;
  readonly function: EquipmentFunction;
  readonly jasc: string;
  readonly installed: number;
  /** Part of the VFR-day equipment the type was certificated with: 91.213(d)(2)(i). */
  readonly vfrDayTypeDesign: Fact<boolean>;
  /** Equipment list or kinds-of-operation equipment list: 91.213(d)(2)(ii). */
  readonly requiredByList: Fact<RequiredCounts>;
  /** Somebody signed that this line, as it stands, agrees with the aircraft's own documents. Never known to be false. */
  readonly confirmed: Fact<true>;
}

/** An airworthiness directive as far as it names equipment that must work. */
export interface DirectiveFacts {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  /** The equipment it names, or null when it names none. */
  readonly equipmentId: string | null;
  readonly requiresOperable: boolean;
}

export interface MelItemFacts {
  readonly id: string;
  readonly equipmentId: string;
  readonly title: string;
  readonly category: 'A' | 'B' | 'C' | 'D';
  /** Days of a category A item as its remarks state them; unknown unless the list says. */
  readonly categoryADays: Fact<number>;
  readonly installed: number;
  readonly requiredForDispatch: number;
  /** Kinds of operation that the proviso allows; a flight outside is barred. */
  readonly allowed: { readonly night: boolean; readonly ifr: boolean; readonly hire: boolean };
  readonly proviso: string;
  readonly operatingProcedure: string | null;
  readonly maintenanceProcedure: string | null;
}

export interface MelFacts {
  readonly reference: string;
  /** The letter of authorization is aboard: 91.213(a)(2). */
  readonly letterAboard: Fact<boolean>;
  /** Whether repair categories bind this operator. On unless the operator has chosen otherwise (stricter). */
  readonly enforceCategories: boolean;
  /** Categories whose interval the letter of authorization lets the operator extend once; null when none is recorded. */
  readonly extension: {
    readonly categories: readonly MelItemFacts['category'][];
    readonly reference: string;
  } | null;
  readonly items: readonly MelItemFacts[];
}

export type FindingKind =
  | 'inoperative'
  | 'damage'
  | 'wear'
  | 'leak'
  | 'contamination'
  | 'fastener'
  | 'servicing'
  | 'document'
  | 'cosmetic';

export type Severity = 'grounding' | 'limiting' | 'watch' | 'note';

export interface DeferralFacts {
  readonly id: string;
  readonly basis: '91.213(d)' | 'mel';
  readonly method: 'removed' | 'deactivated';
  readonly deactivationIsMaintenance: boolean;
  /** The part 43 record for removal or maintenance deactivation is signed. */
  readonly maintenanceRecordSigned: boolean;
  readonly determination: Fact<{ readonly by: DeterminerFacts; readonly on: CalendarDate }>;
  readonly placardPlaced: boolean;
  /** For the emergency locator transmitter removed under 91.207(f)(10); null otherwise. */
  readonly eltRemoval: {
    readonly firstRemovedOn: CalendarDate;
    readonly recordComplete: boolean;
  } | null;
  readonly melItemId: string | null;
  /** Last day of a repair interval extended on the authority of the letter; null when it was not. */
  readonly extendedThrough: CalendarDate | null;
  /** MEL procedures confirmed done, where the item has any. */
  readonly melProceduresDone: boolean;
  /** Local date on which the item was recorded inoperative: the MEL clock starts here. */
  readonly recordedOn: CalendarDate;
  /**
   * Required inspections completed after the deferral began, with what became of this item at each:
   * 91.405(c). A null disposition means the inspection passed without a word on it.
   */
  readonly inspectionsSince: readonly {
    readonly name: string;
    readonly on: CalendarDate;
    readonly disposition: 'inspected' | null;
  }[];
}

/** Who made a (d)(4) determination, as far as the law asks. */
export interface DeterminerFacts {
  readonly name: string;
  readonly pilotGrade: PilotGrade | null;
  readonly pilotRatedForAircraft: boolean;
  readonly mechanicRatings: readonly ('airframe' | 'powerplant')[];
  readonly repairStation: boolean;
}

export interface DiscrepancyFacts {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly kind: FindingKind;
  /** Unknown while undecided, and undecided grounds. */
  readonly severity: Fact<Severity>;
  readonly jasc: string;
  readonly equipmentId: string | null;
  /** How many of the installed items do not work. */
  readonly inoperativeCount: Fact<number>;
  readonly reportedAt: Instant;
  /** A mechanic found it within a sourced limit; null if nobody has. */
  readonly withinLimits: {
    readonly by: string;
    readonly on: CalendarDate;
    readonly limit: string;
    readonly source: string;
  } | null;
  readonly deferral: DeferralFacts | null;
  /** Area of the aircraft it was found at. Only rules of the house ask. */
  readonly station: string;
  /** A mechanic's signed judgement of it, whatever it found; null if there is none. Only rules of the house ask. */
  readonly mechanicJudged: { readonly by: string; readonly on: CalendarDate } | null;
}

/**
 * A test that work leaves owed: 91.411(a)(2) the static system was opened; (a)(3) work that may have made the altitude
 * that is reported differ from the one that is shown; 91.413(b) the same, by work on a transponder.
 */
export type OwedTest = 'static-leak' | 'altimeter-error' | 'transponder-error';

/** Maintenance begun or done and not yet behind us. */
export interface WorkFacts {
  readonly id: string;
  readonly title: string;
  readonly state: 'started' | 'entered' | 'signed';
  /** 91.407(b): could appreciably have changed flight characteristics or substantially affected operation. */
  readonly checkFlight: Fact<'not-needed' | 'owed' | 'flown'>;
  /** Tests owed after it and not yet signed. */
  readonly testsOwed: readonly OwedTest[];
}

export const PAPER_KINDS = [
  'airworthiness-certificate',
  'registration',
  'flight-manual',
  'weight-and-balance',
] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

export interface PaperFacts {
  readonly id: string;
  readonly kind: PaperKind;
  readonly aboard: Fact<boolean>;
  /** Last day of validity; null when the paper does not expire. */
  readonly validThrough: Fact<CalendarDate | null>;
}

export const REQUIREMENT_KINDS = [
  'annual',
  'hundred-hour',
  'static-and-altimeter',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
  'directive',
  'life-limit',
  'maker-interval',
] as const;
export type RequirementKind = (typeof REQUIREMENT_KINDS)[number];

/** Something due again and again, by calendar, hours or whichever comes first. */
export interface RequirementFacts {
  readonly id: string;
  readonly kind: RequirementKind;
  readonly name: string;
  /** False for a maker's recommendation that does not bind under part 91. */
  readonly binding: boolean;
  readonly intervalMonths: number | null;
  readonly intervalDays: number | null;
  readonly intervalTenths: HoursTenths | null;
  readonly lastDone: Fact<{
    readonly on: CalendarDate;
    readonly ttisTenths: HoursTenths;
    /** The due point that this compliance answered; needed for 100-hour pay-back. Null for the first. */
    readonly wasDueTenths: HoursTenths | null;
    /** The person who approved it held, that day, what the law asks. */
    readonly approvedByAuthorised: Fact<boolean>;
  }>;
  /** For a fixed expiry (emergency locator transmitter battery): last good day. */
  readonly fixedExpiry: CalendarDate | null;
  /** Static and altimeter: highest altitude tested, feet (91.411(d)). */
  readonly testedToFt: Fact<number> | null;
}

export interface AircraftFacts extends HouseReadings {
  readonly id: string;
  readonly registration: string;
  readonly type: AircraftTypeFacts;
  /** Standard category; other airworthiness classes need other tables and are answered no go. */
  readonly standardCategory: Fact<boolean>;
  readonly manufacturedOn: Fact<CalendarDate>;
  readonly part141: Fact<boolean>;
  readonly ttisTenths: Fact<HoursTenths>;
  readonly equipment: readonly EquipmentFacts[];
  /** Unknown until somebody has gone through the directives that apply to this aircraft. */
  readonly directives: Fact<readonly DirectiveFacts[]>;
  /** Known null: no MEL. */
  readonly mel: Fact<MelFacts | null>;
  readonly papers: readonly PaperFacts[];
  readonly requirements: readonly RequirementFacts[];
  readonly discrepancies: readonly DiscrepancyFacts[];
  readonly work: readonly WorkFacts[];
  /** Recorded use of the emergency locator transmitter since its battery was fitted, minutes, tests included: 91.207(c)(1). */
  readonly eltUseMinutes: number;
  /** Rules of the house in force for this aircraft: stricter than the law, never looser. */
  readonly houseRules: readonly HouseRule[];
}
