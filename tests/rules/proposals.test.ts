import { describe, expect, it } from 'vitest';
import { Temporal } from 'temporal-polyfill';
import type { AircraftFacts } from '../../lib/rules/aircraft';
import { answerForFlight } from '../../lib/rules/answer';
import { known, unknown } from '../../lib/rules/facts';
import type { ProposedFlight } from '../../lib/rules/operations';
import {
  proposalsFor,
  type OtherAircraft,
  type PilotCommitment,
  type Proposal,
} from '../../lib/rules/proposals';
import type { BookedFlight } from '../../lib/rules/spent-hours';
import { sunTimes } from '../../lib/rules/sun';
import {
  AWAY,
  BASE,
  deferralOf,
  discrepancyOf,
  flightOf,
  requirementRow,
  trainer,
  trainerPapers,
  trainerRequirements,
  trainerType,
} from '../fixtures/aircraft';

// What to propose is common practice, no source. What each needs is the paragraph named beside it.
const MORNING = '2026-11-25T14:00:00Z';
const SUN = sunTimes('2026-11-25', BASE);
const minute = (at: string | null | undefined, minutes: number): string =>
  Temporal.Instant.from(at ?? '')
    .round({ smallestUnit: 'minute', roundingMode: 'floor' })
    .add({ minutes })
    .toString();

interface Given {
  readonly others?: readonly OtherAircraft[];
  readonly booked?: readonly BookedFlight[];
  readonly now?: string;
  readonly pilotBusy?: readonly PilotCommitment[];
}
const propose = (aircraft: AircraftFacts, flight: ProposedFlight, given: Given = {}): readonly Proposal[] =>
  proposalsFor(
    aircraft,
    flight,
    given.others ?? [],
    given.booked ?? [],
    given.now ?? MORNING,
    given.pilotBusy,
  );
const kinds = (proposals: readonly Proposal[]) => proposals.map(({ kind }) => kind);
function only<K extends Proposal['kind']>(proposals: readonly Proposal[], kind: K) {
  const found = proposals.find((one): one is Proposal & { readonly kind: K } => one.kind === kind);
  if (found === undefined) throw new Error(`no ${kind} among ${kinds(proposals).join()}`);
  return found;
}
const outcome = (aircraft: AircraftFacts, flight: ProposedFlight) =>
  answerForFlight(aircraft, flight).answer.outcome;
const labels = (proposal: { readonly items: readonly { readonly label: string }[] }) =>
  proposal.items.map(({ label }) => label);

/** 91.205(c)(4): barred at night for hire. */
const landingLight = discrepancyOf({
  equipmentId: 'landing-light',
  title: 'Landing light out',
  deferral: deferralOf(),
});
const lightOut = trainer({ discrepancies: [landingLight] });
/** Local, for hire, 15:00 to 17:30 at the base: night begins soon after 17:00. */
const evening = flightOf({
  purpose: 'instruction-for-hire',
  departAt: '2026-11-25T21:00:00Z',
  arriveAt: '2026-11-25T23:30:00Z',
  plannedTenths: 25,
});
const booking = (departAt: string, arriveAt: string, plannedTenths = 10): BookedFlight => ({
  id: departAt,
  label: 'Booked',
  departAt,
  arriveAt,
  plannedTenths,
  state: 'released',
});
const other = (overrides: Partial<AircraftFacts> = {}) =>
  trainer({ id: 'aircraft-2', registration: 'N0418W', ...overrides });

describe('nothing is proposed', () => {
  it('for a flight that may go', () => expect(propose(trainer(), flightOf())).toEqual([]));
  it('for one that cannot be judged', () =>
    expect(propose(lightOut, { ...evening, arriveAt: evening.departAt })).toEqual([]));
  it.each([
    ['time in service', trainer({ ttisTenths: unknown('the total time in service') })],
    ['the directives', trainer({ directives: unknown('which directives apply') })],
    ['the last annual', trainer({ requirements: trainerRequirements().map(unknownAnnual) })],
    ['the registration', trainer({ papers: trainerPapers().map(unknownAboard) })],
  ])('where %s is not known: nothing is made up', (_name, aircraft) => {
    expect(outcome(aircraft, flightOf())).toBe('no-go');
    expect(propose(aircraft, flightOf())).toEqual([]);
  });
});

function unknownAnnual(row: AircraftFacts['requirements'][number]) {
  return row.kind === 'annual' ? { ...row, lastDone: unknown('when the last annual was done') } : row;
}
function unknownAboard(paper: AircraftFacts['papers'][number]) {
  return paper.kind === 'registration' ? { ...paper, aboard: unknown('whether it is aboard') } : paper;
}

describe('an earlier return', () => {
  it('is back in the minute in which night begins, which is the latest', () => {
    const found = only(propose(lightOut, evening), 'earlier-return');
    const at = minute(SUN.civilDusk, 0);
    expect(found.arriveAt).toBe(at);
    expect(found.outcome).toBe('go-with-limits');
    const back = (arriveAt: string) => outcome(lightOut, { ...evening, arriveAt, plannedTenths: 1 });
    expect(back(minute(at, -1))).toBe('go-with-limits');
    expect(back(at)).toBe('go-with-limits');
    expect(back(minute(at, 1))).toBe('no-go');
    expect(found.because).toContain('at 0WC');
  });

  it('plans the hours in proportion, rounded up, and never more than before', () => {
    const found = only(propose(lightOut, { ...evening, plannedTenths: 15 }), 'earlier-return');
    const minutes = (Date.parse(found.arriveAt) - Date.parse(evening.departAt)) / 60_000;
    expect(found.plannedTenths).toBe(Math.ceil((15 * minutes) / 150));
  });

  // 91.409(b): hours left of the 100-hour inspection, in tenths, before a flight of 2.5 h; half of it is the least worth it.
  it.each([
    ['less than half is left', 12, null],
    ['half', 13, 13],
    ['a tenth more', 14, 14],
    ['all but a tenth', 24, 24],
  ])('fits the hours left: %s', (_name, left, plannedTenths) => {
    const aircraft = hundredHourIn(left);
    const midday = { ...evening, departAt: '2026-11-25T16:00:00Z', arriveAt: '2026-11-25T18:30:00Z' };
    const proposals = propose(aircraft, midday);
    if (plannedTenths === null) expect(kinds(proposals)).not.toContain('earlier-return');
    else expect(only(proposals, 'earlier-return').plannedTenths).toBe(plannedTenths);
  });

  it.each([
    ['departs in the minute of dusk', 0, 0],
    ['departs a minute before', -1, -1],
    ['departs half an hour before', -30, -30],
  ])('is back for what else the pilot flies: one that %s', (_name, departs, back) => {
    const pilotBusy = [{ departAt: minute(SUN.civilDusk, departs), arriveAt: '2026-11-26T01:00:00Z' }];
    const found = only(propose(lightOut, evening, { pilotBusy }), 'earlier-return');
    expect(found.arriveAt).toBe(minute(SUN.civilDusk, back));
  });

  it('is none when the pilot is out with another aircraft as it departs', () => {
    const pilotBusy = [{ departAt: '2026-11-25T20:00:00Z', arriveAt: '2026-11-25T21:01:00Z' }];
    expect(kinds(propose(lightOut, evening, { pilotBusy }))).not.toContain('earlier-return');
  });

  it('is none for a flight to another place', () => {
    expect(kinds(propose(lightOut, { ...evening, to: AWAY }))).not.toContain('earlier-return');
  });

  it('is none where light and hours are not what bars', () => {
    const aircraft = trainer({ discrepancies: [discrepancyOf({ severity: known('grounding') })] });
    expect(kinds(propose(aircraft, evening))).not.toContain('earlier-return');
  });
});

/** The 100-hour is due `left` tenths from now. */
function hundredHourIn(left: number): AircraftFacts {
  return trainer({
    requirements: trainerRequirements().map((row) =>
      row.kind === 'hundred-hour'
        ? requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', 45123 + left - 1000)
        : row,
    ),
  });
}

describe('leaving earlier', () => {
  it('ends in the minute in which night begins, as long as planned', () => {
    const found = only(propose(lightOut, { ...evening, to: AWAY }), 'leave-earlier');
    const length = Date.parse(evening.arriveAt) - Date.parse(evening.departAt);
    expect(Date.parse(found.arriveAt) - Date.parse(found.departAt)).toBe(length);
    const later = {
      ...evening,
      to: AWAY,
      departAt: minute(found.departAt, 1),
      arriveAt: minute(found.arriveAt, 1),
    };
    expect(outcome(lightOut, later)).toBe('no-go');
  });

  // The departure would have to be at dusk less 2.5 hours.
  it.each([
    ['a minute before it', -1, true],
    ['at it', 0, true],
    ['a minute after it', 1, false],
  ])('not into the past: now is %s', (_name, minutes, proposed) => {
    const now = minute(SUN.civilDusk, -150 + minutes);
    const proposals = propose(lightOut, evening, { now });
    expect(kinds(proposals).includes('leave-earlier')).toBe(proposed);
  });

  it.each([
    ['ends as it would depart', 0, true],
    ['ends a minute later', 1, false],
  ])('not over another booking, one that %s', (_name, minutes, proposed) => {
    const ends = minute(SUN.civilDusk, -150 + minutes);
    const booked = [booking('2026-11-25T17:00:00Z', ends)];
    // Only dusk: by the evening before, the light was on the other side of now.
    const found = propose(lightOut, evening, { booked, now: minute(SUN.civilDusk, -160) });
    const atDusk = found.some(
      (one) => one.kind === 'leave-earlier' && one.arriveAt === minute(SUN.civilDusk, 0),
    );
    expect(atDusk).toBe(proposed);
  });

  it.each([
    ['ends as it would depart', 0, true],
    ['ends a minute later', 1, false],
  ])('not over what else the pilot flies, in any aircraft: one that %s', (_name, minutes, proposed) => {
    const pilotBusy = [{ departAt: '2026-11-25T17:00:00Z', arriveAt: minute(SUN.civilDusk, -150 + minutes) }];
    const found = propose(lightOut, evening, { pilotBusy, now: minute(SUN.civilDusk, -160) });
    expect(
      found.some((one) => one.kind === 'leave-earlier' && one.arriveAt === minute(SUN.civilDusk, 0)),
    ).toBe(proposed);
  });

  // 47.40(a): good through the 25th; midnight at the base is 06:00 UTC. Landing at midnight is the next day.
  it('lands a minute before midnight when a paper ends with the date', () => {
    const aircraft = trainer({
      papers: trainerPapers().map((paper) =>
        paper.kind === 'registration' ? { ...paper, validThrough: known('2026-11-25') } : paper,
      ),
    });
    const late = flightOf({ departAt: '2026-11-26T05:00:00Z', arriveAt: '2026-11-26T07:00:00Z' });
    const found = only(propose(aircraft, late), 'leave-earlier');
    expect(found.arriveAt).toBe('2026-11-26T05:59:00Z');
    expect(outcome(aircraft, { ...late, arriveAt: '2026-11-26T05:59:59Z' })).toBe('go');
    expect(outcome(aircraft, { ...late, arriveAt: '2026-11-26T06:00:00Z' })).toBe('no-go');
  });
});

describe('another aircraft', () => {
  const ask = (others: readonly OtherAircraft[]) => propose(lightOut, evening, { others });

  it('of the same type that can, go before go with limits', () => {
    const worn = discrepancyOf({ kind: 'cosmetic', equipmentId: null, severity: known('limiting') });
    const found = ask([
      { facts: other({ registration: 'N0101W', id: 'a', discrepancies: [worn] }) },
      { facts: other({ registration: 'N0999W', id: 'b' }) },
    ]).filter(({ kind }) => kind === 'other-aircraft');
    expect(found.map((one) => ('registration' in one ? [one.registration, one.outcome] : []))).toEqual([
      ['N0999W', 'go'],
      ['N0101W', 'go-with-limits'],
    ]);
  });

  it('of the departure base before one that has to be fetched, whatever its answer', () => {
    const found = ask([
      { facts: other({ registration: 'N0101W', id: 'a' }), atBase: false },
      {
        facts: other({
          registration: 'N0999W',
          id: 'b',
          discrepancies: [{ ...landingLight, equipmentId: 'taxi-light' }],
        }),
        atBase: true,
      },
      { facts: other({ registration: 'N0555W', id: 'c' }) },
    ]).filter(({ kind }) => kind === 'other-aircraft');
    expect(found.map((one) => ('registration' in one ? [one.registration, one.outcome] : []))).toEqual([
      ['N0555W', 'go'],
      ['N0999W', 'go-with-limits'],
      ['N0101W', 'go'],
    ]);
  });

  it.each([
    ['of another type', [{ facts: other({ type: trainerType({ name: 'Another type' }) }) }]],
    ['that cannot make it either', [{ facts: other({ discrepancies: [landingLight] }) }]],
    ['itself', [{ facts: trainer() }]],
  ])('not one %s', (_name, others) => expect(kinds(ask(others))).not.toContain('other-aircraft'));

  it.each([
    ['ends at the departure', '2026-11-25T20:00:00Z', '2026-11-25T21:00:00.000Z', true],
    ['ends a minute after it', '2026-11-25T20:00:00Z', '2026-11-25T21:01:00.000Z', false],
    ['departs a minute before the return', '2026-11-25T23:29:00Z', '2026-11-26T01:00:00Z', false],
    ['departs at the return', '2026-11-25T23:30:00Z', '2026-11-26T01:00:00Z', true],
  ])('not one that is booked: a flight that %s', (_name, departAt, arriveAt, proposed) => {
    const found = ask([{ facts: other(), booked: [booking(departAt, arriveAt)] }]);
    expect(kinds(found).includes('other-aircraft')).toBe(proposed);
  });

  // 91.409(b): 4.0 h left, 1.5 h released before it; a flight of 2.5 h fits exactly.
  it.each([
    ['a tenth to spare', 24, true],
    ['exactly', 25, true],
    ['a tenth over', 26, false],
  ])('with the hours already released on it: %s', (_name, plannedTenths, proposed) => {
    const facts = { ...hundredHourIn(40), id: 'aircraft-2', registration: 'N0418W' };
    const booked = [booking('2026-11-25T15:00:00Z', '2026-11-25T17:00:00Z', 15)];
    const found = propose(lightOut, { ...evening, plannedTenths }, { others: [{ facts, booked }] });
    expect(kinds(found).includes('other-aircraft')).toBe(proposed);
  });
});

describe('what is done at the aircraft', () => {
  // 91.213(d)(3): a deferral counts once it is placarded.
  const owed = (id: string, equipmentId: string) =>
    discrepancyOf({
      id,
      number: `W-${id}`,
      title: equipmentId,
      equipmentId,
      deferral: deferralOf({ id: `deferral-${id}`, placardPlaced: false }),
    });

  it('the placard still owed', () => {
    const found = only(
      propose(trainer({ discrepancies: [owed('1', 'taxi-light')] }), flightOf()),
      'place-placard',
    );
    expect(labels(found)).toEqual(['W-1 taxi-light']);
    expect(found.outcome).toBe('go-with-limits');
  });

  it('both of two, since one alone is not enough', () => {
    const aircraft = trainer({
      discrepancies: [owed('1', 'taxi-light'), owed('2', 'dme'), owed('3', 'intercom')],
    });
    // The list has no DME, which no placard settles; without it the two others are enough together.
    expect(kinds(propose(aircraft, flightOf()))).not.toContain('place-placard');
    const two = { ...aircraft, discrepancies: [owed('1', 'taxi-light'), owed('3', 'intercom')] };
    expect(labels(only(propose(two, flightOf()), 'place-placard'))).toHaveLength(2);
  });

  it('not when something else bars as well', () => {
    const aircraft = trainer({
      discrepancies: [owed('1', 'taxi-light'), discrepancyOf({ id: '2', severity: known('grounding') })],
    });
    expect(kinds(propose(aircraft, flightOf()))).not.toContain('place-placard');
    expect(labels(only(propose(aircraft, flightOf()), 'call-mechanic'))).toHaveLength(2);
  });

  // 91.213(a), (d): judged and not grounding. Undecided or grounding it is the mechanic's first.
  it.each([
    ['judged limiting', known('limiting' as const), true],
    ['judged grounding', known('grounding' as const), false],
    ['undecided', unknown('what it means'), false],
  ])('a deferral of an item that is %s', (_name, severity, proposed) => {
    const aircraft = trainer({ discrepancies: [discrepancyOf({ severity })] });
    const found = propose(aircraft, flightOf());
    expect(kinds(found).includes('defer')).toBe(proposed);
    expect(kinds(found)).toContain('call-mechanic');
  });

  it('no deferral of what the flight needs', () => {
    const aircraft = trainer({ discrepancies: [{ ...landingLight, deferral: null }] });
    expect(kinds(propose(aircraft, flightOf()))).toContain('defer');
    expect(kinds(propose(aircraft, evening))).not.toContain('defer');
  });

  it('a call to the mechanic names every write-up, work and inspection that bars, and no other', () => {
    const aircraft = trainer({
      discrepancies: [
        discrepancyOf({
          id: 'nick',
          number: 'W-0002',
          title: 'Nick in the blade',
          kind: 'damage',
          equipmentId: null,
        }),
        discrepancyOf({ id: 'paint', number: 'W-0003', kind: 'cosmetic', severity: known('note') }),
      ],
      work: [
        {
          id: 'work',
          title: 'Tyre changed',
          state: 'entered',
          checkFlight: known('not-needed'),
          testsOwed: [],
        },
      ],
      requirements: trainerRequirements().map((row) =>
        row.kind === 'annual' ? requirementRow('annual', row.name, '2025-10-02', 43820) : row,
      ),
    });
    const found = propose(aircraft, flightOf());
    expect(kinds(found)).toEqual(['call-mechanic']);
    expect(labels(only(found, 'call-mechanic'))).toEqual([
      'W-0002 Nick in the blade',
      'Tyre changed',
      'Annual inspection',
    ]);
  });

  // 91.407(b): a check flight is flown by a pilot; a mechanic's signature does not settle it.
  it.each([
    ['not needed', known('not-needed' as const), true],
    ['owed', known('owed' as const), false],
    ['not known', unknown('whether a check flight is needed'), false],
  ])('work not signed, its check flight %s', (_name, checkFlight, proposed) => {
    const work = [{ id: 'work', title: 'Re-rigged', state: 'entered' as const, checkFlight, testsOwed: [] }];
    expect(kinds(propose(trainer({ work }), flightOf())).includes('call-mechanic')).toBe(proposed);
  });
});

it('quickest first: what the desk can change before what is done at the aircraft', () => {
  const aircraft = trainer({
    discrepancies: [{ ...landingLight, deferral: deferralOf() }],
  });
  expect(kinds(propose(aircraft, evening, { others: [{ facts: other() }] }))).toEqual([
    'other-aircraft',
    'earlier-return',
    'leave-earlier',
    'call-mechanic',
  ]);
});
