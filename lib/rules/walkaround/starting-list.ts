import type { MeasurementKey } from '../findings/measurements';
import { areaTitle, type AreaKey } from './areas';
import type { ListItem, ListStation, NumberItem, SampleItem, WalkaroundList } from './plan';

/**
 * The list to start from: a generic high-wing single with fixed gear. Areas and what to look for follow the FAA's flying
 * handbook (read in part); papers 91.203 and 91.9; the order, the units and the items are our design; thirteen drains (five
 * a wing, three under the fuselage) are common practice, no source. It has no limits: those are the maker's, and a manager
 * fits them to the type.
 */

const look = (key: string, title: string, lookFor: string): ListItem => ({
  kind: 'look',
  key,
  title,
  lookFor,
});

const number = (
  key: string,
  title: string,
  lookFor: string,
  measurement: MeasurementKey,
  findingKey: string | null = null,
): NumberItem => ({ kind: 'number', key, title, lookFor, measurement, limit: null, findingKey });

/** A drain to sample; its key is kept from version to version. */
export const drainItem = (drain: string): SampleItem => ({
  kind: 'sample',
  key: `drain-${drain.toLowerCase()}`,
  title: `Drain ${drain}`,
  lookFor: 'Clear and of the right colour; no water at the bottom, no dirt.',
  drain,
});

const drains = (letter: string, count: number): SampleItem[] =>
  Array.from({ length: count }, (_, index) => drainItem(`${letter}${index + 1}`));

const station = (area: AreaKey, ...items: readonly ListItem[]): ListStation => ({
  area,
  title: areaTitle(area),
  items,
});

const mainTyrePressure = (side: 'left' | 'right'): NumberItem =>
  number(
    `${side}-main-tyre-pressure`,
    `Pressure, ${side} main tyre`,
    'Cold, with a gauge.',
    'main-tyre-pressure',
    'tyre-low',
  );

/** All stations in walking order: papers, cabin, tail, right wing, nose, left wing, last look. */
export const STARTING_LIST: WalkaroundList = {
  stations: [
    station(
      'approach',
      look('lean', 'Stance', 'It stands level; no leg or tyre lower than the other.'),
      look('puddles', 'Ground below', 'No puddles or fresh stains of fuel, oil or brake fluid.'),
      look('tie-downs', 'Tie-downs and chocks', 'Known which are on, and where.'),
    ),
    station(
      'cabin',
      look('registration-paper', 'Registration', 'Certificate aboard, not run out. 91.203(a)(2).'),
      look('airworthiness-paper', 'Airworthiness certificate', 'Aboard and where it can be read. 91.203(b).'),
      look('operating-limitations', 'Operating limitations', 'Flight manual or placards aboard. 91.9(b).'),
      look(
        'weight-and-balance',
        'Weight and balance',
        'Data of this very aircraft aboard, with its equipment list.',
      ),
      look('control-lock', 'Control lock', 'Out; controls free and the right way round.'),
      look('switches-off', 'Switches', 'Ignition and master off, mixture at cut-off.'),
      look('belts', 'Belts', 'Whole, latch and let go.'),
      look('seats', 'Seats', 'Lock in their rails; stops fitted.'),
      look('placards', 'Placards and markings', 'There and readable.'),
      look('locator', 'Emergency locator transmitter', 'Armed, no fault light.'),
      look('extinguisher', 'Fire extinguisher', 'In its holder, in the green, in date.'),
      look('fuel-selector', 'Fuel selector', 'Turns through all positions, stops at each.'),
      look('trim', 'Trim', 'Moves freely; set for takeoff.'),
    ),
    station(
      'cabin-power-on',
      number(
        'battery-voltage',
        'Battery voltage',
        'Before anything is switched on.',
        'battery-voltage',
        'battery-weak',
      ),
      look('fuel-gauges', 'Fuel gauges', 'Both move and show about what was tanked.'),
      look('lights', 'Lights', 'Position, anti-collision and landing lights burn.'),
      look('pitot-heat', 'Pitot heat', 'The tube warms; never hold it.'),
      look('stall-warning-sound', 'Stall warning', 'Sounds when the vane is lifted.'),
      number('flap-angle', 'Flaps, full down', 'Both sides run down evenly.', 'flap-angle'),
      look('power-off', 'Power off', 'Master off again.'),
    ),
    station(
      'left-rear-fuselage',
      look('left-rear-skin', 'Skin', 'No dents, wrinkles, loose rivets.'),
      look('left-antennas', 'Antennas', 'Firm, not cracked.'),
      look('left-rear-static', 'Static port', 'Open and clean, if it is on this side.'),
      look('baggage-door', 'Baggage door', 'Shut and locked; load tied down.'),
    ),
    station(
      'tail',
      look('tail-tie-down', 'Tail tie-down', 'Off.'),
      look('elevator', 'Elevator', 'Moves freely; hinges, bolts and cables secure.'),
      look('rudder', 'Rudder', 'Hinges, bolts and cables secure.'),
      look('trim-tab', 'Trim tab', 'Hinge and rod secure, no undue play.'),
      look('tail-light', 'Tail light', 'Lens whole.'),
    ),
    station(
      'right-rear-fuselage',
      look('right-rear-skin', 'Skin', 'No dents, wrinkles, loose rivets.'),
      look('right-antennas', 'Antennas', 'Firm, not cracked.'),
      look('right-rear-static', 'Static port', 'Open and clean, if it is on this side.'),
    ),
    station(
      'right-flap-aileron',
      look('right-flap', 'Right flap', 'Tracks, rollers and rod secure, no cracks.'),
      look('right-aileron', 'Right aileron', 'Hinges and rod secure, full travel, free.'),
      look('right-wicks', 'Static wicks', 'All there, not bent.'),
    ),
    station(
      'right-tip-leading-edge',
      look('right-tip', 'Right tip', 'Position light and lens whole, no cracks.'),
      look('right-leading-edge', 'Right leading edge', 'No dents; clean, free of frost and ice.'),
      look('right-tie-down', 'Right tie-down', 'Off.'),
    ),
    station(
      'right-wing-fuel',
      number(
        'right-tank',
        'Fuel in the right tank',
        'Dipped, not read from the gauge.',
        'fuel-in-right-tank',
      ),
      look('right-cap', 'Right cap', 'Seal whole, cap tight.'),
      ...drains('R', 5),
    ),
    station(
      'right-main-gear',
      look('right-tyre', 'Right tyre', 'Tread, cuts, flat spots; mark not slipped.'),
      mainTyrePressure('right'),
      look('right-brake', 'Right brake', 'Disc and pads good, line dry.'),
      look('right-leg', 'Right leg and fairing', 'No cracks, fairing firm.'),
    ),
    station(
      'nose-right',
      number(
        'oil-quantity',
        'Oil on the dipstick',
        'Wipe, dip, read. More oil: add it and dip again.',
        'oil-quantity',
        'oil-low',
      ),
      look('oil-cap', 'Oil cap', 'Tight; no fresh oil around it.'),
      look('cowl-right', 'Cowl', 'All fasteners there and locked.'),
      look('exhaust', 'Exhaust', 'Firm; no cracks, no white or grey traces.'),
      ...drains('F', 3),
    ),
    station(
      'propeller',
      look('blades', 'Blades', 'Both faces and edges: no nicks, no cracks. Never turn it.'),
      look('spinner', 'Spinner', 'No cracks, all screws.'),
      look('belt', 'Belt', 'Tight, not frayed.'),
      look('inlets', 'Inlets', 'No nests, no rags; baffles whole.'),
      look('air-filter', 'Air filter', 'Clean and seated.'),
    ),
    station(
      'nose-gear',
      look('nose-tyre', 'Nose tyre', 'Tread, cuts; mark not slipped.'),
      number(
        'nose-tyre-pressure',
        'Pressure, nose tyre',
        'Cold, with a gauge.',
        'nose-tyre-pressure',
        'tyre-low',
      ),
      number(
        'nose-strut',
        'Nose strut extension',
        'Piston showing, standing level and unloaded.',
        'nose-strut-extension',
        'nose-strut-low',
      ),
      look('nose-leaks', 'Strut and damper', 'Dry; shimmy damper firm.'),
      look('torque-links', 'Torque links', 'No play, pins secured.'),
    ),
    station(
      'nose-left',
      look('nose-static', 'Static port', 'Open and clean, if it is here.'),
      look('cowl-left', 'Cowl', 'All fasteners there and locked.'),
      look('windshield', 'Windshield', 'Clean, no cracks.'),
    ),
    station(
      'left-wing-fuel',
      number('left-tank', 'Fuel in the left tank', 'Dipped, not read from the gauge.', 'fuel-in-left-tank'),
      look('left-cap', 'Left cap', 'Seal whole, cap tight.'),
      look('vent', 'Fuel vent', 'Open: no nest, no ice.'),
      ...drains('L', 5),
    ),
    station(
      'left-leading-edge',
      look('pitot', 'Pitot', 'Cover off, open and straight.'),
      look('stall-vane', 'Stall warning vane', 'Moves freely, not bent.'),
      look('landing-light', 'Landing light', 'Lens whole.'),
      look('left-leading-edge', 'Left leading edge', 'No dents; clean, free of frost and ice.'),
    ),
    station(
      'left-wing-and-gear',
      look('left-tip', 'Left tip', 'Position light and lens whole; tie-down off.'),
      look('left-aileron', 'Left aileron', 'Hinges and rod secure, full travel, free.'),
      look('left-flap', 'Left flap', 'Tracks, rollers and rod secure, no cracks.'),
      look('left-tyre', 'Left tyre', 'Tread, cuts, flat spots; mark not slipped.'),
      mainTyrePressure('left'),
      look('left-brake', 'Left brake and leg', 'Disc and pads good, line dry, leg without cracks.'),
    ),
    station(
      'last-look',
      look('caps', 'Caps', 'Oil and both fuel caps on.'),
      look('covers', 'Covers and tow bar', 'Off and stowed.'),
      look('doors', 'Doors', 'Shut.'),
      look('left-behind', 'Nothing left behind', 'No sampler, rag or tool on wing, cowl or tail.'),
    ),
  ],
};
