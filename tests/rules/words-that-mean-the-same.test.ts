/**
 * The tables of words that mean the same. Source: common practice, no source (what people call a part on the ramp, American and
 * British); the rows are written out here so that one lost in the rules is missed.
 */
import { describe, expect, test } from 'vitest';
import { compareParts, meaningOf, wordsOf } from '@/lib/rules/findings/words-compared';

const read = (text: string) => {
  const { parts, troubles, others } = meaningOf(wordsOf(text));
  return { parts: [...parts], troubles: [...troubles], others: [...others] };
};

const PARTS: readonly (readonly [part: string, names: string])[] = [
  ['tyre', 'tyre, tire, tread, sidewall, cord, rubber'],
  ['wheel', 'wheel, nosewheel, rim'],
  ['wheel fairing', 'wheel fairing, wheel pant, fairing, pant, spat, wheel cover'],
  ['brake', 'brake, break, caliper, calliper, brake pad, brake line, brake disc, pad, disc, rotor'],
  ['strut', 'strut, oleo'],
  ['shimmy damper', 'shimmy damper, damper, dampener, shimmy'],
  ['torque link', 'torque link, scissor, scissor link'],
  ['propeller', 'propeller, prop, blade, airscrew'],
  ['spinner', 'spinner, prop cone'],
  ['hub', 'hub, prop hub, propeller hub'],
  ['fuel cap', 'fuel cap, filler cap, tank cap, gas cap'],
  ['fuel drain', 'fuel drain, drain, sump, strainer, gascolator, drain valve, quick drain'],
  ['fuel sample', 'sample, fuel sample'],
  ['fuel vent', 'fuel vent, vent'],
  ['fuel gauge', 'fuel gauge, fuel quantity, fuel indicator, fuel quantity indicator, gas gauge'],
  ['fuel tank', 'tank, fuel tank'],
  ['fuel', 'fuel, gas, avgas, petrol'],
  ['oil', 'oil, dipstick, oil level'],
  ['oil cap', 'oil cap, oil filler, oil filler cap'],
  ['oil cooler', 'oil cooler, cooler, oil hose, oil line'],
  ['oil pressure gauge', 'oil pressure gauge, oil pressure, oil gauge, op gauge'],
  ['exhaust', 'exhaust, exhaust pipe, stack, tailpipe, exhaust stack, soot'],
  ['muffler', 'muffler, silencer, heat shroud, shroud'],
  ['belt', 'alternator belt, drive belt, alt belt, v belt, fan belt'],
  ['alternator', 'alternator, generator, charging, charge, ammeter, alt'],
  ['battery', 'battery, batt'],
  ['cowl', 'cowl, cowling, cowl flap, cowl fastener, cowl screw'],
  ['baffle', 'baffle, baffling, baffle seal'],
  ['inlet', 'inlet, intake, nest, air inlet'],
  ['air filter', 'air filter, filter, induction filter'],
  [
    'position light',
    'position light, nav light, navigation light, nav bulb, tail light, wingtip light, wing tip light, red light, green light, navlight, nav lamp, position lamp, tip light, white light',
  ],
  ['landing light', 'landing light, landing lamp, ll, ldg light, landing bulb, ldg lt'],
  ['taxi light', 'taxi light, taxi lamp'],
  [
    'beacon',
    'beacon, rotating beacon, anti collision, anti collision light, anticollision, strobe, strobe light, flashing light',
  ],
  ['cabin light', 'dome light, cabin light, map light, panel light, instrument light, overhead light'],
  ['light', 'light, lamp, bulb, led'],
  ['lens', 'lens, light lens, light cover'],
  ['pitot', 'pitot, pitot tube, pitot mast'],
  ['pitot heat', 'pitot heat, pitot heater, heated pitot'],
  ['static port', 'static port, static, static hole, static vent, static source'],
  ['stall warning', 'stall warning, stall horn, stall vane, stall warner, stall'],
  ['airspeed', 'airspeed, asi, airspeed indicator, speed indicator'],
  ['altimeter', 'altimeter, alt meter'],
  ['compass', 'compass, whiskey compass, mag compass, magnetic compass'],
  ['attitude', 'attitude, attitude indicator, horizon, artificial horizon, ai'],
  ['heading gyro', 'heading, heading indicator, dg, directional gyro, heading gyro, hsi'],
  ['turn indicator', 'turn coordinator, turn indicator, turn and bank'],
  ['vacuum', 'vacuum, suction, vacuum gauge, vacuum pump'],
  ['aileron', 'aileron'],
  ['elevator', 'elevator'],
  ['rudder', 'rudder'],
  ['flap', 'flap'],
  ['trim', 'trim, trim tab, tab'],
  ['hinge', 'hinge, hinge pin, hinge bolt'],
  ['static wick', 'static wick, wick, static discharger'],
  ['windshield', 'windshield, windscreen, front window'],
  ['window', 'window, side window, storm window'],
  ['door', 'door, latch, door latch, door handle'],
  ['baggage door', 'baggage door, luggage door, cargo door'],
  ['seat', 'seat, seat track, seat rail, seat pin, chair'],
  ['seat belt', 'seat belt, seatbelt, shoulder harness, harness, safety belt, lap belt, buckle'],
  ['extinguisher', 'extinguisher, fire bottle, fire extinguisher, extinguisher gauge'],
  ['elt', 'elt, emergency locator, locator, emergency transmitter, beacon battery, elt battery'],
  ['placard', 'placard, decal, sticker, marking, label'],
  ['antenna', 'antenna, aerial, com antenna, whip'],
  ['transponder', 'transponder, xpdr, squawk, mode c, encoder, altitude reporting'],
  ['radio', 'radio, com, comm, com radio, transmit'],
  ['nav', 'nav, vor, navigation'],
  ['gps', 'gps, satellite navigation'],
  ['skin', 'skin, rivet'],
  ['leg', 'leg, gear leg'],
  ['heater', 'heater, cabin heat'],
  ['fan', 'fan'],
  ['intercom', 'intercom, headset, headset jack, jack'],
  ['mixture', 'mixture, mixture control'],
  ['throttle', 'throttle'],
  ['primer', 'primer'],
  ['magneto', 'magneto, mag'],
  ['tow bar', 'tow bar, towbar'],
  ['control lock', 'control lock, gust lock'],
  ['fuel selector', 'fuel selector, selector'],
];

const TROUBLES: readonly (readonly [trouble: string, names: string])[] = [
  ['nick', 'nick, dent, ding, dinged, dented, gouge, chip, chipped, nicked, notch, gash'],
  ['crack', 'crack, cracked, cracking, split, fracture, fissure, crazed, crazing'],
  ['worn', 'worn, wear, bald, thin, frayed, fraying, wore, smooth, eroded, erosion'],
  ['leak', 'leak, leaking, leaky, drip, dripping, weep, weeping, seep, seeping, wet, puddle, stain, streak'],
  [
    'dead',
    'dead, inop, inoperative, failed, fail, fails, dark, burnt, burned, unserviceable, silent, blank, broke',
  ],
  ['loose', 'loose, wobbly, play, slack, wobble, wobbles, rattle, rattling, sloppy, slop'],
  ['missing', 'missing, gone, lost, absent'],
  ['broken', 'broken, torn, snapped, damaged, ripped, tore'],
  ['low', 'low, flat, soft, spongy, mushy, underinflated, sinking, deflated, collapsed'],
  ['blocked', 'blocked, clogged, plugged, obstructed, insect, bug, mud, wasp'],
  ['water', 'water, droplet, bubble'],
  ['dirt', 'dirt, rust, sediment, debris, particle, speck, grit, dirty, fleck'],
  ['bent', 'bent, bowed, crooked, twisted, buckled, wrinkled, wrinkle'],
  ['corrosion', 'corrosion, corroded, pitting'],
  ['stiff', 'stiff, stuck, sticks, sticking, hard, jammed, binding, seized'],
  ['fastener', 'fastener, screw, bolt, stud, nut, cotter, pin, clip, safety wire'],
  ['expired', 'expired, outdated, overdue, lapsed, expiry'],
  ['unreadable', 'illegible, unreadable, faded, peeled, peeling'],
  ['seal', 'seal, gasket, o ring'],
];

describe('names of a part', () => {
  test.each(PARTS)('%s: %s', (part, names) => {
    for (const name of names.split(', '))
      expect(read(name), name).toEqual({ parts: [part], troubles: [], others: [] });
  });
  test.each(PARTS)('%s is no other part', (part) => {
    const others = PARTS.filter(([other]) => other !== part).map(([other]) => read(other).parts[0]);
    expect(others).not.toContain(read(part).parts[0]);
  });
});

describe('names of what is wrong', () => {
  test.each(TROUBLES)('%s: %s', (trouble, names) => {
    for (const name of names.split(', '))
      expect(read(name), name).toEqual({ parts: [], troubles: [trouble], others: [] });
  });
});

describe('the longest name wins', () => {
  test.each<[text: string, parts: string[], troubles: string[]]>([
    ['oil', ['oil'], []],
    ['oil pressure', ['oil pressure gauge'], []],
    ['oil pressure gauge', ['oil pressure gauge'], []],
    ['oil and pressure gauge', ['oil'], []],
    ['fuel quantity indicator', ['fuel gauge'], []],
    ['fuel oil', ['fuel', 'oil'], []],
    ['landing light bulb', ['landing light', 'light'], []],
    ['brake line leaking', ['brake'], ['leak']],
    ['hinge pin missing', ['hinge'], ['missing']],
    ['pin missing', [], ['fastener', 'missing']],
    ['beacon battery', ['elt'], []],
    ['battery beacon', ['battery', 'beacon'], []],
    ['turn and bank', ['turn indicator'], []],
    // A part is meant before a trouble of the same word would be.
    ['charging weak', ['alternator'], ['charge']],
  ])('%s', (text, parts, troubles) => {
    expect(read(text)).toMatchObject({ parts, troubles });
  });
});

const compare = (one: readonly string[], other: readonly string[]) =>
  compareParts(new Set(one), new Set(other));

describe('a part that is a sort of another', () => {
  test.each([
    ['landing light', 'light'],
    ['taxi light', 'light'],
    ['position light', 'light'],
    ['beacon', 'light'],
    ['cabin light', 'light'],
    ['baggage door', 'door'],
    ['pitot heat', 'pitot'],
    ['fuel cap', 'fuel'],
    ['fuel drain', 'fuel'],
    ['fuel sample', 'fuel drain'],
    ['fuel vent', 'fuel'],
    ['fuel tank', 'fuel'],
    ['oil cap', 'oil'],
    ['oil cooler', 'oil'],
    ['hub', 'propeller'],
    ['muffler', 'exhaust'],
  ])('%s is akin to %s, whoever writes it', (sort, whole) => {
    const akin = { shared: [], akin: [sort], twins: null, isApart: false };
    expect(compare([sort], [whole])).toEqual(akin);
    expect(compare([whole], [sort])).toEqual(akin);
  });
  test.each([
    ['spinner', 'propeller'],
    ['fuel gauge', 'fuel'],
    ['static port', 'pitot'],
    ['light', 'rudder'],
  ])('%s is not akin to %s', (one, other) => {
    expect(compare([one], [other]).akin).toEqual([]);
  });
  test('what both name is shared and not akin as well', () => {
    const both = ['door', 'baggage door'];
    expect(compare(['baggage door'], both)).toMatchObject({ shared: ['baggage door'], akin: [] });
    expect(compare(both, ['baggage door'])).toMatchObject({ shared: ['baggage door'], akin: [] });
  });
  test('shared and akin come in order of the alphabet', () => {
    expect(compare(['wheel', 'tyre', 'brake'], ['tyre', 'wheel', 'brake']).shared).toEqual([
      'brake',
      'tyre',
      'wheel',
    ]);
    expect(compare(['muffler', 'fuel cap', 'oil'], ['oil cap', 'fuel', 'exhaust']).akin).toEqual([
      'fuel cap',
      'muffler',
      'oil cap',
    ]);
  });
});

describe('twins of one family', () => {
  test.each([
    'propeller, spinner, hub',
    'tyre, brake, strut, shimmy damper, torque link, wheel fairing',
    'aileron, elevator, rudder, flap',
    'landing light, taxi light, position light, beacon, cabin light',
    'airspeed, altimeter, compass, attitude, heading gyro, turn indicator, oil pressure gauge, fuel gauge',
    'radio, nav, gps, transponder, elt, intercom',
    'windshield, window, door, baggage door, seat, seat belt',
    'fuel cap, fuel drain, fuel vent, fuel selector',
    'cowl, baffle, air filter, oil cooler, exhaust, belt',
    'pitot, static port, stall warning',
  ])('%s', (list) => {
    const family = list.split(', ');
    const akin = (one: string, other: string) => compare([one], [other]).akin.length > 0;
    let twins = 0;
    for (const one of family)
      for (const other of family) {
        const found = compare([one], [other]).twins;
        if (one === other || akin(one, other)) expect(found).toBeNull();
        else {
          expect(found).toEqual([one, other]);
          twins += 1;
        }
      }
    expect(twins).toBeGreaterThanOrEqual(4);
  });
  test('of two families, of none, of one side only: no twins', () => {
    expect(compare(['rudder'], ['spinner']).twins).toBeNull();
    expect(compare(['rudder'], ['skin']).twins).toBeNull();
    expect(compare(['rudder'], []).twins).toBeNull();
    expect(compare([], ['rudder']).twins).toBeNull();
  });
  test('a member that both name leaves none, and all members that one names are told', () => {
    expect(compare(['rudder', 'flap'], ['elevator', 'flap']).twins).toBeNull();
    expect(compare(['rudder', 'flap'], ['elevator', 'aileron']).twins).toEqual([
      'rudder, flap',
      'aileron, elevator',
    ]);
  });
  test('what is akin may be the same thing: no twins beside it', () => {
    expect(compare(['light', 'rudder'], ['beacon', 'flap'])).toMatchObject({ akin: ['beacon'], twins: null });
  });
});
