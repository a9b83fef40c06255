import type { JascChapter } from './jasc';

/**
 * Codes of the Joint Aircraft System/Component table, chapters 61 to 85, with titles in plain case.
 * Made once from the project's reference list, which lists the chapters this fleet's piston aircraft need. Which
 * of them were checked is said in `jasc.ts`. The last column, the part of the aircraft, is our own (design).
 */
export const JASC_61_TO_85: readonly JascChapter[] = [
  {
    title: 'Propellers/Propulsors',
    codes: [
      ['6100', 'Propeller System', 'propeller'],
      ['6110', 'Propeller Assembly', 'propeller'],
      ['6111', 'Propeller Blade Section', 'propeller'],
      ['6112', 'Propeller De-Ice Boot Section', 'propeller'],
      ['6113', 'Propeller Spinner Section', 'propeller'],
      ['6114', 'Propeller Hub Section', 'propeller'],
      ['6120', 'Propeller Controlling System', 'propeller'],
      ['6122', 'Propeller Governor', 'propeller'],
    ],
  },
  {
    title: 'Powerplant',
    codes: [
      ['7100', 'Powerplant System', 'powerplant'],
      ['7110', 'Engine Cowling System', 'powerplant'],
      ['7111', 'Engine Cowl Flaps', 'powerplant'],
      ['7112', 'Engine Air Baffle Section', 'powerplant'],
      ['7120', 'Engine Mount Section', 'powerplant'],
      ['7130', 'Engine Fireseals', 'powerplant'],
      ['7160', 'Engine Air Intake System', 'powerplant'],
      ['7170', 'Engine Drains', 'powerplant'],
    ],
  },
  {
    title: 'Engine Fuel and Control',
    codes: [
      ['7300', 'Engine Fuel and Control', 'powerplant'],
      ['7310', 'Engine Fuel Distribution', 'powerplant'],
      ['7313', 'Fuel Injector Nozzle', 'powerplant'],
      ['7314', 'Engine Fuel Pump', 'powerplant'],
      ['7320', 'Fuel Controlling System', 'powerplant'],
      ['7322', 'Fuel Control/Carburetor', 'powerplant'],
      ['7324', 'Fuel Divider', 'powerplant'],
      ['7330', 'Engine Fuel Indicating System', 'instrument'],
      ['7331', 'Fuel Flow Indicating', 'instrument'],
      ['7332', 'Fuel Pressure Indicating', 'instrument'],
    ],
  },
  {
    title: 'Ignition',
    codes: [
      ['7400', 'Ignition System', 'powerplant'],
      ['7414', 'Magneto/Distributor', 'powerplant'],
      ['7420', 'Ignition Harness (Distribution)', 'powerplant'],
      ['7421', 'Spark Plug/Igniter', 'powerplant'],
      ['7430', 'Ignition/Starter Switching', 'powerplant'],
    ],
  },
  {
    title: 'Engine Controls',
    codes: [
      ['7600', 'Engine Controls', 'powerplant'],
      ['7602', 'Mixture Control', 'powerplant'],
      ['7603', 'Power Lever', 'powerplant'],
    ],
  },
  {
    title: 'Engine Indicating',
    codes: [
      ['7700', 'Engine Indicating System', 'instrument'],
      ['7713', 'Manifold Pressure (MP) Indicating', 'instrument'],
      ['7714', 'Engine RPM Indicating System', 'instrument'],
      ['7720', 'Engine Temperature Indicating System', 'instrument'],
      ['7721', 'Cylinder Head Temperature Indicating', 'instrument'],
      ['7722', 'Engine EGT/TIT Indicating System', 'instrument'],
    ],
  },
  {
    title: 'Engine Exhaust',
    codes: [
      ['7800', 'Engine Exhaust System', 'powerplant'],
      ['7810', 'Engine Collector/Tailpipe/Nozzle', 'powerplant'],
      ['7820', 'Engine Noise Suppressor', 'powerplant'],
    ],
  },
  {
    title: 'Engine Oil',
    codes: [
      ['7900', 'Engine Oil System (Airframe)', 'powerplant'],
      ['7910', 'Engine Oil Storage (Airframe)', 'powerplant'],
      ['7920', 'Engine Oil Distribution (Airframe)', 'powerplant'],
      ['7921', 'Engine Oil Cooler', 'powerplant'],
      ['7922', 'Engine Oil Temperature Regulator', 'powerplant'],
      ['7930', 'Engine Oil Indicating System', 'instrument'],
      ['7931', 'Engine Oil Pressure', 'instrument'],
      ['7932', 'Engine Oil Quantity', 'instrument'],
      ['7933', 'Engine Oil Temperature', 'instrument'],
    ],
  },
  {
    title: 'Starting',
    codes: [
      ['8000', 'Engine Starting System', 'powerplant'],
      ['8010', 'Engine Cranking', 'powerplant'],
      ['8011', 'Engine Starter', 'powerplant'],
    ],
  },
  {
    title: 'Turbines',
    codes: [
      ['8100', 'Exhaust Turbine System (Reciprocating)', 'powerplant'],
      ['8120', 'Exhaust Turbocharger', 'powerplant'],
    ],
  },
  {
    title: 'Reciprocating Engine',
    codes: [
      ['8500', 'Engine (Reciprocating)', 'powerplant'],
      ['8510', 'Reciprocating Engine Front Section', 'powerplant'],
      ['8520', 'Reciprocating Engine Power Section', 'powerplant'],
      ['8530', 'Reciprocating Engine Cylinder Section', 'powerplant'],
      ['8540', 'Reciprocating Engine Rear Section', 'powerplant'],
      ['8550', 'Reciprocating Engine Oil System', 'powerplant'],
      ['8560', 'Reciprocating Engine Supercharger', 'powerplant'],
      ['8570', 'Reciprocating Engine Liquid Cooling', 'powerplant'],
    ],
  },
];
