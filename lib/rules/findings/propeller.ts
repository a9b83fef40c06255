import { finding, major, minor, type CatalogueFinding } from './finding';
import { said } from '../said';

/**
 * Findings at the propeller. Blade conditions were read in copies of AC 43.13-1B chapter 8, in the text of AC 20-37E and
 * in one maker's manual; proposed course and usual action are our design.
 */

const NICK = [
  { key: 'propeller-nick-depth', role: 'needed' },
  { key: 'propeller-nick-width', role: 'needed' },
  { key: 'propeller-nick-length', role: 'described' },
  { key: 'propeller-nick-from-tip', role: 'described' },
] as const;

export const PROPELLER: readonly CatalogueFinding[] = [
  finding('propeller-nick', {
    title: said('Propeller nick, deep or sharp'),
    jasc: '6111',
    kind: 'damage',
    station: 'propeller',
    usualAction: said(
      'A powerplant mechanic dresses it inside the maker’s limits and looks for cracks with a loupe.',
    ),
    measurements: NICK,
    proposed: 'ground',
    work: [minor('propeller', 'Dress the nick')],
    cite: 'ac20-37e',
    status: 'checked',
    source: 'training text: nicks are repaired before flight; limits differ by maker',
  }),
  finding('propeller-erosion', {
    title: said('Small propeller nick or worn edge'),
    jasc: '6111',
    kind: 'wear',
    station: 'propeller',
    usualAction: said(
      'Measure and record; a powerplant mechanic compares with the maker’s limits and dresses it.',
    ),
    measurements: NICK,
    proposed: 'hold',
    work: [minor('propeller', 'Dress the edge')],
    cite: 'ac20-37e',
    status: 'checked',
    source: 'one maker’s manual accepts rounded erosion; others may not',
  }),
  finding('propeller-bent', {
    title: said('Blade bent or propeller struck something'),
    jasc: '6110',
    kind: 'damage',
    station: 'propeller',
    usualAction: said(
      'Propeller off to a propeller repair station; strike inspection of the engine. Never straighten it here.',
    ),
    proposed: 'ground',
    work: [
      major('propeller', 'Repair of the propeller'),
      minor('powerplant', 'Strike inspection of the engine'),
    ],
    cite: 'ac43.13-1b',
    status: 'checked',
    source: 'AC 43.13-1B 8-73',
  }),
  finding('propeller-crack', {
    title: said('Crack in a propeller blade'),
    jasc: '6111',
    kind: 'damage',
    station: 'propeller',
    usualAction: said('The blade is finished; a serviceable propeller is fitted.'),
    proposed: 'ground',
    work: [
      minor('propeller', 'Fit a serviceable propeller'),
      major('propeller', 'Replace the blade at a repair station'),
    ],
    cite: 'ac43.13-1b',
    status: 'checked',
    source: 'study cards on AC 43.13-1B chapter 8: any crack across the blade rejects it',
  }),
  finding('spinner-cracked', {
    title: said('Spinner cracked or loose'),
    jasc: '6113',
    kind: 'damage',
    station: 'propeller',
    usualAction: said('Replace it, with its bulkhead if that is cracked.'),
    proposed: 'ground',
    work: [minor('propeller', 'Replace the spinner')],
    status: 'memory',
    source: 'flying handbook, from memory',
  }),
  finding('propeller-hub-leak', {
    title: said('Grease or oil at the propeller hub'),
    jasc: '6114',
    kind: 'leak',
    station: 'propeller',
    usualAction: said('Reseal at a propeller repair station, then refit.'),
    proposed: 'ground',
    work: [major('propeller', 'Reseal the hub'), minor('propeller', 'Refit the propeller')],
    cite: 'ac20-37e',
    status: 'memory',
    source: 'AC 20-37E, from memory',
  }),
];
