import type { AircraftTypeFacts, EquipmentFunction, RequiredCounts } from '../lib/rules/aircraft';
import type { PilotGrade } from '../lib/rules/operations';
import type { Role } from '../lib/access/policy';

/**
 * The shapes in which the demo's data are written down. Everything is relative to the day of loading: "days ago",
 * "months ahead". Hours are whole tenths. Null means what it means in the database: nobody has entered it.
 */

export interface BasePlan {
  readonly key: string;
  /** Starts ZZ, which no place in the world has. */
  readonly ident: string;
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly zone: string;
  readonly repairAvailable: boolean;
  readonly transponderAirspace: boolean;
  readonly adsbAirspace: boolean;
  readonly controlledAirspace: boolean;
}

export interface CertificatePlan {
  readonly kind: 'pilot' | 'mechanic' | 'inspection-authorization' | 'repair-station';
  readonly number: string;
  readonly grade?: PilotGrade;
  readonly ratings?: readonly string[];
  /** Mechanic, 65.83: months ahead (negative: ago) through whose last day recent experience is vouched for. */
  readonly recentThroughMonths?: number;
  /** Inspection authorization: it ends on the next 31 March of an odd year, or ended on the last one. */
  readonly ends?: 'next-odd-march' | 'last-odd-march';
  readonly authorisedToSign?: boolean;
}

export interface PersonPlan {
  readonly key: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  readonly base: string;
  readonly certificates: readonly CertificatePlan[];
  /** The operator's written naming for preventive maintenance, in its words. */
  readonly namedForPreventiveMaintenance?: string;
  readonly leftDaysAgo?: number;
  /** What the list of log-ins says of the person. */
  readonly inWords: string;
}

export interface TypePlan {
  readonly key: string;
  readonly name: string;
  readonly category: AircraftTypeFacts['category'];
  readonly rating: string;
  readonly turbine: boolean;
  readonly maxTakeoffWeightLb: number;
  readonly mmelPublished: boolean;
  readonly certificatedOn: string | null;
  readonly certificatedUnderPart23: boolean;
  readonly engines: number;
  readonly cooling: 'air' | 'liquid';
  readonly altitudeEngine: boolean;
  readonly retractableGear: boolean;
  readonly fuelTanks: number;
  readonly seats: number;
  readonly frontSeats: number;
  readonly usesFuses: boolean;
  readonly equipmentListSource: string;
}

export interface EquipmentPlan {
  readonly name: string;
  readonly function: EquipmentFunction;
  readonly jasc: string;
  readonly installed: number;
  readonly vfrDayTypeDesign: boolean;
  readonly required: RequiredCounts;
}

export interface LimitPlan {
  readonly findingKey: string;
  readonly measurement: string;
  readonly unit: string;
  readonly min: number | null;
  readonly max: number | null;
  readonly source: string;
}

export interface DirectivePlan {
  readonly number: string;
  readonly title: string;
  /** The equipment that must work under it, or null when it names none. */
  readonly equipment: EquipmentFunction | null;
}

export interface MelItemPlan {
  readonly equipment: EquipmentFunction;
  readonly title: string;
  readonly category: 'A' | 'B' | 'C' | 'D';
  readonly installed: number;
  readonly requiredForDispatch: number;
  readonly allowedNight: boolean;
  readonly allowedIfr: boolean;
  readonly allowedHire: boolean;
  readonly proviso: string;
  readonly operatingProcedure: string | null;
  readonly maintenanceProcedure: string | null;
}

export interface MelPlan {
  readonly reference: string;
  readonly letterReference: string;
  /** Categories whose interval the letter lets the school extend once, and what it says so in. */
  readonly extensionCategories: readonly ('B' | 'C')[];
  readonly extensionReference: string | null;
  readonly items: readonly MelItemPlan[];
}

export interface AircraftPlan {
  /** Starts N0, which no registry gives out. */
  readonly registration: string;
  readonly serial: string;
  readonly type: string;
  readonly base: string;
  readonly forHire: boolean;
  readonly manufacturedOn: string;
  /** Total time in service on the day of loading. */
  readonly ttisTenths: number;
  /** What the two meters show beyond (or short of) the total time. */
  readonly hobbsAheadTenths: number;
  readonly tachAheadTenths: number;
  /** Which meter counts its time in service; null: nobody has said. */
  readonly ttisMeter: 'hobbs' | 'tach' | null;
  /** Tenths flown on an average day of the past year. */
  readonly tenthsADay: number;
  /** It has not flown since the last day of last month. */
  readonly parked: boolean;
  readonly equipment: readonly EquipmentPlan[];
  readonly limits: readonly LimitPlan[];
  readonly directives: readonly DirectivePlan[];
  readonly directivesReviewedMonthsAgo: number;
  readonly mel: MelPlan | null;
  readonly registrationGoodMonths: number;
  readonly annualMonthsAgo: number;
  /** Hours left of the 100 hours; null for an aircraft that is not kept on 100-hour inspections. */
  readonly hundredHourTenthsLeft: number | null;
  readonly altimeterTestMonthsAgo: number;
  /** Null: the record does not say how high. */
  readonly altimeterTestedToFt: number | null;
  readonly vorCheckDaysAgo: number;
  readonly eltBatteryGoodMonths: number;
  readonly oilChangeTenthsAgo: number;
}

export interface OperatorPlan {
  readonly key: string;
  readonly name: string;
  readonly part141: boolean;
  readonly bases: readonly BasePlan[];
  readonly people: readonly PersonPlan[];
  readonly types: readonly TypePlan[];
  readonly aircraft: readonly AircraftPlan[];
  /** Keys of people: who entered the data, and who checks VORs. */
  readonly enteredBy: string;
  readonly vorChecker: string;
  /** As the records name whoever approved inspections, and tests of altimeter and transponder. */
  readonly inspector: string;
  readonly station: string;
}
