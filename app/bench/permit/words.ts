import { said } from '@/lib/words/said';
import { type PermitStanding } from '@/lib/permits/read-permit';

/** What a permit is for, in the words of 21.197(a). */
export const PURPOSE_WORDS: Readonly<Record<string, string>> = {
  repair: said('To fly to a base for repair, alteration or maintenance (21.197(a)(1))'),
  storage: said('To fly to storage (21.197(a)(1))'),
  delivery: said('To deliver or export the aircraft (21.197(a)(2))'),
  evacuation: said('To evacuate from impending danger (21.197(a)(4))'),
};

/** Where a permit stands, as a tag says it: shape and word, never colour alone. */
export const STANDING: Readonly<
  Record<
    PermitStanding,
    { word: string; tone: 'green' | 'amber' | 'grey' | 'red'; shape: 'disc' | 'wedge' | 'tick' | 'block' }
  >
> = {
  ready: { word: said('Ready for its flight'), tone: 'green', shape: 'disc' },
  'inspection-owed': { word: said('Inspection owed'), tone: 'amber', shape: 'wedge' },
  'not-yet': { word: said('Not good yet'), tone: 'amber', shape: 'wedge' },
  over: { word: said('Over'), tone: 'red', shape: 'block' },
  used: { word: said('Used'), tone: 'grey', shape: 'tick' },
};
