import { describe, expect, it } from 'vitest';
import { FINDING_CATALOGUE, findingOf, findingsAt, workPartOf } from '../../lib/rules/findings/catalogue';
import { measurementOf, MEASUREMENTS, sayMeasured } from '../../lib/rules/findings/measurements';
import { STATION_KEYS, WALKAROUND_STATIONS } from '../../lib/rules/findings/stations';
import type { UsualWork } from '../../lib/rules/findings/finding';
import { jascCode } from '../../lib/rules/jasc';
import { LAW } from '../../lib/rules/law';
import { preventiveItem } from '../../lib/rules/part-43/43-appendix-a-preventive-maintenance';
import { mayApproveReturnToService, signersFor } from '../../lib/rules/who-may-sign';
import { inspector, mechanic, ON, pilot, station, work } from '../fixtures/signers';

/**
 * The findings table of the project's trade notes, section 16: code, kind, course (G ground, H hold, Q ask 91.213, S
 * service, N note) and who signs the usual work: PMn owner-pilot under Appendix A(c)(n), A or P mechanic rating, IA,
 * RS repair station. Kinds, courses and signers are design or derived there from section 9; codes 12 of 71 checked.
 */
const TABLE = `
propeller-nick 6111 DMG G P
propeller-erosion 6111 WEAR H P
propeller-bent 6110 DMG G RS P
propeller-crack 6111 DMG G P RS
spinner-cracked 6113 DMG G P
propeller-hub-leak 6114 LEAK G RS P
tyre-worn 3244 WEAR G PM1
tyre-cord 3244 WEAR G PM1
tyre-cut 3244 DMG G PM1
tyre-flat-spot 3244 WEAR N
tyre-low 3244 SERV S PM1
tyre-slipped 3245 DMG H PM1
wheel-cracked 3246 DMG G A
nose-strut-low 3222 SERV G PM3
strut-leak 3222 LEAK G A
torque-link-loose 3222 WEAR G A
gear-cotter-missing 3222 LOOSE G PM5 A
shimmy-damper-leak 3252 LEAK H A
brake-leak 3242 LEAK G A
brake-pads-worn 3242 WEAR G A
brake-soft 3243 LEAK G A PM8
wheel-fairing-cracked 3201 DMG H PM12 A
water-cleared 2810 CONT S
water-keeps-coming 2810 CONT G A
fuel-dirt 2821 CONT G PM23 A
fuel-wrong 1210 CONT G A P
fuel-drain-drips 2810 LEAK G A
fuel-stain 2820 LEAK G A
fuel-cap-seal 2810 DMG G A
fuel-vent-blocked 2810 CONT G A
fuel-gauge-dead 2841 INOP Q A RS
oil-low 1220 SERV S
engine-oil-leak 8550 LEAK G P
oil-cooler-leak 7921 LEAK G P PM21
oil-pressure-gauge-dead 7931 INOP Q A P RS
exhaust-crack 7810 DMG G P
muffler-crack 7820 DMG G P
alternator-belt 2410 WEAR G P
alternator-dead 2434 INOP Q P A
battery-weak 2432 SERV H PM24
cowl-fastener-missing 7110 LOOSE H PM26
baffle-torn 7112 WEAR H P
inlet-nest 7110 CONT G P
air-filter-torn 7160 DMG G P
position-light-dead 3340 INOP Q PM17
anticollision-light-dead 3340 INOP Q A
landing-light-dead 3340 INOP Q PM17 PM16
light-lens-broken 3340 DMG H PM17 A
pitot-blocked 3411 CONT G A
static-blocked 3411 CONT G A A
pitot-heat-dead 3030 INOP Q A
stall-warning-silent 3418 INOP Q A
basic-instrument-faulty 3414 INOP Q A RS
vacuum-gyro-dead 3720 INOP Q A RS
control-stiff 2700 DMG G A
control-cable-wire 2730 WEAR G A
surface-hinge-loose 5744 LOOSE G A PM5
trim-tab-play 2731 WEAR G A
flap-uneven 2750 WEAR G A
windshield-crack 5610 DMG G A
side-window-crazed 5630 WEAR H PM13
skin-damage 5730 DMG G A IA
static-wick-missing 2360 DMG H A
antenna-broken 2312 DMG H A A
transponder-fails 3452 INOP Q RS
placard-missing 1100 DOC G A
belt-frayed 2510 WEAR G PM14
seat-will-not-lock 2510 DMG G PM15 A
door-latch-fails 5210 DMG G A
elt-battery-expired 2562 DOC H A
extinguisher-low 2622 SERV H A
`
  .trim()
  .split('\n')
  .map((line) => {
    const [key = '', jasc = '', kind = '', course = '', ...signers] = line.split(' ');
    return { key, jasc, kind, course, signers };
  });

const KINDS: Record<string, string> = {
  INOP: 'inoperative',
  DMG: 'damage',
  WEAR: 'wear',
  LEAK: 'leak',
  CONT: 'contamination',
  LOOSE: 'fastener',
  SERV: 'servicing',
  DOC: 'document',
};
const COURSES: Record<string, string> = { G: 'ground', H: 'hold', Q: 'ask-91.213', S: 'service', N: 'note' };

/** Who signs one usual work, asked of the ruling itself. */
function signerOf(usual: UsualWork): string {
  const asked = work(usual);
  const may = (signer: Parameters<typeof mayApproveReturnToService>[0]) =>
    mayApproveReturnToService(signer, asked, ON).allowed;
  if (usual.preventiveItem !== null) return may(pilot('private')) ? `PM${usual.preventiveItem}` : 'nobody';
  if (may(mechanic(['airframe']))) return 'A';
  if (may(mechanic(['powerplant']))) return 'P';
  if (may(inspector())) return 'IA';
  return may(station()) ? 'RS' : 'nobody';
}

describe('the 71 findings', () => {
  it('stand in the order of the table, no more and no fewer', () => {
    expect(TABLE).toHaveLength(71);
    expect(FINDING_CATALOGUE.map((entry) => entry.key)).toEqual(TABLE.map((row) => row.key));
  });

  it.each(TABLE.map((row) => [row.key, row] as const))('%s: code, kind, course, signers', (key, row) => {
    const entry = findingOf(key);
    expect(entry?.jasc).toBe(row.jasc);
    expect(entry?.kind).toBe(KINDS[row.kind]);
    expect(entry?.proposed).toBe(COURSES[row.course]);
    expect(entry?.work.map(signerOf)).toEqual(row.signers);
    // The first item of Appendix A(c) among the usual work, and none where none of it is preventive maintenance.
    const [item = null] = row.signers.flatMap((signer) => /^PM(\d+)$/.exec(signer)?.[1] ?? []);
    expect(entry?.preventiveItem).toBe(item === null ? null : Number(item));
  });

  it('agree with their neighbours: code, law, stations, measurements, who settles', () => {
    for (const entry of FINDING_CATALOGUE) {
      const at = [entry.station, ...entry.alsoAt];
      expect(new Set(at).size, entry.key).toBe(at.length);
      expect(jascCode(entry.jasc).known, entry.key).toBe(true);
      for (const choice of entry.choices) expect(jascCode(choice.jasc).known, entry.key).toBe(true);
      if (entry.choices.length > 0) expect(entry.choices[0]?.jasc, entry.key).toBe(entry.jasc);
      if (entry.cite) expect(Object.hasOwn(LAW, entry.cite), entry.key).toBe(true);
      for (const { key } of entry.measurements) expect(measurementOf(key), entry.key).not.toBeNull();
      for (const usual of entry.work) expect(signersFor(work(usual)).length, entry.key).toBeGreaterThan(0);
      if (entry.preventiveItem !== null)
        expect(preventiveItem(entry.preventiveItem).known, entry.key).toBe(true);
      // only servicing needs no signature of the law; the rest is repaired, deferred or noted
      expect(entry.settledBy === 'pilot-servicing', entry.key).toBe(entry.proposed === 'service');
      expect(entry.settledBy === 'deferral-or-repair', entry.key).toBe(entry.kind === 'inoperative');
      if (entry.kind === 'inoperative' && entry.choices.length === 0)
        expect(entry.equipmentFunction, entry.key).not.toBeNull();
    }
  });

  it('hold no limit of their own (warning W1: limits belong to one aircraft)', () => {
    expect(JSON.stringify(FINDING_CATALOGUE)).not.toMatch(/"(min|max|limit)"/);
    expect(JSON.stringify(MEASUREMENTS)).not.toMatch(/"(min|max|limit)"/);
  });

  it('nothing for owner-pilots on propeller, exhaust, brakes or instruments (App A(c), section 11)', () => {
    for (const key of ['propeller-nick', 'exhaust-crack', 'brake-leak', 'pitot-blocked', 'placard-missing'])
      expect(findingOf(key)?.preventiveItem, key).toBeNull();
  });
});

describe('the 18 stations (section 14)', () => {
  it('are walked in order', () => {
    expect(WALKAROUND_STATIONS).toHaveLength(18);
    expect(WALKAROUND_STATIONS.map((entry) => entry.order)).toEqual(STATION_KEYS.map((_, index) => index));
    for (const entry of WALKAROUND_STATIONS) expect(entry.lookFor.length).toBeGreaterThan(10);
  });

  it('every finding is offered at its station, its own first', () => {
    for (const key of STATION_KEYS) {
      const offered = findingsAt(key);
      expect(offered.length, key).toBeGreaterThan(0);
      const own = offered.filter((entry) => entry.station === key);
      expect(offered.slice(0, own.length)).toEqual(own);
    }
    const offered = new Set(STATION_KEYS.flatMap((key) => findingsAt(key).map((entry) => entry.key)));
    expect(offered.size).toBe(71);
  });
});

/**
 * What the walk looks for at a place is offered there. Source: section 14 of the project's trade notes (areas after the FAA's training
 * handbook, checked in part); the finding that stands for each of its words is our reading.
 */
const GEAR =
  'tyre-worn tyre-cord tyre-cut tyre-flat-spot tyre-low tyre-slipped wheel-cracked brake-leak brake-pads-worn brake-soft wheel-fairing-cracked';
const SKIN = 'skin-damage antenna-broken static-blocked';
const FLAP = 'flap-uneven surface-hinge-loose control-stiff control-cable-wire static-wick-missing';
const TIP = 'position-light-dead anticollision-light-dead light-lens-broken skin-damage';
const FUEL = 'fuel-cap-seal water-cleared water-keeps-coming fuel-dirt fuel-wrong fuel-stain';
const LOOKED_FOR: Readonly<Record<string, string>> = {
  approach: 'nose-strut-low fuel-stain engine-oil-leak',
  cabin:
    'belt-frayed seat-will-not-lock placard-missing elt-battery-expired extinguisher-low fuel-gauge-dead battery-weak door-latch-fails control-stiff',
  'cabin-power-on':
    'position-light-dead anticollision-light-dead landing-light-dead pitot-heat-dead stall-warning-silent flap-uneven',
  'left-rear-fuselage': `${SKIN} door-latch-fails`,
  tail: 'surface-hinge-loose control-cable-wire control-stiff trim-tab-play position-light-dead static-wick-missing',
  'right-rear-fuselage': SKIN,
  'right-flap-aileron': FLAP,
  'right-tip-leading-edge': TIP,
  'right-wing-fuel': FUEL,
  'right-main-gear': GEAR,
  'nose-right':
    'oil-low engine-oil-leak oil-cooler-leak cowl-fastener-missing exhaust-crack muffler-crack water-cleared water-keeps-coming fuel-dirt fuel-wrong',
  propeller:
    'propeller-nick propeller-erosion propeller-bent propeller-crack spinner-cracked propeller-hub-leak alternator-belt inlet-nest baffle-torn',
  'nose-gear':
    'tyre-worn tyre-cord tyre-cut tyre-flat-spot tyre-low nose-strut-low strut-leak torque-link-loose shimmy-damper-leak',
  'nose-left': 'static-blocked cowl-fastener-missing windshield-crack',
  'left-wing-fuel': `${FUEL} fuel-vent-blocked`,
  'left-leading-edge': 'pitot-blocked pitot-heat-dead stall-warning-silent landing-light-dead',
  'left-wing-and-gear': `${FLAP} ${TIP} ${GEAR}`,
  'last-look': 'fuel-cap-seal door-latch-fails',
};

describe('what is looked for at a place', () => {
  it('every place is in the table', () => {
    expect(Object.keys(LOOKED_FOR)).toEqual([...STATION_KEYS]);
  });

  it.each(STATION_KEYS)('%s', (station) => {
    const offered = findingsAt(station).map(({ key }) => key);
    const lookedFor = (LOOKED_FOR[station] ?? '').split(' ');
    expect(lookedFor.filter((key) => !offered.includes(key))).toEqual([]);
  });

  it('what hangs on one wing is offered on the other, but for what there is one of', () => {
    const other: Readonly<Record<string, readonly string[]>> = {
      'right-flap-aileron': ['left-wing-and-gear'],
      'right-tip-leading-edge': ['left-leading-edge', 'left-wing-and-gear'],
      'right-wing-fuel': ['left-wing-fuel'],
      'right-main-gear': ['left-wing-and-gear'],
      'left-wing-fuel': ['right-wing-fuel'],
      'left-leading-edge': ['right-tip-leading-edge'],
      'left-wing-and-gear': ['right-main-gear', 'right-flap-aileron', 'right-tip-leading-edge'],
      'left-rear-fuselage': ['right-rear-fuselage'],
      'right-rear-fuselage': ['left-rear-fuselage'],
    };
    const oneSided = FINDING_CATALOGUE.filter(({ station, alsoAt }) => {
      const at: readonly string[] = [station, ...alsoAt];
      return at.some((place) => other[place] && !other[place].some((one) => at.includes(one)));
    });
    expect(oneSided.map(({ key }) => key)).toEqual([
      'landing-light-dead',
      'pitot-blocked',
      'pitot-heat-dead',
      'stall-warning-silent',
      'door-latch-fails',
    ]);
  });
});

/** Which finding asks for which number: needed to come out lower than grounding, judged if it was taken, or only described. Our design. */
describe('what is measured', () => {
  const NICK =
    'propeller-nick-depth needed, propeller-nick-width needed, propeller-nick-length described, propeller-nick-from-tip described';
  it('is asked for', () => {
    const asked = FINDING_CATALOGUE.filter(({ measurements }) => measurements.length > 0).map((entry) => [
      entry.key,
      entry.measurements.map(({ key, role }) => `${key} ${role}`).join(', '),
    ]);
    expect(Object.fromEntries(asked)).toEqual({
      'propeller-nick': NICK,
      'propeller-erosion': NICK,
      'tyre-worn': 'main-tyre-tread if-measured, nose-tyre-tread if-measured',
      'tyre-cut': 'tyre-cut-length described, tyre-cut-depth described',
      'tyre-low': 'main-tyre-pressure if-measured, nose-tyre-pressure if-measured',
      'tyre-slipped': 'tyre-slip if-measured',
      'nose-strut-low': 'nose-strut-extension needed',
      'brake-pads-worn': 'brake-pad-thickness needed',
      'water-cleared': 'fuel-sample-repeats described',
      'water-keeps-coming': 'fuel-sample-repeats described',
      'oil-low': 'oil-quantity needed',
      'battery-weak': 'battery-voltage needed',
      'trim-tab-play': 'trim-tab-play needed',
      'skin-damage': 'skin-dent-depth described, skin-dent-width described',
    });
  });

  it('is every number there is, but for those the walk itself asks for', () => {
    const asked = new Set<string>(
      FINDING_CATALOGUE.flatMap(({ measurements }) => measurements.map(({ key }) => key)),
    );
    expect(Object.keys(MEASUREMENTS).filter((key) => !asked.has(key))).toEqual([
      'fuel-in-left-tank',
      'fuel-in-right-tank',
      'flap-angle',
    ]);
  });
});

/** Codes as in the project's jasc.csv; which of them belong to one finding is our design. */
it('a finding that may be of several parts asks which, by their codes', () => {
  const asking = FINDING_CATALOGUE.filter(({ choices }) => choices.length > 0).map((entry) => [
    entry.key,
    entry.choices.map(({ jasc }) => jasc).join(' '),
  ]);
  expect(Object.fromEntries(asking)).toEqual({
    'basic-instrument-faulty': '3414 3416 3423',
    'vacuum-gyro-dead': '3720 3700 3421 3422 3424',
    'control-cable-wire': '2730 2720 2710',
    'surface-hinge-loose': '5744 5552 5554',
    'skin-damage': '5730 5330 5512 5532 5522 5542 5751 5753',
    'antenna-broken': '2312 3454 3457 3452 3451 2562',
    'transponder-fails': '3452 3416',
  });
});

describe('small things', () => {
  it.each([
    [31, 'thousandth-inch', '0.031 in'],
    [0, 'thousandth-inch', '0.000 in'],
    [1000, 'thousandth-inch', '1.000 in'],
    [30, 'tenth-inch', '3.0 in'],
    [3, 'thirty-second-inch', '3/32 in'],
    [55, 'tenth-quart', '5.5 qt'],
    [3, 'count', '3 times'],
    [-5, 'tenth-psi', '-0.5 psi'],
  ] as const)('%s %s reads %s', (value, unit, text) => {
    expect(sayMeasured(value, unit)).toBe(text);
  });

  it('the work decides the part, not the code: a static port is airframe work (91.411(b)(3))', () => {
    expect(workPartOf('static-blocked', '3411')).toEqual({ known: true, value: 'airframe' });
    expect(workPartOf(null, '3411')).toEqual({ known: true, value: 'instrument' });
    expect(workPartOf(null, '0000').known).toBe(false);
    expect(workPartOf('oil-low', '1220')).toEqual({ known: true, value: 'airframe' });
  });

  it('knows no finding or measurement by another name', () => {
    expect(findingOf('constructor')).toBeNull();
    expect(measurementOf('toString')).toBeNull();
  });
});
