import { describe, expect, it } from 'vitest';
import type {
  AircraftFacts,
  DeferralFacts,
  RequiredCounts,
  RequirementFacts,
  RequirementKind,
  WorkFacts,
} from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { dueOf } from '@/lib/rules/due';
import { known } from '@/lib/rules/facts';
import type { CiteId } from '@/lib/rules/law';
import type { ProposedFlight } from '@/lib/rules/operations';
import type { SignerFacts } from '@/lib/rules/people';
import type { Ruling } from '@/lib/rules/ruling';
import type { Line } from '@/lib/rules/verdict';
import { mayDetermineNoHazard } from '@/lib/rules/who-may-determine';
import { mayApproveHundredHour, mayApproveReturnToService, type WorkToSign } from '@/lib/rules/who-may-sign';
import {
  AWAY,
  BASE,
  deferralOf,
  flightOf,
  olderTrainer,
  permitOf,
  requirementRow,
  trainer,
  trainerRequirements,
  withBroken,
  withRow,
} from '../fixtures/aircraft';

/**
 * The twenty-five worked decisions, through the same functions that answer for a flight or a signature. Source of each
 * row: the paragraph it expects, read in the copies which the law register names beside it; the decisions themselves
 * are derived from those paragraphs (regulations, section 13). A row is one situation of a decision; a decision
 * whose table cell has two outcomes, or a border, has several rows.
 */
interface Row {
  readonly no: number;
  readonly title: string;
  readonly given: () => { readonly outcome: string; readonly lines: readonly Line[] };
  readonly outcome: 'go' | 'go-with-limits' | 'no-go' | 'allowed' | 'refused';
  /** The paragraph that must say so, and what its line does. */
  readonly cite: CiteId;
  readonly effect: Line['effect'];
}

const fly =
  (aircraft: AircraftFacts, flight: Partial<ProposedFlight> = {}) =>
  () =>
    answerForFlight(aircraft, flightOf(flight)).answer;
const sign = (ruling: Ruling) => () => ({
  outcome: ruling.allowed ? 'allowed' : 'refused',
  lines: ruling.lines,
});

/** 18:30 to 20:00 at the base, after the end of civil twilight. */
const NIGHT = { departAt: '2026-11-26T00:30:00Z', arriveAt: '2026-11-26T02:00:00Z' };
/** 10:00 to 11:30 at the base on another day, daylight time or not. */
const day = (date: string) => ({ departAt: `${date}T16:00:00Z`, arriveAt: `${date}T17:30:00Z` });
const dual = { purpose: 'instruction-for-hire' as const };
const nearby = { ...dual, trainingWithin50Nm: known(true) };
const ifr = { rules: 'IFR' as const };

const none: RequiredCounts = { dayVfr: 0, nightVfr: 0, dayIfr: 0, nightIfr: 0 };
const deferred = (change: Partial<DeferralFacts> = {}) => ({ deferral: deferralOf(change) });

const change = (
  kind: RequirementKind,
  row: Partial<RequirementFacts>,
  aircraft: AircraftFacts = trainer(),
): AircraftFacts => ({
  ...aircraft,
  requirements: aircraft.requirements.map((old) => (old.kind === kind ? { ...old, ...row } : old)),
});
const done = (on: string, ttisTenths: number, approved = true, wasDueTenths: number | null = null) => ({
  lastDone: known({ on, ttisTenths, wasDueTenths, approvedByAuthorised: known(approved) }),
});
/** The trainer with so many tenths since its 100-hour inspection. */
const sinceHundred = (tenths: number, part141 = false): AircraftFacts =>
  trainer({ ttisTenths: known(44600 + tenths), part141: known(part141) });

const person = (overrides: Partial<SignerFacts>): SignerFacts => ({
  id: 'person-1',
  name: 'T. Quillby',
  pilot: null,
  mechanic: null,
  inspectionAuthorization: null,
  repairStation: null,
  namedForPreventiveMaintenance: false,
  leftOn: null,
  ...overrides,
});
const SINGLE = 'airplane-single-engine-land';
const ownerPilot = person({
  pilot: { number: 'P-1', grade: 'private', ratings: [SINGLE] },
  namedForPreventiveMaintenance: true,
});
const studentPilot = person({ pilot: { number: 'S-1', grade: 'student', ratings: [] } });
const mechanicLapsedInspector = person({
  mechanic: {
    number: 'M-1',
    ratings: ['airframe', 'powerplant'],
    recentExperienceThrough: known('2027-01-31'),
  },
  inspectionAuthorization: {
    number: 'M-1',
    expiresOn: '2025-03-31',
    firstYearActivityMet: known(true),
  },
});
const bulb: WorkToSign = {
  part: 'airframe',
  kind: 'preventive',
  preventiveItem: 17,
  swapOnly: false,
  aircraftCategory: 'airplane',
  performedBySigner: true,
};
const annualInspection: WorkToSign = { ...bulb, kind: 'annual', preventiveItem: null };

const work = (title: string, state: WorkFacts['state'], checkFlight: WorkFacts['checkFlight']) =>
  trainer({ work: [{ id: 'work-1', title, state, checkFlight, testsOwed: [] }] });
const rerigged = (state: 'owed' | 'flown' | 'not-needed') =>
  work('Aileron re-rigged', 'signed', known(state));
const checkFlight = {
  purpose: 'check-flight' as const,
  crewOnly: known(true),
  pilotInCommandGrade: known('private' as const),
};
const permit = {
  purpose: 'to-inspection' as const,
  crewOnly: known(true),
  specialFlightPermit: permitOf({
    limits: ['Day VFR, direct to the base, required crew only.'],
    // The fixture's 100-hour is of October 2026, after this flight: the permit names it too.
    covers: ['annual', 'hundred-hour', 'directive'],
    goodFrom: '2026-06-01',
    goodThrough: '2026-12-31',
  }),
};

/** A beacon that neither the type's day list nor its equipment list asks for, deactivated and placarded. */
const beaconOff = withBroken(
  withRow(trainer(), 'anticollision-lights', {
    vfrDayTypeDesign: known(false),
    requiredByList: known(none),
  }),
  'anticollision-lights',
  deferred(),
);
const eltRemoved = (firstRemovedOn: string) =>
  withBroken(
    trainer(),
    'elt',
    deferred({
      method: 'removed',
      maintenanceRecordSigned: true,
      eltRemoval: { firstRemovedOn, recordComplete: true },
    }),
  );
const transponderOff = withBroken(trainer(), 'transponder', deferred());
const inClassC = { transponderAirspace: known(true) };
const gyro = (deferral: Partial<DeferralFacts>) =>
  withBroken(
    trainer(),
    'attitude-indicator',
    deferred({ deactivationIsMaintenance: true, maintenanceRecordSigned: true, ...deferral }),
  );
const bySingleStudent = known({
  by: {
    name: 'S. Student',
    pilotGrade: 'student' as const,
    pilotRatedForAircraft: false,
    mechanicRatings: [],
    repairStation: false,
  },
  on: '2026-11-24',
});
const directive = trainer({
  requirements: [
    ...trainerRequirements(),
    // 50.3 h ago at 4512.3 h.
    requirementRow('directive', 'Directive, every 50 h', '2026-10-21', 44620, { intervalTenths: 500 }),
  ],
});
const radio = (disposition: 'inspected' | null) =>
  withBroken(
    trainer(),
    'two-way-radio',
    deferred({
      inspectionsSince: [{ name: '100-hour inspection', on: '2026-11-25', disposition }],
    }),
  );

const ROWS: readonly Row[] = [
  {
    no: 1,
    title: 'panel clock dead, deferred; day VFR dual',
    given: fly(withBroken(trainer(), 'clock', deferred()), dual),
    outcome: 'go-with-limits',
    cite: '14cfr91.213(d)',
    effect: 'limits',
  },
  {
    no: 1,
    title: 'the same clock, IFR',
    given: fly(withBroken(trainer(), 'clock', deferred()), ifr),
    outcome: 'no-go',
    cite: '14cfr91.205(d)(6)',
    effect: 'bars',
  },
  {
    no: 1,
    title: 'the same clock, night VFR',
    given: fly(withBroken(trainer(), 'clock', deferred()), NIGHT),
    outcome: 'go-with-limits',
    cite: '14cfr91.213(d)',
    effect: 'limits',
  },
  {
    no: 2,
    title: 'left fuel gauge dead, deferred, tank dipped full',
    given: fly(withBroken(trainer(), 'fuel-quantity-gauge', deferred())),
    outcome: 'no-go',
    cite: '14cfr91.205(b)(9)',
    effect: 'bars',
  },
  {
    no: 3,
    title: 'landing light out; night dual by the school (for hire, conservative)',
    given: fly(withBroken(trainer(), 'landing-light', deferred()), { ...NIGHT, ...dual }),
    outcome: 'no-go',
    cite: '14cfr91.205(c)(4)',
    effect: 'bars',
  },
  {
    no: 3,
    title: 'landing light out; night solo rental, not on the list',
    given: fly(withBroken(trainer(), 'landing-light', deferred()), NIGHT),
    outcome: 'go-with-limits',
    cite: '14cfr91.213(d)',
    effect: 'limits',
  },
  {
    no: 4,
    title: 'one position light out; lesson 14:00 to 15:30 on 26 Jan 2027, sunset about 17:10',
    given: fly(withBroken(trainer(), 'position-lights', deferred()), {
      ...dual,
      departAt: '2027-01-26T20:00:00Z',
      arriveAt: '2027-01-26T21:30:00Z',
    }),
    outcome: 'go-with-limits',
    cite: '14cfr91.209(a)(1)',
    effect: 'limits',
  },
  {
    no: 4,
    title: 'the same lesson an hour and three quarters later, past sunset but before night',
    given: fly(withBroken(trainer(), 'position-lights', deferred()), {
      ...dual,
      departAt: '2027-01-26T21:45:00Z',
      arriveAt: '2027-01-26T23:20:00Z',
    }),
    outcome: 'no-go',
    cite: '14cfr91.209(a)(1)',
    effect: 'bars',
  },
  {
    no: 4,
    title: 'the same light, at night',
    given: fly(withBroken(trainer(), 'position-lights', deferred()), NIGHT),
    outcome: 'no-go',
    cite: '14cfr91.205(c)(2)',
    effect: 'bars',
  },
  {
    no: 5,
    title: 'the same bulb replaced by the owner-pilot: may approve it',
    given: sign(mayApproveReturnToService(ownerPilot, bulb, '2026-11-25')),
    outcome: 'allowed',
    cite: '14cfr43appA(c)(17)',
    effect: 'supports',
  },
  {
    no: 5,
    title: 'that approval stands on 43.7(f)',
    given: sign(mayApproveReturnToService(ownerPilot, bulb, '2026-11-25')),
    outcome: 'allowed',
    cite: '14cfr43.7(f)',
    effect: 'supports',
  },
  {
    no: 5,
    title: 'entry made and signed: night',
    given: fly(work('Position light bulb replaced', 'signed', known('not-needed')), NIGHT),
    outcome: 'go',
    cite: '14cfr91.205(c)',
    effect: 'supports',
  },
  {
    no: 6,
    title: 'anticollision light fails on the way out; on to the place of repair',
    given: fly(beaconOff, { from: AWAY, to: BASE, continuingToRepair: true }),
    outcome: 'go-with-limits',
    cite: '14cfr91.205(b)(11)',
    effect: 'limits',
  },
  {
    no: 6,
    title: 'a new lesson from there before repair',
    given: fly(beaconOff, { ...dual, from: AWAY, to: AWAY }),
    outcome: 'no-go',
    cite: '14cfr91.205(b)(11)',
    effect: 'bars',
  },
  {
    no: 7,
    title: 'the same airplane, found at the home base with its shop, day VFR (strict)',
    given: fly(beaconOff),
    outcome: 'no-go',
    cite: '14cfr91.205(b)(11)',
    effect: 'bars',
  },
  {
    no: 7,
    title: 'nor by calling it a continuation: the shop is here',
    given: fly(beaconOff, { continuingToRepair: true }),
    outcome: 'no-go',
    cite: '14cfr91.205(b)(11)',
    effect: 'bars',
  },
  {
    no: 8,
    title: 'type of 1976, outside (b)(11), beacon deferred, day VFR',
    given: fly(withBroken(olderTrainer(), 'anticollision-lights', deferred())),
    outcome: 'go-with-limits',
    cite: '14cfr91.213(d)',
    effect: 'limits',
  },
  {
    no: 8,
    title: 'the same, night',
    given: fly(withBroken(olderTrainer(), 'anticollision-lights', deferred()), NIGHT),
    outcome: 'no-go',
    cite: '14cfr91.205(c)(3)',
    effect: 'bars',
  },
  {
    no: 8,
    title: 'the same by day while the beacon is neither deactivated nor placarded',
    given: fly(withBroken(olderTrainer(), 'anticollision-lights')),
    outcome: 'no-go',
    cite: '14cfr91.209(b)',
    effect: 'bars',
  },
  {
    no: 9,
    title: 'transmitter removed 40 days ago, record and placard complete',
    given: fly(eltRemoved('2026-10-16')),
    outcome: 'go-with-limits',
    cite: '14cfr91.207(f)(10)',
    effect: 'limits',
  },
  {
    no: 9,
    title: 'on day 90',
    given: fly(eltRemoved('2026-08-27')),
    outcome: 'go-with-limits',
    cite: '14cfr91.207(f)(10)',
    effect: 'limits',
  },
  {
    no: 9,
    title: 'on day 91',
    given: fly(eltRemoved('2026-08-26')),
    outcome: 'no-go',
    cite: '14cfr91.207(a)(2)',
    effect: 'bars',
  },
  {
    no: 9,
    title: 'on day 91, training within 50 nautical miles',
    given: fly(eltRemoved('2026-08-26'), nearby),
    outcome: 'go-with-limits',
    cite: '14cfr91.207(f)(3)',
    effect: 'limits',
  },
  {
    no: 10,
    title: 'transmitter inspected 3 Apr 2025; cross-country on 1 May 2026',
    given: fly(change('elt-inspection', done('2025-04-03', 41000)), { ...day('2026-05-01'), to: AWAY }),
    outcome: 'no-go',
    cite: '14cfr91.207(d)',
    effect: 'bars',
  },
  {
    no: 10,
    title: 'the same on 30 Apr 2026',
    given: fly(change('elt-inspection', done('2025-04-03', 41000)), { ...day('2026-04-30'), to: AWAY }),
    outcome: 'go',
    cite: '14cfr91.207(d)',
    effect: 'supports',
  },
  {
    no: 10,
    title: 'training within 50 nautical miles on 1 May 2026',
    given: fly(
      change('hundred-hour', done('2026-04-20', 44600), change('elt-inspection', done('2025-04-03', 41000))),
      { ...day('2026-05-01'), ...nearby },
    ),
    outcome: 'go-with-limits',
    cite: '14cfr91.207(f)(3)',
    effect: 'limits',
  },
  {
    no: 11,
    title: 'transponder deferred, base under class C, granted by air traffic control',
    given: fly(transponderOff, { ...inClassC, atcTransponder: 'granted' }),
    outcome: 'go-with-limits',
    cite: '14cfr91.215(d)(2)',
    effect: 'limits',
  },
  {
    no: 11,
    title: 'the same, refused',
    given: fly(transponderOff, { ...inClassC, atcTransponder: 'refused' }),
    outcome: 'no-go',
    cite: '14cfr91.215(b)',
    effect: 'bars',
  },
  {
    no: 11,
    title: 'the same, not asked',
    given: fly(transponderOff, inClassC),
    outcome: 'no-go',
    cite: '14cfr91.215(b)',
    effect: 'bars',
  },
  {
    no: 12,
    title: 'ADS-B Out deferred, flight outside the airspace that needs it',
    given: fly(withBroken(trainer(), 'adsb-out', deferred())),
    outcome: 'go-with-limits',
    cite: '14cfr91.225',
    effect: 'limits',
  },
  {
    no: 12,
    title: 'the same into that airspace',
    given: fly(withBroken(trainer(), 'adsb-out', deferred()), { adsbAirspace: known(true) }),
    outcome: 'no-go',
    cite: '14cfr91.225',
    effect: 'bars',
  },
  {
    no: 13,
    title: 'transponder test of 10 Nov 2024; VFR in the veil on 1 Dec 2026',
    given: fly(change('transponder', done('2024-11-10', 41000)), { ...day('2026-12-01'), ...inClassC }),
    outcome: 'no-go',
    cite: '14cfr91.413(a)',
    effect: 'bars',
  },
  {
    no: 13,
    title: 'the same on 30 Nov 2026',
    given: fly(change('transponder', done('2024-11-10', 41000)), { ...day('2026-11-30'), ...inClassC }),
    outcome: 'go',
    cite: '14cfr91.413(a)',
    effect: 'supports',
  },
  {
    no: 13,
    title: 'outside that airspace on 1 Dec 2026, off and placarded',
    given: fly(change('transponder', done('2024-11-10', 41000)), day('2026-12-01')),
    outcome: 'go-with-limits',
    cite: '14cfr91.413(a)',
    effect: 'limits',
  },
  {
    no: 14,
    title: 'static test expired; VFR lesson',
    given: fly(change('static-and-altimeter', done('2024-05-12', 41000)), dual),
    outcome: 'go',
    cite: '14cfr91.409(b)',
    effect: 'supports',
  },
  {
    no: 14,
    title: 'static test expired; IFR in controlled airspace',
    given: fly(change('static-and-altimeter', done('2024-05-12', 41000)), ifr),
    outcome: 'no-go',
    cite: '14cfr91.411(a)(1)',
    effect: 'bars',
  },
  {
    no: 15,
    title: 'VOR check of 1 Mar; IFR by VOR on 1 Apr (31 days)',
    given: fly(change('vor-check', done('2026-03-01', 43800)), {
      ...day('2026-04-01'),
      ...ifr,
      usesVor: known(true),
    }),
    outcome: 'no-go',
    cite: '14cfr91.171(a)(2)',
    effect: 'bars',
  },
  {
    no: 15,
    title: 'the same on 31 Mar (30 days)',
    given: fly(change('vor-check', done('2026-03-01', 43800)), {
      ...day('2026-03-31'),
      ...ifr,
      usesVor: known(true),
    }),
    outcome: 'go',
    cite: '14cfr91.171(a)(2)',
    effect: 'supports',
  },
  {
    no: 15,
    title: 'by GPS on 1 Apr',
    given: fly(change('vor-check', done('2026-03-01', 43800)), { ...day('2026-04-01'), ...ifr }),
    outcome: 'go',
    cite: '14cfr91.411(a)(1)',
    effect: 'supports',
  },
  {
    no: 16,
    title: '99.6 h since the 100-hour; 1.2 h local dual',
    given: fly(sinceHundred(996), { ...dual, plannedTenths: 12 }),
    outcome: 'no-go',
    cite: '14cfr91.409(b)',
    effect: 'bars',
  },
  {
    no: 16,
    title: '0.4 h of it would fit exactly',
    given: fly(sinceHundred(996), { ...dual, plannedTenths: 4 }),
    outcome: 'go',
    cite: '14cfr91.409(b)',
    effect: 'supports',
  },
  {
    no: 17,
    title: 'flying home to the shop, reaching 104.0 h',
    given: fly(sinceHundred(1030), { purpose: 'to-inspection', plannedTenths: 10 }),
    outcome: 'go-with-limits',
    cite: '14cfr91.409(b)',
    effect: 'limits',
  },
  {
    no: 17,
    title: 'inspected at 104.0 h: lessons go',
    given: fly(change('hundred-hour', done('2026-11-25', 45640, true, 45600), sinceHundred(1040)), dual),
    outcome: 'go',
    cite: '14cfr91.409(b)',
    effect: 'supports',
  },
  {
    no: 18,
    title: '101 h; solo of a part 141 student',
    given: fly(sinceHundred(1010, true), { purpose: 'student-solo' }),
    outcome: 'no-go',
    cite: '14cfr141.39(a)(3)',
    effect: 'bars',
  },
  {
    no: 18,
    title: '101 h; solo of a part 61 student: goes, the excess counts',
    given: fly(sinceHundred(1010), { purpose: 'student-solo' }),
    outcome: 'go',
    cite: '14cfr91.409(b)',
    effect: 'notes',
  },
  {
    no: 18,
    title: '101 h; renter under part 61: goes, the excess counts',
    given: fly(sinceHundred(1010)),
    outcome: 'go',
    cite: '14cfr91.409(b)',
    effect: 'notes',
  },
  {
    no: 19,
    title: 'annual signed 14 Jun 2025; flight on 30 Jun 2026',
    given: fly(change('annual', done('2025-06-14', 42000)), day('2026-06-30')),
    outcome: 'go',
    cite: '14cfr91.409(a)',
    effect: 'supports',
  },
  {
    no: 19,
    title: 'the same on 1 Jul 2026',
    given: fly(change('annual', done('2025-06-14', 42000)), day('2026-07-01')),
    outcome: 'no-go',
    cite: '14cfr91.409(a)',
    effect: 'bars',
  },
  {
    no: 19,
    title: 'on 1 Jul 2026 under a special flight permit',
    given: fly(change('annual', done('2025-06-14', 42000)), { ...day('2026-07-01'), ...permit }),
    outcome: 'go-with-limits',
    cite: '14cfr91.409(c)',
    effect: 'limits',
  },
  {
    no: 20,
    title: 'annual to be approved on 10 Apr 2025 by a mechanic whose authorization lapsed 31 Mar 2025',
    given: sign(mayApproveReturnToService(mechanicLapsedInspector, annualInspection, '2025-04-10')),
    outcome: 'refused',
    cite: '14cfr65.92(a)',
    effect: 'bars',
  },
  {
    no: 20,
    title: 'the mechanic certificate alone does not reach an annual',
    given: sign(
      mayApproveReturnToService(
        { ...mechanicLapsedInspector, inspectionAuthorization: null },
        annualInspection,
        '2025-04-10',
      ),
    ),
    outcome: 'refused',
    cite: '14cfr65.95(a)(2)',
    effect: 'bars',
  },
  {
    no: 20,
    title: 'a flight on such an annual',
    given: fly(change('annual', done('2026-04-10', 44000, false))),
    outcome: 'no-go',
    cite: '14cfr91.409(a)',
    effect: 'bars',
  },
  {
    no: 20,
    title: 'entered as a 100-hour, the same person may approve it',
    given: sign(
      mayApproveHundredHour(
        mechanicLapsedInspector,
        { aircraftCategory: 'airplane', performedBySigner: true },
        '2025-04-10',
      ),
    ),
    outcome: 'allowed',
    cite: '14cfr65.85(a)',
    effect: 'supports',
  },
  {
    no: 21,
    title: 'alternator replaced, no logbook entry yet',
    given: fly(work('Alternator replaced', 'started', known('not-needed'))),
    outcome: 'no-go',
    cite: '14cfr91.407(a)(2)',
    effect: 'bars',
  },
  {
    no: 21,
    title: 'entry made, not signed',
    given: fly(work('Alternator replaced', 'entered', known('not-needed'))),
    outcome: 'no-go',
    cite: '14cfr91.407(a)(1)',
    effect: 'bars',
  },
  {
    no: 21,
    title: 'entry made and signed',
    given: fly(work('Alternator replaced', 'signed', known('not-needed'))),
    outcome: 'go',
    cite: '14cfr91.407(c)',
    effect: 'supports',
  },
  {
    no: 22,
    title: 'aileron re-rigged, entry made, no test flight; with a student',
    given: fly(rerigged('owed'), dual),
    outcome: 'no-go',
    cite: '14cfr91.407(b)',
    effect: 'bars',
  },
  {
    no: 22,
    title: 'the check flight: crew only, private pilot',
    given: fly(rerigged('owed'), checkFlight),
    outcome: 'go-with-limits',
    cite: '14cfr91.407(b)',
    effect: 'limits',
  },
  {
    no: 22,
    title: 'flown, checked and logged; with a student',
    given: fly(rerigged('flown'), dual),
    outcome: 'go',
    cite: '14cfr91.407(b)',
    effect: 'supports',
  },
  {
    no: 22,
    title: 'or conclusive proof on the ground',
    given: fly(rerigged('not-needed'), dual),
    outcome: 'go',
    cite: '14cfr91.407(c)',
    effect: 'supports',
  },
  {
    no: 23,
    title: 'recurring directive every 50 h, now 50.3 h',
    given: fly(directive),
    outcome: 'no-go',
    cite: '14cfr39.7',
    effect: 'bars',
  },
  {
    no: 23,
    title: 'nor on the way to the work: no overfly',
    given: fly(directive, { purpose: 'to-inspection' }),
    outcome: 'no-go',
    cite: '14cfr39.7',
    effect: 'bars',
  },
  {
    no: 23,
    title: 'under a special flight permit, if the directive allows it',
    given: fly(directive, permit),
    outcome: 'go-with-limits',
    cite: '14cfr39.23',
    effect: 'limits',
  },
  {
    no: 24,
    title: 'vacuum attitude indicator deferred, determined by a student pilot; day VFR',
    given: fly(gyro({ determination: bySingleStudent })),
    outcome: 'no-go',
    cite: '14cfr91.213(d)(4)',
    effect: 'bars',
  },
  {
    no: 24,
    title: 'a student pilot may not make that determination',
    given: sign(mayDetermineNoHazard(studentPilot, SINGLE, '2026-11-24')),
    outcome: 'refused',
    cite: '14cfr91.213(d)(4)',
    effect: 'bars',
  },
  {
    no: 24,
    title: 'disconnected without the record of that maintenance',
    given: fly(gyro({ maintenanceRecordSigned: false })),
    outcome: 'no-go',
    cite: '14cfr91.213(d)(3)(ii)',
    effect: 'bars',
  },
  {
    no: 24,
    title: 'determined by a rated pilot, disconnected and recorded; day VFR',
    given: fly(gyro({})),
    outcome: 'go-with-limits',
    cite: '14cfr91.213(d)',
    effect: 'limits',
  },
  {
    no: 24,
    title: 'the same, IFR',
    given: fly(gyro({}), ifr),
    outcome: 'no-go',
    cite: '14cfr91.205(d)(8)',
    effect: 'bars',
  },
  {
    no: 25,
    title: 'deferred radio; 100-hour done since, no word on the radio',
    given: fly(radio(null)),
    outcome: 'no-go',
    cite: '14cfr91.405(c)',
    effect: 'bars',
  },
  {
    no: 25,
    title: 'inspected at that 100-hour and recorded',
    given: fly(radio('inspected')),
    outcome: 'go-with-limits',
    cite: 'counsel-letter-2018',
    effect: 'supports',
  },
];

describe('the twenty-five worked decisions', () => {
  it.each(ROWS)('$no: $title: $outcome ($cite)', ({ given, outcome, cite, effect }) => {
    const found = given();
    expect(found.outcome).toBe(outcome);
    expect(found.lines).toContainEqual(expect.objectContaining({ cite, effect }));
  });

  it('has all twenty-five', () => {
    const numbers = [...new Set(ROWS.map((row) => row.no))];
    expect(numbers).toEqual(Array.from({ length: 25 }, (_, index) => index + 1));
  });

  // No row may be no go only because a fact of the fixture is missing.
  it.each(ROWS.filter((row) => row.outcome === 'no-go' || row.outcome === 'refused'))(
    '$no: $title: names no missing fact',
    ({ given }) => {
      expect(given().lines.filter((line) => line.missing !== undefined)).toEqual([]);
    },
  );

  it('17: next due at 200.0 h of the old count, 96.0 h after the inspection at 104.0 h', () => {
    const aircraft = change('hundred-hour', done('2026-11-25', 45640, true, 45600), sinceHundred(1040));
    const row = aircraft.requirements.find(({ kind }) => kind === 'hundred-hour');
    expect(row && dueOf(row, aircraft.ttisTenths, aircraft.requirements)).toMatchObject({
      tenths: 46600,
      remainingTenths: 960,
    });
  });

  it('4: the limit names the sunset', () => {
    const row = ROWS.find(({ no }) => no === 4);
    const limit = row?.given().lines.find((line) => line.cite === '14cfr91.209(a)(1)');
    expect(limit?.because).toMatch(/^On the ground by sunset, 17:(09|10|11) at 0WC\.$/);
  });
});
