import type { EquipmentFunction } from '../aircraft';

/**
 * Codes that name one piece of equipment and no other, for write-ups outside the catalogue. Codes that cover several
 * (3340, all outside lights) are left out on purpose: then a person says which. Our own design.
 */
const BY_JASC: Readonly<Record<string, EquipmentFunction>> = {
  '2140': 'cabin-heat',
  '2210': 'autopilot',
  '2312': 'two-way-radio',
  '2340': 'intercom',
  '2350': 'intercom',
  '2434': 'generator',
  '2562': 'elt',
  '2622': 'fire-extinguisher',
  '2750': 'flaps',
  '2841': 'fuel-quantity-gauge',
  '3030': 'pitot-heat',
  '3120': 'clock',
  '3310': 'instrument-lights',
  '3413': 'other',
  '3414': 'airspeed-indicator',
  '3416': 'altimeter',
  '3418': 'stall-warning',
  '3421': 'attitude-indicator',
  '3422': 'heading-gyro',
  '3423': 'magnetic-direction-indicator',
  '3424': 'rate-of-turn-indicator',
  '3451': 'dme',
  '3452': 'transponder',
  '3454': 'vor-receiver',
  '3457': 'gps-navigator',
  '3700': 'vacuum-pump',
  '3720': 'vacuum-gauge',
  '7713': 'manifold-pressure-gauge',
  '7714': 'tachometer',
  '7931': 'oil-pressure-gauge',
  '7933': 'oil-temperature-gauge',
};

/** The equipment a code names, or null where it names several or none. */
export const equipmentByJasc = (jasc: string): EquipmentFunction | null => BY_JASC[jasc] ?? null;
