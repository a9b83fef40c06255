import type { FindingKind } from '../aircraft';
import { known, type Fact } from '../facts';
import { partOf } from '../jasc';
import { asks91_213, undecided, type Course } from './course';
import { KIND_TITLES } from './kinds';

/** Outside the catalogue nothing is known of it but its kind and code, so almost everything stays undecided. */
export function courseOfSomethingElse(kind: Fact<FindingKind>, jasc: Fact<string>): Course {
  if (!kind.known) return undecided(kind.missing);
  switch (kind.value) {
    case 'inoperative':
      if (!jasc.known) return undecided(jasc.missing, 'deferral-or-repair');
      return {
        severity: known('limiting'),
        settledBy: 'deferral-or-repair',
        reasons: [asks91_213('Name it on the equipment list.')],
      };
    case 'cosmetic':
      return cosmetic(jasc);
    case 'damage':
    case 'wear':
    case 'leak':
    case 'contamination':
    case 'fastener':
    case 'document':
      return undecided(`what a mechanic finds on looking (${KIND_TITLES[kind.value].toLowerCase()})`);
    case 'servicing':
      return undecided('what needs servicing, and whether a pilot may do it');
  }
}

/**
 * A reporter's "only cosmetic" is a note where a mistake costs little. On the propeller, the controls and their surfaces,
 * the landing gear, the windows and the exhaust it is not taken on trust (design).
 */
function cosmetic(jasc: Fact<string>): Course {
  if (!jasc.known) return undecided(jasc.missing);
  const part = partOf(jasc.value);
  const chapter = jasc.value.slice(0, 2);
  if (!part.known || part.value === 'propeller' || ['27', '32', '55', '56', '57', '78'].includes(chapter))
    return undecided('whether a mechanic agrees that it is cosmetic, at this place');
  return {
    severity: known('note'),
    settledBy: 'anyone',
    reasons: [
      {
        effect: 'notes',
        cite: '14cfr91.7(b)',
        because: 'Reported as cosmetic. The pilot in command judges the condition.',
      },
    ],
  };
}
