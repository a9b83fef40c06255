import { said } from '@/lib/words/said';
import { mayUse, type Role, type Verb } from '@/lib/access/policy';

export interface PlaceToWork {
  readonly href: '/ramp' | '/bench' | '/desk' | '/office';
  readonly label: string;
}

const PLACES: readonly (PlaceToWork & { readonly verb: Verb })[] = [
  { href: '/ramp', label: said('Ramp'), verb: 'finding.report' },
  { href: '/bench', label: said('Bench'), verb: 'bench.read' },
  { href: '/desk', label: said('Desk'), verb: 'flight.release' },
  { href: '/office', label: said('Office'), verb: 'set-up.read' },
];

/** Where somebody with these roles works. Only saves a walk to a closed door: each door checks for itself. */
export const placesFor = (roles: readonly Role[]): readonly PlaceToWork[] =>
  PLACES.filter((place) => mayUse(roles, place.verb)).map(({ href, label }) => ({ href, label }));

/** Whoever holds several roles starts where the pressing work comes in. */
const START: readonly [Role, PlaceToWork['href']][] = [
  ['dispatcher', '/desk'],
  ['mechanic', '/bench'],
  ['manager', '/desk'],
  ['pilot', '/ramp'],
];

/** The first screen after signing in. While somebody is still setting up, that is where a manager goes on. */
export const startFor = (roles: readonly Role[], isSettingUp = false): PlaceToWork['href'] =>
  isSettingUp && roles.includes('manager')
    ? '/office'
    : (START.find(([role]) => roles.includes(role))?.[1] ?? '/ramp');
