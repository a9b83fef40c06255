import type { JascChapter } from './jasc';

/**
 * Codes of the Joint Aircraft System/Component table, chapters 11 to 31, with titles in plain case.
 * Made once from the project's reference list, which lists the chapters this fleet's piston aircraft need. Which
 * of them were checked is said in `jasc.ts`. The last column, the part of the aircraft, is our own (design).
 */
export const JASC_11_TO_31: readonly JascChapter[] = [
  {
    title: 'Placards and Markings',
    codes: [['1100', 'Placards and Markings', 'airframe']],
  },
  {
    title: 'Servicing',
    codes: [
      ['1210', 'Fuel Servicing', 'airframe'],
      ['1220', 'Oil Servicing', 'airframe'],
      ['1230', 'Hydraulic Fluid Servicing', 'airframe'],
      ['1240', 'Coolant Servicing', 'airframe'],
    ],
  },
  {
    title: 'Hardware',
    codes: [
      ['1400', 'Miscellaneous Hardware', 'airframe'],
      ['1410', 'Hoses and Tubes', 'airframe'],
      ['1420', 'Electrical Connectors', 'airframe'],
      ['1430', 'Fasteners', 'airframe'],
      ['1497', 'Miscellaneous Wiring', 'airframe'],
    ],
  },
  {
    title: 'Air Conditioning',
    codes: [
      ['2100', 'Air Conditioning System', 'airframe'],
      ['2120', 'Air Distribution System', 'airframe'],
      ['2121', 'Air Distribution Fan', 'airframe'],
      ['2140', 'Heating System', 'airframe'],
      ['2150', 'Cabin Cooling System', 'airframe'],
      ['2160', 'Cabin Temperature Control System', 'airframe'],
    ],
  },
  {
    title: 'Auto Flight',
    codes: [
      ['2200', 'Auto Flight System', 'avionics'],
      ['2210', 'Autopilot System', 'avionics'],
      ['2211', 'Autopilot Computer', 'avionics'],
      ['2212', 'Altitude Controller', 'avionics'],
      ['2213', 'Flight Controller', 'avionics'],
      ['2214', 'Autopilot Trim Indicator', 'avionics'],
      ['2215', 'Autopilot Main Servo', 'avionics'],
      ['2216', 'Autopilot Trim Servo', 'avionics'],
    ],
  },
  {
    title: 'Communications',
    codes: [
      ['2300', 'Communications System', 'avionics'],
      ['2312', 'VHF Communication System', 'avionics'],
      ['2340', 'Interphone/Passenger PA System', 'avionics'],
      ['2350', 'Audio Integrating System', 'avionics'],
      ['2360', 'Static Discharge System', 'avionics'],
      ['2397', 'Communication System Wiring', 'avionics'],
    ],
  },
  {
    title: 'Electrical Power',
    codes: [
      ['2400', 'Electrical Power System', 'airframe'],
      ['2410', 'Alternator-Generator Drive', 'airframe'],
      ['2420', 'AC Generation System', 'airframe'],
      ['2421', 'AC Generator-Alternator', 'airframe'],
      ['2430', 'DC Generating System', 'airframe'],
      ['2432', 'Battery/Charger System', 'airframe'],
      ['2434', 'DC Generator-Alternator', 'airframe'],
      ['2436', 'DC Regulator', 'airframe'],
      ['2437', 'DC Indicating System', 'instrument'],
      ['2440', 'External Power System', 'airframe'],
      ['2460', 'DC Power/Distribution System', 'airframe'],
      ['2497', 'Electrical Power System Wiring', 'airframe'],
    ],
  },
  {
    title: 'Equipment/Furnishings',
    codes: [
      ['2500', 'Cabin Equipment/Furnishings', 'airframe'],
      ['2510', 'Flight Compartment Equipment', 'airframe'],
      ['2520', 'Passenger Compartment Equipment', 'airframe'],
      ['2550', 'Cargo Compartments', 'airframe'],
      ['2560', 'Emergency Equipment', 'airframe'],
      ['2561', 'Life Jacket', 'airframe'],
      ['2562', 'Emergency Locator Beacon', 'airframe'],
      ['2564', 'Life Raft', 'airframe'],
      ['2571', 'Battery Box Structure', 'airframe'],
    ],
  },
  {
    title: 'Fire Protection',
    codes: [
      ['2600', 'Fire Protection System', 'airframe'],
      ['2620', 'Extinguishing System', 'airframe'],
      ['2622', 'Fire Bottle, Portable', 'airframe'],
    ],
  },
  {
    title: 'Flight Controls',
    codes: [
      ['2700', 'Flight Control System', 'airframe'],
      ['2701', 'Control Column Section', 'airframe'],
      ['2710', 'Aileron Control System', 'airframe'],
      ['2711', 'Aileron Tab Control System', 'airframe'],
      ['2720', 'Rudder Control System', 'airframe'],
      ['2721', 'Rudder Tab Control System', 'airframe'],
      ['2730', 'Elevator Control System', 'airframe'],
      ['2731', 'Elevator Tab Control System', 'airframe'],
      ['2740', 'Stabilizer Control System', 'airframe'],
      ['2741', 'Stabilizer Position Indicating', 'instrument'],
      ['2750', 'TE Flap Control System', 'airframe'],
      ['2751', 'TE Flap Position Indicating System', 'instrument'],
      ['2752', 'TE Flap Actuator', 'airframe'],
      ['2770', 'Gust Lock/Damper System', 'airframe'],
      ['2797', 'Flight Control System Wiring', 'airframe'],
    ],
  },
  {
    title: 'Fuel',
    codes: [
      ['2800', 'Aircraft Fuel System', 'airframe'],
      ['2810', 'Fuel Storage', 'airframe'],
      ['2820', 'Aircraft Fuel Distribution System', 'airframe'],
      ['2821', 'Aircraft Fuel Filter/Strainer', 'airframe'],
      ['2822', 'Fuel Boost Pump', 'airframe'],
      ['2823', 'Fuel Selector/Shut-Off Valve', 'airframe'],
      ['2840', 'Aircraft Fuel Indicating System', 'instrument'],
      ['2841', 'Fuel Quantity Indicator', 'instrument'],
      ['2842', 'Fuel Quantity Sensor', 'instrument'],
      ['2844', 'Fuel Pressure Indicator', 'instrument'],
      ['2897', 'Fuel System Wiring', 'airframe'],
    ],
  },
  {
    title: 'Hydraulic Power',
    codes: [['2900', 'Hydraulic Power System', 'airframe']],
  },
  {
    title: 'Ice and Rain Protection',
    codes: [
      ['3000', 'Ice/Rain Protection System', 'airframe'],
      ['3030', 'Pitot/Static Anti-Ice System', 'airframe'],
      ['3040', 'Windshield/Door Rain/Ice Removal', 'airframe'],
      ['3060', 'Propeller/Rotor Anti-Ice/De-Ice System', 'airframe'],
    ],
  },
  {
    title: 'Instruments',
    codes: [
      ['3100', 'Indicating/Recording System', 'instrument'],
      ['3110', 'Instrument Panel', 'instrument'],
      ['3120', 'Independent Instruments (Clock, etc.)', 'instrument'],
      ['3150', 'Central Warning', 'instrument'],
      ['3160', 'Central Display', 'instrument'],
      ['3197', 'Instrument System Wiring', 'instrument'],
    ],
  },
];
