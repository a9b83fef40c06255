/** For every verb of the policy: the service that carries it, and an input about somebody's things that gets past the form. */
import { randomUUID } from 'node:crypto';
import { changeOperator } from '@/lib/access/account/change-operator';
import { changeOwnSettings } from '@/lib/access/account/change-own-settings';
import { endSession } from '@/lib/access/account/end-session';
import { endSessionsOf } from '@/lib/access/account/end-sessions-of';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import type { ActorRef } from '@/lib/access/actor';
import { beginFactor } from '@/lib/access/second-factor/begin';
import { confirmFactor } from '@/lib/access/second-factor/confirm';
import { endFactor } from '@/lib/access/second-factor/end';
import { makeRecoveryCodes } from '@/lib/access/second-factor/make-recovery-codes';
import { resetSecondFactor } from '@/lib/access/second-factor/reset';
import type { Verb } from '@/lib/access/policy';
import type { CallOptions } from '@/lib/access/service';
import type { Result } from '@/lib/problems';
import { addWebhook } from '@/lib/feeds/add-webhook';
import { endKey } from '@/lib/feeds/end-key';
import { endWebhook } from '@/lib/feeds/end-webhook';
import { readExportPage } from '@/lib/feeds/export/read-set';
import { issueKey } from '@/lib/feeds/issue-key';
import { readFeeds } from '@/lib/feeds/read-feeds';
import { sendAgain } from '@/lib/feeds/send-again';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { extendInterval } from '@/lib/determinations/extend-interval';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { addObservation } from '@/lib/findings/add-observation';
import { addPhoto } from '@/lib/photos/add-photo';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { markNoticesRead } from '@/lib/notices/mark-read';
import { readNotices } from '@/lib/notices/read-notices';
import { readPhoto } from '@/lib/photos/read-photo';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { readLists } from '@/lib/walkarounds/read-lists';
import { addProof } from '@/lib/people/add-proof';
import { endCertificate, enterCertificate } from '@/lib/people/certificates';
import { changePerson } from '@/lib/people/change-person';
import { endPersonLink } from '@/lib/people/end-link';
import { erasePerson } from '@/lib/people/erase-person';
import { exportPersonalData } from '@/lib/people/export-personal';
import { invitePerson, makePersonLink } from '@/lib/people/invite-person';
import { leavePerson, returnPerson } from '@/lib/people/leave-and-return';
import { nameForPreventive, withdrawPreventive } from '@/lib/people/preventive';
import { readPerson } from '@/lib/people/read-person';
import { readProof } from '@/lib/people/read-proof';
import { readRecords } from '@/lib/records/read-records';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { writeList } from '@/lib/walkarounds/write-list';
import { STARTING_LIST } from '@/lib/rules/walkaround/starting-list';
import { carryOverLastDone } from '@/lib/carry-over/carry-over-last-done';
import { carryOverWriteUp } from '@/lib/carry-over/carry-over-write-up';
import { checkHistory } from '@/lib/carry-over/check-history';
import { importHistory } from '@/lib/carry-over/import-history';
import { readAircraftHistory } from '@/lib/carry-over/read-aircraft-history';
import { addDirective } from '@/lib/directives/add-directive';
import { endDirective } from '@/lib/directives/end-directive';
import { reviewDirectives } from '@/lib/directives/review-directives';
import { addLimit } from '@/lib/limits/add-limit';
import { endLimit } from '@/lib/limits/end-limit';
import { checkMel } from '@/lib/mel/check-mel';
import { endMel } from '@/lib/mel/end-mel';
import { importMel } from '@/lib/mel/import-mel';
import { melLetter } from '@/lib/mel/mel-letter';
import { noMel } from '@/lib/mel/no-mel';
import { addPaper } from '@/lib/papers-aboard/add-paper';
import { readAirports } from '@/lib/airports/read-airports';
import { addBase } from '@/lib/bases/add-base';
import { changeBase } from '@/lib/bases/change-base';
import { readBases } from '@/lib/bases/read-bases';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { changeAircraft } from '@/lib/aircraft/change-aircraft';
import { readOfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { bringBackAircraft, retireAircraft } from '@/lib/aircraft/retire-aircraft';
import { beginSet } from '@/lib/equipment/begin-set';
import { confirmLines } from '@/lib/equipment/confirm-lines';
import { enterLine } from '@/lib/equipment/enter-line';
import { checkEquipment, importEquipment } from '@/lib/equipment/import-equipment';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { removeLine } from '@/lib/equipment/remove-line';
import { addType } from '@/lib/types/add-type';
import { changeType } from '@/lib/types/change-type';
import { endHouseRule } from '@/lib/house-rules/end-house-rule';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';
import { setHouseRule } from '@/lib/house-rules/set-house-rule';
import { checkImport } from '@/lib/flights/import/check-import';
import { importPlans } from '@/lib/flights/import/import-plans';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { changeVisit } from '@/lib/visits/change-visit';
import { closeVisit } from '@/lib/visits/close-visit';
import { openVisit } from '@/lib/visits/open-visit';
import { readVisit } from '@/lib/visits/read-visit';
import { readDue } from '@/lib/due/read-due';
import { readInsight } from '@/lib/insight/read-insight';
import { addRequirement } from '@/lib/fleet/add-requirement';
import { endRequirement } from '@/lib/fleet/end-requirement';
import { renewPaper } from '@/lib/fleet/renew-paper';
import { readTrends } from '@/lib/trends/read-trends';
import { readInOperator } from '@/lib/db/scope';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readDay } from '@/lib/fleet/read-day';
import { readLacking } from '@/lib/fleet/read-lacking';
import { markStep } from '@/lib/set-up/mark-step';
import { readSetUp } from '@/lib/set-up/read-set-up';
import { readBoard } from '@/lib/fleet/read-board';
import { answerFlight } from '@/lib/releases/answer-flight';
import { correctMeters } from '@/lib/releases/correct-meters';
import { readReleases } from '@/lib/releases/read-desk';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { acceptRelease } from '@/lib/releases/accept-release';
import { logFlight } from '@/lib/releases/log-flight';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { releaseFlight } from '@/lib/releases/release-flight';
import { readDeferralList } from '@/lib/papers/read-deferrals';
import { inspectForPermit } from '@/lib/permits/inspect-for-permit';
import { readPermit } from '@/lib/permits/read-permit';
import { recordPermit } from '@/lib/permits/record-permit';
import { beginInspection } from '@/lib/inspections/begin-inspection';
import { disposeDeferral } from '@/lib/inspections/dispose-deferral';
import { enterInspection } from '@/lib/inspections/enter-inspection';
import { giveUpInspection } from '@/lib/inspections/give-up-inspection';
import { readInspection } from '@/lib/inspections/read-inspection';
import { recordEltUse } from '@/lib/inspections/record-elt-use';
import { recordRequirement } from '@/lib/inspections/record-requirement';
import { recordVorCheck } from '@/lib/inspections/record-vor-check';
import { signInspection } from '@/lib/inspections/sign-inspection';
import { signList } from '@/lib/inspections/sign-list';
import { startRequirementWork } from '@/lib/inspections/start-requirement-work';
import { abandonWork } from '@/lib/work/abandon-work';
import { correctWork } from '@/lib/work/correct-work';
import { enterWork } from '@/lib/work/enter-work';
import { logCheckFlight } from '@/lib/work/log-check-flight';
import { readBench } from '@/lib/work/read-bench';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  dayLesson,
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  permitOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import { BASE, trainer } from '../fixtures/aircraft';
import {
  beginOf,
  disposalOf,
  inspectionEntryOf,
  listOf,
  paperRecordOf,
  requirementsOf,
  vorCheckOf,
} from '../fixtures/inspections';
import { historyFile, lastDoneOnPaper, melFile, writeUpOnPaper } from '../fixtures/history';
import { aircraftOf, enterOf, fileOf, importOf, lineOf, typeOf } from '../fixtures/fleet-office';
import { NOW, PASSWORD, type School } from '../fixtures/school';
import { accountThings, changePasswordAndBack, newPasswordOf, type AccountThings } from './account-things';

export type Call = (ref: ActorRef | null, raw: unknown, options?: CallOptions) => Promise<Result<unknown>>;

/** Things of one school that acts are about. */
export interface Things {
  readonly school: School;
  readonly writeUpId: string;
  readonly findingId: string;
  readonly placardId: string;
  readonly workId: string;
  readonly walkaroundId: string;
  /** A second aircraft, with one line on its equipment list, that nothing else is about. */
  readonly spareAircraftId: string;
  readonly spareLineId: string;
  readonly photoId: string;
  /** Released with the renter as pilot in command. */
  readonly releaseId: string;
  /** The reading at departure of that release. */
  readonly readingId: string;
  readonly noticeId: string;
  readonly keyId: string;
  readonly webhookId: string;
  /** A rule of the house in force that bars nothing here. */
  readonly houseRuleId: string;
  /** A delivery to it that waits. */
  readonly deliveryId: string;
  readonly deferralId: string;
  /** A special flight permit that asks for an inspection. */
  readonly permitId: string;
  /** A directive, which a person may end. */
  readonly directiveId: string;
  readonly paperId: string;
  readonly visitId: string;
  readonly plannedFlightId: string;
  /** Begun and given up, so that no act on it depends on what the meters say meanwhile. */
  readonly inspectionId: string;
  /** A directive that names equipment, a stored limit, and the minimum equipment list in force. */
  readonly namedDirectiveId: string;
  readonly limitId: string;
  readonly melId: string;
  /** What recurs, by kind. */
  readonly due: ReadonlyMap<string, string>;
  /** Somebody nothing else is about: invited, with a pilot certificate, named for preventive maintenance. */
  readonly colleague: {
    readonly personId: string;
    readonly linkId: string;
    readonly certificateId: string;
    readonly authorizationId: string;
  };
  /** Of the renter's own certificate. */
  readonly proofId: string;
  /** What the renter has for signing in, with requests that are sent again by whatever role is asked. */
  readonly account: AccountThings;
}

interface Act {
  readonly call: Call;
  readonly input: (things: Things) => unknown;
  /** False for lists, which are about nothing in particular. */
  readonly aboutThings: boolean;
}

/** One pixel, PNG (invented for the test). */
const PIXEL = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
);

const about = (call: Call, input: Act['input']): Act => ({ call, input, aboutThings: true });
const list = (call: Call): Act => ({ call, input: () => ({}), aboutThings: false });
const own = () => ({ requestId: randomUUID() });

const newcomer = () => ({
  ...own(),
  name: 'Cole League',
  email: `${randomUUID()}@matrix.example`,
  roles: ['pilot'],
  homeBaseId: '',
  handedOver: 'printed',
});
const certificateOf = (personId: string) => ({
  ...own(),
  personId,
  kind: 'pilot',
  renewsId: '',
  number: personId.slice(0, 8),
  grade: 'private',
  ratings: [],
  issuedOn: '',
  expiresOn: '',
  recentExperienceThrough: '',
  firstYearActivityMet: 'not-said',
  authorisedToSign: 'not-said',
});

export const ACTS: Readonly<Record<Verb, Act>> = {
  'own-account.read': list(readOwnAccount),
  'own-settings.change': {
    call: changeOwnSettings,
    input: () => ({ ...own(), language: 'es', units: 'metric' }),
    aboutThings: false,
  },
  'password.change': { call: changePasswordAndBack, input: newPasswordOf, aboutThings: false },
  'session.end': about(endSession, ({ account }) => ({
    ...own(),
    which: 'one',
    sessionId: account.sessionId,
  })),
  'second-factor.begin': {
    call: beginFactor,
    input: () => ({ ...own(), password: PASSWORD, kind: 'passkey' }),
    aboutThings: false,
  },
  'second-factor.confirm': about(confirmFactor, ({ account }) => account.confirm),
  'second-factor.end': about(endFactor, ({ account }) => account.end),
  // After the confirmation above: codes are for whoever has a factor.
  'recovery-codes.make': {
    call: makeRecoveryCodes,
    input: () => ({ ...own(), password: PASSWORD }),
    aboutThings: false,
  },
  'person.read': about(readPerson, ({ colleague }) => ({ personId: colleague.personId })),
  'person.invite': { call: invitePerson, input: () => newcomer(), aboutThings: false },
  'person.change': about(changePerson, ({ colleague }) => ({
    ...own(),
    personId: colleague.personId,
    name: 'Cole League',
    email: `${colleague.personId}@matrix.example`,
    roles: ['pilot'],
    homeBaseId: '',
  })),
  'person.link': about(makePersonLink, ({ colleague }) => ({
    ...own(),
    personId: colleague.personId,
    handedOver: 'printed',
  })),
  'person.end-link': about(endPersonLink, ({ colleague }) => ({ ...own(), linkId: colleague.linkId })),
  'person.leave': about(leavePerson, ({ colleague }) => ({
    ...own(),
    personId: colleague.personId,
    leftOn: '2026-11-25',
  })),
  'person.return': about(returnPerson, ({ colleague }) => ({ ...own(), personId: colleague.personId })),
  'certificate.enter': about(enterCertificate, ({ colleague }) => certificateOf(colleague.personId)),
  'certificate.end': about(endCertificate, ({ colleague }) => ({
    ...own(),
    certificateId: colleague.certificateId,
    revokedOn: '2026-11-25',
    words: 'A slip.',
  })),
  // Also of somebody else's: for those who are no manager that is a refusal of its own.
  'proof.add': about(
    (ref, raw, options) => addProof(ref, raw as Parameters<typeof addProof>[1], options),
    ({ colleague }) => ({ ...own(), about: 'certificate', aboutId: colleague.certificateId, bytes: PIXEL }),
  ),
  'proof.read': about(readProof, ({ proofId }) => ({ proofId })),
  'preventive.name': about(nameForPreventive, ({ colleague }) => ({
    ...own(),
    personId: colleague.personId,
    words: 'Item (c)(1).',
  })),
  'preventive.withdraw': about(withdrawPreventive, ({ colleague }) => ({
    ...own(),
    authorizationId: colleague.authorizationId,
    words: 'No longer.',
  })),
  'personal-data.export': {
    call: exportPersonalData,
    input: ({ school }) => ({ personId: school.people.renter.personId }),
    aboutThings: false,
  },
  'personal-data.erase': about(erasePerson, ({ colleague }) => ({
    ...own(),
    personId: colleague.personId,
    askedOn: '2026-11-25',
    words: 'Asked.',
    understood: true,
    password: PASSWORD,
  })),
  'person.end-sessions': about(endSessionsOf, ({ school }) => ({
    ...own(),
    personId: school.people.stale.personId,
  })),
  'person.reset-second-factor': about(resetSecondFactor, ({ school }) => ({
    ...own(),
    password: PASSWORD,
    personId: school.people.stale.personId,
    why: 'The phone is lost.',
  })),
  'operator.change': {
    call: changeOperator,
    input: () => ({ ...own(), signersNeedSecondFactor: false, password: PASSWORD }),
    aboutThings: false,
  },
  'lacking.read': about(readLacking, (t) => ({ aircraftId: t.school.aircraftId })),
  'set-up.read': list(readSetUp),
  'set-up.mark-step': {
    call: markStep,
    input: () => ({ ...own(), step: 'people', done: true }),
    aboutThings: false,
  },
  'fleet.read': list(readBoard),
  'feeds.read': list(readFeeds),
  'export.read': { call: readExportPage, input: () => ({ set: 'aircraft' }), aboutThings: false },
  'key.issue': { call: issueKey, input: () => keyOf('Wall screen'), aboutThings: false },
  'key.end': about(endKey, ({ keyId }) => ({ ...own(), keyId })),
  'webhook.add': {
    call: addWebhook,
    input: () => webhookOf('https://hooks.invented.example/'),
    aboutThings: false,
  },
  'webhook.end': about(endWebhook, ({ webhookId }) => ({ ...own(), webhookId })),
  'webhook.send-again': about(sendAgain, ({ deliveryId }) => ({ ...own(), deliveryId })),
  'own-findings.read': list(readOwnFindings),
  'own-notices.read': list(readNotices),
  'walkaround-list.read': list(readLists),
  'bench.read': list(readBench),
  'release.read': list(readReleases),
  'aircraft.read': about(readAircraftFile, ({ school }) => ({ aircraftId: school.aircraftId })),
  'day.read': about(readDay, ({ school }) => ({ aircraftId: school.aircraftId })),
  'write-up.read': about(readWriteUp, ({ writeUpId }) => ({ discrepancyId: writeUpId })),
  'photo.read': about(readPhoto, ({ photoId }) => ({ photoId })),
  'flight.answer': about(answerFlight, ({ school }) => dayLesson(school)),
  'walkaround.start': about(startWalkaround, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    startedAt: NOW.toISOString(),
  })),
  'walkaround.finish': about(finishWalkaround, ({ walkaroundId }) => ({
    ...own(),
    walkaroundId,
    stations: { tail: 'good' },
  })),
  'walkaround-list.write': about(writeList, ({ school }) => ({
    ...own(),
    typeId: school.typeId,
    fromVersion: 0,
    list: STARTING_LIST,
    why: 'Fitted to the type.',
  })),
  'finding.report': about(reportFinding, ({ school }) => nickedPropeller(school)),
  'observation.add': about(addObservation, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    walkaroundId: null,
    station: 'propeller',
    itemKey: null,
    words: 'Still there.',
    measurements: {},
    foundAt: NOW.toISOString(),
    phase: 'before-flight',
  })),
  'photo.add': about(
    (ref, raw) => addPhoto(ref, raw as Parameters<typeof addPhoto>[1]),
    ({ findingId }) => ({ ...own(), findingId, bytes: PIXEL }),
  ),
  'servicing.record': about(recordServicing, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    words: 'Oil added.',
  })),
  'notice.mark-read': about(markNoticesRead, ({ noticeId }) => ({ ...own(), noticeIds: [noticeId] })),
  'severity.judge': about(judgeSeverity, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    kind: 'damage',
    jasc: '6111',
    equipmentId: null,
    inoperativeCount: null,
    severity: 'grounding',
    statement: 'Sharp.',
    password: PASSWORD,
  })),
  'within-limits.find': about(findWithinLimits, ({ writeUpId }) => ({
    ...own(),
    discrepancyId: writeUpId,
    measured: '0.010 in',
    limitText: '0.031 in',
    limitSource: 'Invented manual',
    statement: 'Within.',
    password: PASSWORD,
  })),
  'deferral.begin': about(beginDeferral, ({ writeUpId }) => deferralOf(writeUpId)),
  'deferral.extend': about(extendInterval, ({ deferralId }) => ({
    ...own(),
    deferralId,
    until: '2026-12-10',
    reason: 'Bulb on order.',
    password: PASSWORD,
  })),
  'records.read': about(readRecords, ({ school }) => ({ aircraftId: school.aircraftId })),
  'paper.read': about(readDeferralList, ({ school }) => ({ aircraftId: school.aircraftId })),
  'permit.record': about(recordPermit, ({ school, writeUpId }) => permitOf(school, [writeUpId])),
  'permit.inspect': about(inspectForPermit, ({ permitId }) => ({
    ...own(),
    permitId,
    safe: true,
    statement: 'Looked at the blade.',
    password: PASSWORD,
  })),
  'permit.read': about(readPermit, ({ permitId }) => ({ permitId })),
  'placard.place': about(placePlacard, ({ placardId }) => ({ ...own(), placardId })),
  'work.start': about(startWork, ({ writeUpId }) => startOf(writeUpId)),
  'work.enter': about(enterWork, ({ workId }) => entryOf(workId, 'Somebody')),
  'work.sign': about(signWork, ({ workId }) => signatureOf(workId, '0'.repeat(64))),
  'work.abandon': about(abandonWork, ({ workId }) => ({ ...own(), workId, words: 'Wrong aircraft.' })),
  'work.correct': about(correctWork, ({ workId }) => ({ ...own(), workId, why: 'Wrong part number.' })),
  'check-flight.log': about(logCheckFlight, ({ workId }) => ({
    ...own(),
    workId,
    words: 'Flew it.',
    flownOn: '2026-11-25',
    password: PASSWORD,
  })),
  'planned-flights.read': list(readPlannedFlights),
  'flight.plan': about(planFlight, ({ school }) => planOf(school)),
  'airport.find': { call: readAirports, input: () => ({ text: 'KORD' }), aboutThings: false },
  'base.read': list(readBases),
  'type.read': list(readOfficeFleet),
  'type.add': { call: addType, input: () => typeOf(), aboutThings: false },
  'type.change': about(changeType, ({ school }) => typeOf({ typeId: school.typeId })),
  'aircraft.add': { call: addAircraft, input: ({ school }) => aircraftOf(school), aboutThings: false },
  'aircraft.change': about(changeAircraft, ({ school, spareAircraftId }) =>
    aircraftOf(school, { aircraftId: spareAircraftId }),
  ),
  'aircraft.retire': about(retireAircraft, ({ spareAircraftId }) => ({
    ...own(),
    aircraftId: spareAircraftId,
    why: 'Sold.',
  })),
  'aircraft.bring-back': about(bringBackAircraft, ({ spareAircraftId }) => ({
    ...own(),
    aircraftId: spareAircraftId,
    why: 'Bought back.',
  })),
  'equipment.read': about(readEquipment, ({ spareAircraftId }) => ({ aircraftId: spareAircraftId })),
  'equipment.begin-set': about(beginSet, ({ spareAircraftId }) => ({
    ...own(),
    aircraftId: spareAircraftId,
    sets: ['day-vfr'],
  })),
  'equipment.enter': about(enterLine, ({ spareAircraftId }) =>
    enterOf(spareAircraftId, lineOf({ name: `Item ${randomUUID()}` })),
  ),
  'equipment.confirm': about(confirmLines, ({ spareAircraftId, spareLineId }) => ({
    ...own(),
    aircraftId: spareAircraftId,
    decisions: [{ kind: 'not-installed', equipmentId: spareLineId, source: 'Equipment list B' }],
    password: PASSWORD,
  })),
  'equipment.remove': about(removeLine, ({ spareLineId }) => ({
    ...own(),
    equipmentId: spareLineId,
    why: 'Taken out.',
    source: 'Equipment list B',
    password: PASSWORD,
  })),
  'equipment.check-import': about(checkEquipment, ({ spareAircraftId }) => fileOf(spareAircraftId)),
  'equipment.import': about(importEquipment, ({ spareAircraftId }) => importOf(spareAircraftId)),
  'base.add': {
    call: addBase,
    input: () => ({ ...own(), ...BASE_FACTS, ident: randomUUID().slice(0, 7), airportIdent: '' }),
    aboutThings: false,
  },
  'house-rule.read': list(readHouseRules),
  'house-rule.set': about(setHouseRule, ({ houseRuleId }) => ({
    ...own(),
    of: { ruleId: houseRuleId, seenVersion: 1 },
    setting: { kind: 'most-deferrals', most: 90 },
    reach: null,
    why: 'Tried by everybody.',
  })),
  'house-rule.end': about(endHouseRule, ({ houseRuleId }) => ({
    ...own(),
    ruleId: houseRuleId,
    seenVersion: 1,
    why: 'Tried by everybody.',
  })),
  'base.change': about(changeBase, ({ school }) => ({ ...own(), ...BASE_FACTS, baseId: school.baseId })),
  'plan.check-import': { call: checkImport, input: () => PLAN_FILE, aboutThings: false },
  'plan.import': { call: importPlans, input: () => ({ ...own(), ...PLAN_FILE }), aboutThings: false },
  'flight.cancel-plan': about(cancelPlannedFlight, ({ plannedFlightId }) => ({ ...own(), plannedFlightId })),
  'visit.read': about(readVisit, ({ visitId }) => ({ visitId })),
  'visit.open': about(openVisit, ({ school, writeUpId }) => visitOf(school, writeUpId)),
  'visit.change': about(changeVisit, ({ visitId }) => ({
    ...own(),
    visitId,
    title: 'Propeller, another day',
    words: '',
    plannedOn: null,
    addDiscrepancyIds: [],
    addRequirementIds: [],
    removeItemIds: [],
  })),
  'visit.close': about(closeVisit, ({ visitId }) => ({ ...own(), visitId })),
  'due.read': list(readDue),
  'insight.read': about(readInsight, ({ school }) => ({ aircraftId: school.aircraftId })),
  'trends.read': about(readTrends, ({ school }) => ({ aircraftId: school.aircraftId })),
  'requirement.add': about(addRequirement, ({ school }) => directiveOf(school)),
  'requirement.end': about(endRequirement, ({ directiveId }) => ({
    ...own(),
    requirementId: directiveId,
    why: 'Superseded.',
    reference: 'Invented directive 10',
    password: PASSWORD,
  })),
  'inspection.read': about(readInspection, ({ inspectionId }) => ({ inspectionId })),
  'inspection.begin': about(beginInspection, ({ school, due }) =>
    beginOf(school, 'annual', [due.get('annual') ?? '']),
  ),
  'inspection.enter': about(enterInspection, ({ inspectionId }) => inspectionEntryOf(inspectionId, '4512.3')),
  'inspection.list': about(signList, ({ inspectionId }) => listOf(inspectionId)),
  'inspection.sign': about(signInspection, ({ inspectionId }) => ({
    ...own(),
    inspectionId,
    part: 'airframe',
    airworthy: true,
    madeByMe: true,
    entryHash: '0'.repeat(64),
    password: PASSWORD,
  })),
  'inspection.give-up': about(giveUpInspection, ({ inspectionId }) => ({
    ...own(),
    inspectionId,
    words: 'Wrong aircraft.',
  })),
  'deferral.dispose': about(disposeDeferral, ({ deferralId, inspectionId }) =>
    disposalOf(deferralId, { inspectionId }),
  ),
  'requirement.start-work': about(startRequirementWork, ({ due }) => ({
    ...own(),
    requirementId: due.get('transponder'),
    title: 'Transponder test',
    workKind: null,
    preventiveItem: null,
    jasc: null,
    swapOnly: null,
  })),
  'requirement.record': about(recordRequirement, ({ due }) =>
    paperRecordOf(due.get('elt-inspection') ?? '', '2026-11-20', '4500.0'),
  ),
  'vor-check.record': about(recordVorCheck, ({ due }) => vorCheckOf(due.get('vor-check') ?? '')),
  'elt-use.record': about(recordEltUse, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    usedOn: '2026-11-25',
    minutes: 1,
    words: 'Test.',
  })),
  'paper.renew': about(renewPaper, ({ paperId }) => ({
    ...own(),
    paperId,
    validThrough: null,
    expires: false,
    reference: 'Second edition',
    issuedOn: null,
    aboard: true,
  })),
  'carry-over.read': about(readAircraftHistory, ({ school }) => ({ aircraftId: school.aircraftId })),
  'write-up.carry-over': about(carryOverWriteUp, ({ school }) => ({
    ...own(),
    ...writeUpOnPaper(),
    aircraftId: school.aircraftId,
    password: PASSWORD,
  })),
  'last-done.carry-over': about(carryOverLastDone, ({ due }) => ({
    ...own(),
    ...lastDoneOnPaper(),
    requirementId: due.get('elt-inspection'),
    password: PASSWORD,
  })),
  'history.check-import': { call: checkHistory, input: () => historyFile(), aboutThings: false },
  'history.import': {
    call: importHistory,
    input: () => ({ ...own(), ...historyFile(), password: PASSWORD }),
    aboutThings: false,
  },
  'paper.add': about(addPaper, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    kind: 'flight-manual',
    reference: 'Invented manual',
    expires: false,
    validThrough: null,
    issuedOn: null,
    aboard: true,
    password: PASSWORD,
  })),
  'directive.add': about(addDirective, ({ school }) => namedDirectiveOf(school)),
  'directive.end': about(endDirective, ({ namedDirectiveId }) => ({
    ...own(),
    directiveId: namedDirectiveId,
    why: 'Superseded.',
    reference: 'Invented directive 12',
    password: PASSWORD,
  })),
  'directives.review': about(reviewDirectives, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    reviewedOn: '2026-11-24',
    document: 'Invented list of directives',
    password: PASSWORD,
  })),
  'limit.add': about(addLimit, ({ school }) => limitOf(school)),
  'limit.end': about(endLimit, ({ limitId }) => ({
    ...own(),
    limitId,
    why: 'A newer manual.',
    password: PASSWORD,
  })),
  'mel.check-import': about(checkMel, ({ school }) => melFile(school.aircraftId)),
  'mel.import': about(importMel, ({ school }) => ({
    ...own(),
    ...melFile(school.aircraftId),
    password: PASSWORD,
  })),
  'mel.letter': about(melLetter, ({ melId }) => ({
    ...own(),
    melId,
    letterReference: 'Invented letter 8',
    letterIssuedOn: '',
    letterAboard: 'yes',
    password: PASSWORD,
  })),
  'mel.end': about(endMel, ({ melId }) => ({
    ...own(),
    melId,
    why: 'The letter was given back.',
    source: 'Invented letter 9',
    password: PASSWORD,
  })),
  'mel.none': about(noMel, ({ school }) => ({
    ...own(),
    aircraftId: school.aircraftId,
    source: 'Invented records',
    password: PASSWORD,
  })),
  'flight.release': about(releaseFlight, ({ school }) => ({
    ...dayLesson(school),
    ...own(),
    factsVersion: 1,
    limitsPassedOn: true,
  })),
  // The release of the furnished school went void with the nick that was written up after it; the renter is its pilot.
  'flight.accept': about(acceptRelease, ({ releaseId }) => ({
    ...own(),
    releaseId,
    answerHash: '0'.repeat(64),
    limitsRead: true,
    statementConfirmed: true,
    password: PASSWORD,
  })),
  'flight.log': about(logFlight, ({ releaseId }) => ({
    ...own(),
    releaseId,
    what: 'closed',
    at: 'now',
    words: 'Not flown.',
  })),
  'flight.withdraw': about(withdrawRelease, ({ releaseId }) => ({
    ...own(),
    releaseId,
    words: 'Another aircraft.',
  })),
  'meters.read-out': about(readMetersOut, ({ releaseId }) => metersOf(releaseId, 'out')),
  'meters.read-in': about(readMetersIn, ({ releaseId }) => metersOf(releaseId, 'in')),
  'meters.correct': about(correctMeters, ({ readingId }) => ({
    ...own(),
    readingId,
    hobbsTenths: 21235,
    tachTenths: 19876,
    back: null,
    why: 'Read between two marks.',
  })),
};

const keyOf = (name: string) => ({ ...own(), name, scopes: ['fleet:read'], lastDay: '', password: PASSWORD });

const webhookOf = (url: string) => ({ ...own(), name: 'Receiver', url, events: ['write-up.opened'] });

const directiveOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  kind: 'directive',
  name: 'Heat valve',
  reference: 'Invented directive 1',
  binding: null,
  intervalMonths: '12',
  intervalDays: '',
  intervalHours: '100',
  fixedExpiry: '',
});

const namedDirectiveOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  number: `Invented directive ${randomUUID().slice(0, 8)}`,
  title: 'Stall warning must work',
  equipmentId: null,
  requiresOperable: false,
});

const limitOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  measurement: 'skin-dent-depth',
  min: '',
  max: '0.031',
  source: 'Invented structure manual',
  sourceDate: '',
});

/** The fixtures' base as it is, so that nothing about it changes. */
const BASE_FACTS = {
  name: 'Home',
  latitudeDeg: String(BASE.latitudeDeg),
  longitudeDeg: String(BASE.longitudeDeg),
  zone: BASE.zone,
  zoneConfirmed: true,
  repairAvailable: 'yes',
  transponderAirspace: 'no',
  adsbAirspace: 'no',
  controlledAirspace: 'yes',
};

/** One flight of the fixtures' trainer, on a day no other act is about. */
const PLAN_FILE = {
  kind: 'csv',
  fileName: 'plan.csv',
  text: `aircraft,depart,arrive,id\r\n${trainer().registration},2026-12-20 10:00,2026-12-20 11:00,1\r\n`,
};

const planOf = (school: School) => ({
  ...own(),
  aircraftId: school.aircraftId,
  pilotId: null,
  departLocal: '2026-11-26T10:00',
  arriveLocal: '2026-11-26T11:00',
  plannedHours: '',
  words: '',
});

const visitOf = (school: School, writeUpId: string) => ({
  ...own(),
  aircraftId: school.aircraftId,
  title: 'Propeller',
  words: '',
  plannedOn: null,
  discrepancyIds: [writeUpId],
  requirementIds: [],
});

/** The same figures whoever asks: the second to send them is told that they stand there already, or were corrected. */
const metersOf = (releaseId: string, moment: 'out' | 'in') => ({
  ...own(),
  releaseId,
  moment,
  // The return leaves room for the correction of the departure.
  hobbsTenths: moment === 'out' ? 21234 : 21235,
  tachTenths: 19876,
  readAt: NOW.toISOString(),
});

/** Gives a school one of everything that acts can be about. */
export async function furnish(school: School): Promise<Things> {
  const now = { now: NOW };
  const { renter, powerplant, airframe, dispatcher } = school.people;
  // Before anything is written up: a grounded aircraft is not released.
  const released = await releaseFlight(
    dispatcher,
    { ...dayLesson(school), ...own(), factsVersion: 1, limitsPassedOn: false },
    now,
  );
  const { walkaroundId } = valueOf(
    await startWalkaround(
      renter,
      { ...own(), aircraftId: school.aircraftId, startedAt: NOW.toISOString() },
      now,
    ),
  );
  // Signing secrets of webhooks are sealed with it.
  process.env['NEXTAUTH_SECRET'] ??= 'a secret for tests only, of enough characters';
  const { manager } = school.people;
  const { keyId } = valueOf(await issueKey(manager, keyOf('Door'), now));
  const { webhookId } = valueOf(await addWebhook(manager, webhookOf('https://told.invented.example/'), now));
  const light = valueOf(await reportFinding(renter, deadLandingLight(school), now));
  const { placardId, deferralId } = valueOf(
    await beginDeferral(airframe, deferralOf(light.discrepancyId), now),
  );
  const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now));
  const photo = await addPhoto(renter, { ...own(), findingId: nick.findingId, bytes: PIXEL });
  const { workId } = valueOf(await startWork(powerplant, startOf(nick.discrepancyId), now));
  const { permitId } = valueOf(
    await recordPermit(school.people.manager, permitOf(school, [nick.discrepancyId]), now),
  );
  const { releaseId } = valueOf(released);
  const departure = metersOf(releaseId, 'out');
  valueOf(await readMetersOut(renter, departure, now));
  const { requirementId: directiveId } = valueOf(await addRequirement(airframe, directiveOf(school), now));
  const manual = await readInOperator(school.operatorId, (tx) =>
    tx.paper.findFirstOrThrow({ where: { aircraftId: school.aircraftId, kind: 'flight-manual' } }),
  );
  const invited = valueOf(await invitePerson(manager, newcomer(), now));
  const held = valueOf(await enterCertificate(manager, certificateOf(invited.personId), now));
  const named = valueOf(
    await nameForPreventive(manager, { ...own(), personId: invited.personId, words: 'Item (c)(1).' }, now),
  );
  const rentersOwn = await readInOperator(school.operatorId, (tx) =>
    tx.certificate.findFirstOrThrow({ where: { personId: renter.personId } }),
  );
  const proof = await addProof(
    manager,
    { ...own(), about: 'certificate', aboutId: rentersOwn.id, bytes: PIXEL },
    now,
  );
  const { visitId } = valueOf(await openVisit(airframe, visitOf(school, nick.discrepancyId), now));
  const { plannedFlightId } = valueOf(await planFlight(dispatcher, planOf(school), now));
  const due = await requirementsOf(school);
  const { inspectionId } = valueOf(
    await beginInspection(airframe, beginOf(school, 'hundred-hour', [due.get('hundred-hour') ?? '']), now),
  );
  valueOf(await giveUpInspection(airframe, { ...own(), inspectionId, words: 'Wrong aircraft.' }, now));
  const { directiveId: namedDirectiveId } = valueOf(
    await addDirective(airframe, namedDirectiveOf(school), now),
  );
  const { aircraftId: spareAircraftId } = valueOf(await addAircraft(manager, aircraftOf(school), now));
  const { equipmentId: spareLineId } = valueOf(await enterLine(manager, enterOf(spareAircraftId), now));
  const { limitId } = valueOf(await addLimit(airframe, limitOf(school), now));
  const houseRule = {
    ...own(),
    of: null,
    setting: { kind: 'most-deferrals', most: 99 },
    reach: null,
    why: 'Bars nothing here.',
  };
  const { ruleId: houseRuleId } = valueOf(await setHouseRule(manager, houseRule, now));
  const list = { ...own(), ...melFile(school.aircraftId), reference: 'Invented list', password: PASSWORD };
  const { melId } = valueOf(await importMel(manager, list, now));
  return {
    school,
    spareAircraftId,
    spareLineId,
    namedDirectiveId,
    limitId,
    melId,
    writeUpId: nick.discrepancyId,
    findingId: nick.findingId,
    placardId,
    deferralId,
    permitId,
    workId,
    directiveId,
    paperId: manual.id,
    visitId,
    plannedFlightId,
    inspectionId,
    due,
    colleague: {
      personId: invited.personId,
      linkId: invited.linkId,
      certificateId: held.certificateId,
      authorizationId: named.authorizationId,
    },
    proofId: valueOf(proof).proofId,
    account: await accountThings(renter),
    walkaroundId,
    photoId: valueOf(photo).photoId,
    releaseId,
    // A reading has the number of the request that wrote it.
    readingId: departure.requestId,
    // The deferral was told to whoever wrote the light up.
    noticeId: valueOf(await readNotices(renter, {}, now)).unread[0]?.id ?? '',
    keyId,
    webhookId,
    houseRuleId,
    deliveryId: valueOf(await readFeeds(manager, {}, now)).webhooks[0]?.deliveries[0]?.id ?? '',
  };
}
