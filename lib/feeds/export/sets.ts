import { type Prisma } from '../../db/client';

/** One table as it is given out: all its columns but those left out, row by row in the order of `key`. */
export interface ExportSet {
  readonly name: string;
  readonly model: Prisma.ModelName;
  readonly says: string;
  /** Columns that stay here: what guards the way in, and bytes. */
  readonly without?: readonly string[];
  /** What pages are cut by; `id` unless said. */
  readonly key?: 'id' | 'seq';
}

const set = (
  name: string,
  model: Prisma.ModelName,
  says: string,
  more: Pick<ExportSet, 'without' | 'key'> = {},
): ExportSet => ({ name, model, says, ...more });

/** Everything that is given out, in the order in which it is shown. A test holds it against the tables of the database. */
export const EXPORT_SETS: readonly ExportSet[] = [
  set('school', 'Operator', 'The school itself'),
  set('set-up-steps', 'SetUpStep', 'Steps of setting up that somebody called done'),
  set('bases', 'Base', 'Bases with position and zone'),
  set('people', 'Person', 'People and their roles here', {
    without: ['passwordHash', 'passwordSetAt', 'sessionVersion', 'failedSignIns', 'lockedUntil'],
  }),
  set('certificates', 'Certificate', 'Certificates and ratings'),
  set('preventive-authorizations', 'PreventiveAuthorization', 'Pilots who may do preventive maintenance'),
  set('preventive-withdrawals', 'PreventiveWithdrawal', 'Namings taken back'),
  set('person-events', 'PersonEvent', 'Who joined, left, returned, and whose roles changed'),
  set('personal-erasures', 'PersonalErasure', 'Whose personal data was erased, and what stayed'),
  set('proofs', 'Proof', 'About proofs; the files themselves are on the pages of their certificates', {
    without: ['storedAs'],
  }),
  set('aircraft-types', 'AircraftType', 'Aircraft types'),
  set('aircraft', 'Aircraft', 'Aircraft with their meters'),
  set('equipment', 'Equipment', 'What is installed'),
  set('vouchings', 'Vouching', 'What was signed to agree with the documents, or carried over from them'),
  set('taken-in', 'TakenIn', 'Files that were taken in whole'),
  set('minimum-equipment-lists', 'Mel', 'Minimum equipment lists'),
  set('minimum-equipment-items', 'MelItem', 'Their items'),
  set('papers', 'Paper', 'Papers of the aircraft'),
  set('requirements', 'Requirement', 'What recurs: inspections, tests, directives, life limits'),
  set('compliances', 'Compliance', 'When it was done'),
  set('directives', 'Directive', 'Directives that need equipment to work'),
  set('limits', 'StoredLimit', 'Stored limits of measurements'),
  set('meter-readings', 'MeterReading', 'Meter readings'),
  set('walkaround-lists', 'WalkaroundPlan', 'Walkaround lists, every version'),
  set('walkarounds', 'Walkaround', 'Walkarounds'),
  set('findings', 'Finding', 'Findings as they were reported'),
  set('photos', 'Photo', 'About photos; the pictures themselves are on their own pages', {
    without: ['bytes', 'storedAs', 'smallSha256'],
  }),
  set('write-ups', 'Discrepancy', 'Write-ups'),
  set('determinations', 'Determination', 'What mechanics determined'),
  set('deferrals', 'Deferral', 'Deferrals'),
  set('deferral-ends', 'DeferralEnd', 'How they ended'),
  set('deferral-extensions', 'MelExtension', 'Repair intervals extended'),
  set('placards', 'Placard', 'Placards'),
  set('work', 'MaintenanceAction', 'Work done'),
  set('sign-offs', 'SignOff', 'Signatures of work'),
  set('check-flights', 'CheckFlight', 'Check flights'),
  set('inspections', 'Inspection', 'Inspections'),
  set('discrepancy-lists', 'DiscrepancyList', 'Lists of discrepancies given to the owner'),
  set('locator-uses', 'EltUse', 'Use of the emergency locator transmitter'),
  set('permits', 'SpecialFlightPermit', 'Special flight permits'),
  set('permit-inspections', 'PermitInspection', 'Inspections for them'),
  set('visits', 'Visit', 'Stays at the shop'),
  set('visit-items', 'VisitItem', 'What is done during them'),
  set('planned-flights', 'PlannedFlight', 'Planned flights'),
  set('plan-imports', 'PlanImport', 'Plans taken from files'),
  set('releases', 'Release', 'Releases with the facts and the answer they stood on'),
  set('acceptances', 'FlightAcceptance', 'Acceptances by the pilot in command'),
  set('flight-events', 'FlightEvent', 'What became of released flights'),
  set('house-rules', 'HouseRule', 'Rules of the house, every version'),
  set('notices', 'Notice', 'Notices to people'),
  set('audit-rows', 'AuditRow', 'Who did what and when, chained by hashes', { key: 'seq' }),
];

/** Tables of an operator that are not given out, each with its reason. */
export const NOT_EXPORTED: Readonly<Partial<Record<Prisma.ModelName, string>>> = {
  Request: 'Answers kept for requests sent again; what they wrote stands in the other tables.',
  Letter: 'Copies of notices on their way by mail.',
  AuditHead: 'Where the chain of audit rows ends: the last of them.',
  AccessKey: 'Guards the way in. The page of feeds shows the keys.',
  Webhook: 'Holds signing secrets and the addresses of receivers. The page of feeds shows them.',
  Session: 'Guards the way in; each person sees their own.',
  SecondFactor: 'Guards the way in; each person sees their own.',
  RecoveryCode: 'Guards the way in.',
  Challenge: 'Guards the way in, for minutes.',
  PersonLink: 'Guards the way in. The page of each person shows the newest.',
  WebhookDelivery: 'What other programs were told; the audit rows say the same and more.',
};

export const exportSet = (name: string): ExportSet | undefined =>
  EXPORT_SETS.find((one) => one.name === name);
