/**
 * The door of the rules core: what the services outside may ask it. Plain data in, a verdict with its paragraphs out;
 * no clock, no database, no framework. The paragraphs themselves stand one file each in `part-91`, `part-43`,
 * `part-65`, `part-47`, `part-39`; services have no business there.
 */

// What the rules are told.
export type {
  AircraftFacts,
  AircraftTypeFacts,
  DeferralFacts,
  DeterminerFacts,
  DirectiveFacts,
  DiscrepancyFacts,
  EquipmentFacts,
  EquipmentFunction,
  FindingKind,
  MelFacts,
  MelItemFacts,
  PaperFacts,
  PaperKind,
  RequiredCounts,
  RequirementFacts,
  RequirementKind,
  Severity,
  WorkFacts,
} from './aircraft';
export { EQUIPMENT_FUNCTIONS, PAPER_KINDS, REQUIREMENT_KINDS } from './aircraft';
export type { CalendarDate, Fact, HoursTenths, Instant, Known, Unknown } from './facts';
export { factOf, known, unknown } from './facts';
export type {
  AtcAnswer,
  OperationId,
  OperationKind,
  PilotGrade,
  Place,
  ProposedFlight,
  Purpose,
  UseOfAircraft,
} from './operations';
export { OPERATION_KINDS, operationId, operationName } from './operations';
export type { SignerFacts } from './people';

// What they answer with.
export type { Answer, Effect, Line, Outcome, Subject } from './verdict';
export { barsForMissing, joinLines } from './verdict';
export type { Ruling } from './ruling';
export { rulingOf } from './ruling';
export { LAW, type CiteId, type LawEntry } from './law';

// The answer for a flight, and for the board.
export { answerForFlight, answerForUse, answersByOperation, headline, RULES_VERSION } from './answer';
export { dueOf, type DueReport } from './due';
export { nextRequiredInspection, type NextInspection } from './part-91/91-405-maintenance-required';
export { nextHundredHourDue } from './part-91/91-409-inspections';
export { registrationExpiry, stretchedRegistrationExpiry } from './part-47/47-40-registration';
export { useOfFlight, referenceUse, type ReferenceBase, type UseOfFlight } from './use-of-flight';
export { sunTimes, type SunTimes } from './sun';

// Findings, and whether one may be deferred.
export {
  triage,
  settledByOf,
  type Measured,
  type SettledBy,
  type StoredLimit,
  type TriageInput,
  type TriageProposal,
} from './findings/triage';
export { FINDING_CATALOGUE, findingOf, findingsAt, workPartOf } from './findings/catalogue';
export { WALKAROUND_STATIONS, type StationKey } from './findings/stations';
export { MEASUREMENTS, measurementOf, sayMeasured, type MeasurementKey } from './findings/measurements';
export {
  deferralEligibility,
  type DeferralEnd,
  type DeferralPath,
  type EligibilityReport,
  type EligibilityRow,
} from './part-91/91-213-deferral-eligibility';
export type { Question } from './part-91/91-213-questions';
export type { StepOwed } from './part-91/91-213-steps';
export { judgeDiscrepancy } from './judge-discrepancy';
export { repairDeadline, type RepairCategory } from './advisory/mmel-repair-categories';

// Who may sign what.
export {
  mayApproveHundredHour,
  mayApproveReturnToService,
  rulingsByCapacity,
  type Capacity,
  type CapacityRuling,
  type SigningRuling,
} from './who-may-sign';
export { signersFor, whoCanSentence } from './signers-for';
export {
  mayDetermineNoHazard,
  mayFindWithinLimits,
  mayFlyCheckFlight,
  mayPlacePlacard,
  mayRecordServicing,
  toDeterminer,
} from './who-may-determine';
export { WORK_KINDS, WORK_KIND_NAMES, type WorkKind, type WorkToSign } from './work-to-sign';
export { checkEntry439, type EntryFacts439 } from './part-43/43-9-entry';
export {
  classifyWork,
  majorQuestionsFor,
  type MajorAnswers,
  type MajorGroup,
  type MajorQuestion,
} from './part-43/43-appendix-a-major';
export {
  PREVENTIVE_ITEMS,
  preventiveItem,
  type PreventiveItem,
} from './part-43/43-appendix-a-preventive-maintenance';

// Codes, names, dates and hours in words.
export { EQUIPMENT_NAMES } from './equipment-names';
export { JASC_CODES, jascCode, jascLabel, partOf, type PartOfAircraft } from './jasc';
export { formatTenths, isTenths, parseTenths, tenthsFromMinutes } from './hours';
export { clockInWords, dayInWords } from './in-words';
export { kindsInWords } from './kinds-in-words';
export { endOfDay, localDate, startOfDay } from './months';
