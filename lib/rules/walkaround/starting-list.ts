import type { MeasurementKey } from '../findings/measurements';
import { said } from '../said';
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
  title: said('Drain {drain}').replace('{drain}', drain),
  lookFor: said('Clear and of the right colour; no water at the bottom, no dirt.'),
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
    side === 'left' ? said('Pressure, left main tyre') : said('Pressure, right main tyre'),
    said('Cold, with a gauge.'),
    'main-tyre-pressure',
    'tyre-low',
  );

/** All stations in walking order: papers, cabin, tail, right wing, nose, left wing, last look. */
export const STARTING_LIST: WalkaroundList = {
  stations: [
    station(
      'approach',
      look('lean', said('Stance'), said('It stands level; no leg or tyre lower than the other.')),
      look('puddles', said('Ground below'), said('No puddles or fresh stains of fuel, oil or brake fluid.')),
      look('tie-downs', said('Tie-downs and chocks'), said('Known which are on, and where.')),
    ),
    station(
      'cabin',
      look(
        'registration-paper',
        said('Registration'),
        said('Certificate aboard, not run out. 91.203(a)(2).'),
      ),
      look(
        'airworthiness-paper',
        said('Airworthiness certificate'),
        said('Aboard and where it can be read. 91.203(b).'),
      ),
      look(
        'operating-limitations',
        said('Operating limitations'),
        said('Flight manual or placards aboard. 91.9(b).'),
      ),
      look(
        'weight-and-balance',
        said('Weight and balance'),
        said('Data of this very aircraft aboard, with its equipment list.'),
      ),
      look('control-lock', said('Control lock'), said('Out; controls free and the right way round.')),
      look('switches-off', said('Switches'), said('Ignition and master off, mixture at cut-off.')),
      look('belts', said('Belts'), said('Whole, latch and let go.')),
      look('seats', said('Seats'), said('Lock in their rails; stops fitted.')),
      look('placards', said('Placards and markings'), said('There and readable.')),
      look('locator', said('Emergency locator transmitter'), said('Armed, no fault light.')),
      look('extinguisher', said('Fire extinguisher'), said('In its holder, in the green, in date.')),
      look('fuel-selector', said('Fuel selector'), said('Turns through all positions, stops at each.')),
      look('trim', said('Trim'), said('Moves freely; set for takeoff.')),
    ),
    station(
      'cabin-power-on',
      number(
        'battery-voltage',
        said('Battery voltage'),
        said('Before anything is switched on.'),
        'battery-voltage',
        'battery-weak',
      ),
      look('fuel-gauges', said('Fuel gauges'), said('Both move and show about what was tanked.')),
      look('lights', said('Lights'), said('Position, anti-collision and landing lights burn.')),
      look('pitot-heat', said('Pitot heat'), said('The tube warms; never hold it.')),
      look('stall-warning-sound', said('Stall warning'), said('Sounds when the vane is lifted.')),
      number('flap-angle', said('Flaps, full down'), said('Both sides run down evenly.'), 'flap-angle'),
      look('power-off', said('Power off'), said('Master off again.')),
    ),
    station(
      'left-rear-fuselage',
      look('left-rear-skin', said('Skin'), said('No dents, wrinkles, loose rivets.')),
      look('left-antennas', said('Antennas'), said('Firm, not cracked.')),
      look('left-rear-static', said('Static port'), said('Open and clean, if it is on this side.')),
      look('baggage-door', said('Baggage door'), said('Shut and locked; load tied down.')),
    ),
    station(
      'tail',
      look('tail-tie-down', said('Tail tie-down'), said('Off.')),
      look('elevator', said('Elevator'), said('Moves freely; hinges, bolts and cables secure.')),
      look('rudder', said('Rudder'), said('Hinges, bolts and cables secure.')),
      look('trim-tab', said('Trim tab'), said('Hinge and rod secure, no undue play.')),
      look('tail-light', said('Tail light'), said('Lens whole.')),
    ),
    station(
      'right-rear-fuselage',
      look('right-rear-skin', said('Skin'), said('No dents, wrinkles, loose rivets.')),
      look('right-antennas', said('Antennas'), said('Firm, not cracked.')),
      look('right-rear-static', said('Static port'), said('Open and clean, if it is on this side.')),
    ),
    station(
      'right-flap-aileron',
      look('right-flap', said('Right flap'), said('Tracks, rollers and rod secure, no cracks.')),
      look('right-aileron', said('Right aileron'), said('Hinges and rod secure, full travel, free.')),
      look('right-wicks', said('Static wicks'), said('All there, not bent.')),
    ),
    station(
      'right-tip-leading-edge',
      look('right-tip', said('Right tip'), said('Position light and lens whole, no cracks.')),
      look('right-leading-edge', said('Right leading edge'), said('No dents; clean, free of frost and ice.')),
      look('right-tie-down', said('Right tie-down'), said('Off.')),
    ),
    station(
      'right-wing-fuel',
      number(
        'right-tank',
        said('Fuel in the right tank'),
        said('Dipped, not read from the gauge.'),
        'fuel-in-right-tank',
      ),
      look('right-cap', said('Right cap'), said('Seal whole, cap tight.')),
      ...drains('R', 5),
    ),
    station(
      'right-main-gear',
      look('right-tyre', said('Right tyre'), said('Tread, cuts, flat spots; mark not slipped.')),
      mainTyrePressure('right'),
      look('right-brake', said('Right brake'), said('Disc and pads good, line dry.')),
      look('right-leg', said('Right leg and fairing'), said('No cracks, fairing firm.')),
    ),
    station(
      'nose-right',
      number(
        'oil-quantity',
        said('Oil on the dipstick'),
        said('Wipe, dip, read. More oil: add it and dip again.'),
        'oil-quantity',
        'oil-low',
      ),
      look('oil-cap', said('Oil cap'), said('Tight; no fresh oil around it.')),
      look('cowl-right', said('Cowl'), said('All fasteners there and locked.')),
      look('exhaust', said('Exhaust'), said('Firm; no cracks, no white or grey traces.')),
      ...drains('F', 3),
    ),
    station(
      'propeller',
      look('blades', said('Blades'), said('Both faces and edges: no nicks, no cracks. Never turn it.')),
      look('spinner', said('Spinner'), said('No cracks, all screws.')),
      look('belt', said('Belt'), said('Tight, not frayed.')),
      look('inlets', said('Inlets'), said('No nests, no rags; baffles whole.')),
      look('air-filter', said('Air filter'), said('Clean and seated.')),
    ),
    station(
      'nose-gear',
      look('nose-tyre', said('Nose tyre'), said('Tread, cuts; mark not slipped.')),
      number(
        'nose-tyre-pressure',
        said('Pressure, nose tyre'),
        said('Cold, with a gauge.'),
        'nose-tyre-pressure',
        'tyre-low',
      ),
      number(
        'nose-strut',
        said('Nose strut extension'),
        said('Piston showing, standing level and unloaded.'),
        'nose-strut-extension',
        'nose-strut-low',
      ),
      look('nose-leaks', said('Strut and damper'), said('Dry; shimmy damper firm.')),
      look('torque-links', said('Torque links'), said('No play, pins secured.')),
    ),
    station(
      'nose-left',
      look('nose-static', said('Static port'), said('Open and clean, if it is here.')),
      look('cowl-left', said('Cowl'), said('All fasteners there and locked.')),
      look('windshield', said('Windshield'), said('Clean, no cracks.')),
    ),
    station(
      'left-wing-fuel',
      number(
        'left-tank',
        said('Fuel in the left tank'),
        said('Dipped, not read from the gauge.'),
        'fuel-in-left-tank',
      ),
      look('left-cap', said('Left cap'), said('Seal whole, cap tight.')),
      look('vent', said('Fuel vent'), said('Open: no nest, no ice.')),
      ...drains('L', 5),
    ),
    station(
      'left-leading-edge',
      look('pitot', said('Pitot'), said('Cover off, open and straight.')),
      look('stall-vane', said('Stall warning vane'), said('Moves freely, not bent.')),
      look('landing-light', said('Landing light'), said('Lens whole.')),
      look('left-leading-edge', said('Left leading edge'), said('No dents; clean, free of frost and ice.')),
    ),
    station(
      'left-wing-and-gear',
      look('left-tip', said('Left tip'), said('Position light and lens whole; tie-down off.')),
      look('left-aileron', said('Left aileron'), said('Hinges and rod secure, full travel, free.')),
      look('left-flap', said('Left flap'), said('Tracks, rollers and rod secure, no cracks.')),
      look('left-tyre', said('Left tyre'), said('Tread, cuts, flat spots; mark not slipped.')),
      mainTyrePressure('left'),
      look(
        'left-brake',
        said('Left brake and leg'),
        said('Disc and pads good, line dry, leg without cracks.'),
      ),
    ),
    station(
      'last-look',
      look('caps', said('Caps'), said('Oil and both fuel caps on.')),
      look('covers', said('Covers and tow bar'), said('Off and stowed.')),
      look('doors', said('Doors'), said('Shut.')),
      look(
        'left-behind',
        said('Nothing left behind'),
        said('No sampler, rag or tool on wing, cowl or tail.'),
      ),
    ),
  ],
};
