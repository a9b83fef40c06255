import type { Prisma } from '../db/client';
import type { CiteId } from '../rules/law';

/** Why a row about somebody stays when their data is erased. */
export interface Keeping {
  readonly why: string;
  /** The paragraph that asks for it; null where the law asks for nothing and the operator has its own reason. */
  readonly cite: CiteId | null;
}

/** A table whose rows say who: all of it is here, so that a copy of one's data and an erasure forget none. */
export interface TableOfPerson {
  readonly model: Prisma.ModelName;
  readonly says: string;
  /** Fields by which a row is about somebody: given whole in a copy of their data. */
  readonly about?: readonly string[];
  /** Fields that only say who entered or ended a row about something else: given by number and moment. */
  readonly acted?: readonly string[];
  /** Fields that stay here: what guards the way in, and bytes. */
  readonly without?: readonly string[];
  /** `gone`: rows are deleted or emptied. */
  readonly erased: Keeping | 'gone';
}

const SIGNED: Keeping = {
  why: 'Signed maintenance record: signature, kind and number of the certificate have to stand in it.',
  cite: '14cfr43.9(a)(4)',
};
const SIGNED_INSPECTION: Keeping = {
  why: 'Signed inspection record: signature, kind and number of the certificate have to stand in it.',
  cite: '14cfr43.11(a)(4)',
};
const FLOWN: Keeping = {
  why: 'Says by which facts a flight was released and who took the aircraft: the pilot in command determines that it may fly.',
  cite: '14cfr91.7(b)',
};
const AIRCRAFT: Keeping = {
  why: "Part of the aircraft's maintenance record. It names the person by a number, which now says nothing but Erased person.",
  cite: '14cfr91.417(a)(1)',
};
const STATUS: Keeping = {
  why: "Part of the aircraft's status, which is kept and goes with it when it is sold. It names the person by a number only.",
  cite: '14cfr91.417(b)(2)',
};
const NUMBER_ONLY: Keeping = {
  why: 'Names the person by a number only, which now says nothing but Erased person.',
  cite: null,
};
const CHAIN: Keeping = {
  why: 'Who did what and when, by numbers, chained by hashes: without one row no signature here could be verified.',
  cite: 'ac120-78b',
};

export const TABLES_OF_PERSON: readonly TableOfPerson[] = [
  {
    model: 'Certificate',
    says: 'Certificates',
    about: ['personId'],
    acted: ['enteredById', 'revokedById'],
    erased: {
      why: 'Kind, ratings and dates stay; the number only where something was signed under it.',
      cite: '14cfr43.9(a)(4)',
    },
  },
  {
    model: 'PreventiveAuthorization',
    says: 'Namings for preventive maintenance',
    about: ['personId'],
    acted: ['grantedById'],
    erased: { why: 'Shows that what the pilot signed was the pilot’s to sign.', cite: '14cfr43.3(g)' },
  },
  { model: 'PreventiveWithdrawal', says: 'Namings taken back', acted: ['byId'], erased: NUMBER_ONLY },
  {
    model: 'PersonEvent',
    says: 'Joined, left, returned',
    about: ['personId'],
    acted: ['byId'],
    erased: NUMBER_ONLY,
  },
  {
    model: 'PersonLink',
    says: 'Invitations and ways to a new password',
    about: ['personId'],
    acted: ['madeById'],
    without: ['tokenSha256', 'sealedToken'],
    erased: NUMBER_ONLY,
  },
  {
    model: 'Proof',
    says: 'Proofs; the files of an erased person are gone',
    acted: ['addedById'],
    erased: NUMBER_ONLY,
  },
  { model: 'Session', says: 'Sessions', about: ['personId'], acted: ['endedById'], erased: 'gone' },
  {
    model: 'SecondFactor',
    says: 'Second factors',
    about: ['personId'],
    acted: ['endedById'],
    without: ['sealedSecret', 'credentialId', 'publicKey'],
    erased: 'gone',
  },
  {
    model: 'RecoveryCode',
    says: 'Recovery codes',
    about: ['personId'],
    without: ['codeSha256'],
    erased: 'gone',
  },
  {
    model: 'Challenge',
    says: 'What a browser was asked to prove',
    about: ['personId'],
    without: ['challenge'],
    erased: 'gone',
  },
  {
    model: 'AccessKey',
    says: 'Keys for other programs',
    about: ['personId'],
    acted: ['endedById'],
    without: ['keySha256'],
    erased: NUMBER_ONLY,
  },
  { model: 'Webhook', says: 'Webhooks', acted: ['addedById', 'endedById'], erased: NUMBER_ONLY },
  {
    model: 'Notice',
    says: 'Notices to them',
    about: ['personId'],
    erased: {
      why: 'Tells what became of a write-up, in the words of whoever did it; to whom it went is a number only.',
      cite: null,
    },
  },
  { model: 'Finding', says: 'Findings they reported', about: ['personId'], erased: AIRCRAFT },
  {
    model: 'Photo',
    says: 'About photos they took',
    about: ['takenById'],
    without: ['bytes', 'storedAs'],
    erased: AIRCRAFT,
  },
  { model: 'Walkaround', says: 'Walkarounds', about: ['personId'], erased: NUMBER_ONLY },
  { model: 'WalkaroundPlan', says: 'Walkaround lists', acted: ['madeById'], erased: NUMBER_ONLY },
  { model: 'Determination', says: 'Determinations they signed', about: ['personId'], erased: SIGNED },
  { model: 'DeferralEnd', says: 'Ends of deferrals', acted: ['endedById'], erased: AIRCRAFT },
  { model: 'MelExtension', says: 'Extensions they signed', about: ['personId'], erased: SIGNED },
  { model: 'Placard', says: 'Placards', acted: ['placedById', 'removedById'], erased: AIRCRAFT },
  {
    model: 'MaintenanceAction',
    says: 'Work they began or entered',
    about: ['startedById', 'enteredById'],
    erased: SIGNED,
  },
  { model: 'SignOff', says: 'Work they approved for return to service', about: ['personId'], erased: SIGNED },
  { model: 'CheckFlight', says: 'Check flights they signed', about: ['personId'], erased: SIGNED },
  {
    model: 'Inspection',
    says: 'Inspections',
    about: ['begunById', 'enteredById'],
    erased: SIGNED_INSPECTION,
  },
  { model: 'DiscrepancyList', says: 'Lists they signed', about: ['personId'], erased: SIGNED_INSPECTION },
  { model: 'Compliance', says: 'What recurs, recorded as done', about: ['recordedById'], erased: STATUS },
  { model: 'Vouching', says: 'What they vouched for', about: ['personId'], erased: SIGNED },
  { model: 'SpecialFlightPermit', says: 'Special flight permits', about: ['recordedById'], erased: SIGNED },
  { model: 'PermitInspection', says: 'Inspections for permits', about: ['personId'], erased: SIGNED },
  {
    model: 'EltUse',
    says: 'Use of the emergency locator transmitter',
    acted: ['recordedById'],
    erased: AIRCRAFT,
  },
  { model: 'MeterReading', says: 'Meter readings', about: ['readById'], erased: STATUS },
  // The facts of the aircraft are not about the pilot, and fill megabytes.
  {
    model: 'Release',
    says: 'Releases',
    about: ['dispatcherId', 'pilotId'],
    without: ['facts', 'answer', 'spentAhead'],
    erased: FLOWN,
  },
  { model: 'FlightAcceptance', says: 'Acceptances they signed', about: ['personId'], erased: FLOWN },
  {
    model: 'FlightEvent',
    says: 'What they recorded of flights',
    about: ['recordedById'],
    without: ['lines'],
    erased: FLOWN,
  },
  {
    model: 'PlannedFlight',
    says: 'Planned flights',
    about: ['pilotId'],
    acted: ['plannedById', 'cancelledById'],
    erased: NUMBER_ONLY,
  },
  {
    model: 'PlanImport',
    says: 'Plans taken from files',
    acted: ['importedById'],
    without: ['content'],
    erased: NUMBER_ONLY,
  },
  { model: 'Visit', says: 'Stays at the shop', acted: ['openedById', 'closedById'], erased: NUMBER_ONLY },
  { model: 'VisitItem', says: 'Items of stays', acted: ['addedById', 'removedById'], erased: NUMBER_ONLY },
  { model: 'Base', says: 'Bases', acted: ['addedById'], erased: NUMBER_ONLY },
  { model: 'AircraftType', says: 'Aircraft types', acted: ['addedById'], erased: NUMBER_ONLY },
  { model: 'Aircraft', says: 'Aircraft', acted: ['addedById'], erased: NUMBER_ONLY },
  { model: 'Equipment', says: 'Equipment', acted: ['addedById'], erased: NUMBER_ONLY },
  { model: 'Mel', says: 'Minimum equipment lists', acted: ['addedById', 'endedById'], erased: NUMBER_ONLY },
  { model: 'Requirement', says: 'What recurs', acted: ['addedById', 'endedById'], erased: NUMBER_ONLY },
  { model: 'Directive', says: 'Directives', acted: ['addedById', 'endedById'], erased: NUMBER_ONLY },
  { model: 'StoredLimit', says: 'Limits', acted: ['addedById', 'endedById'], erased: NUMBER_ONLY },
  { model: 'TakenIn', says: 'Files taken in', acted: ['takenById'], erased: NUMBER_ONLY },
  { model: 'SetUpStep', says: 'Steps of setting up', acted: ['byId'], erased: NUMBER_ONLY },
  {
    model: 'HouseRule',
    says: 'House rules',
    acted: ['madeById'],
    erased: { why: 'A house rule stands with its author.', cite: null },
  },
  {
    model: 'Request',
    says: 'Requests answered',
    acted: ['personId'],
    without: ['inputHash', 'result'],
    erased: CHAIN,
  },
  {
    model: 'AuditRow',
    says: 'What they did here, step by step',
    about: ['personId'],
    without: ['previousHash'],
    erased: CHAIN,
  },
  {
    model: 'PersonalErasure',
    says: 'Erasures',
    about: ['personId'],
    acted: ['byId'],
    erased: { why: 'Says that it was erased, and what stayed.', cite: null },
  },
];
