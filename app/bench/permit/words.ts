import { type PermitStanding } from '@/lib/permits/read-permit';

/** What a permit is for, in the words of 21.197(a). */
export const PURPOSE_WORDS: Readonly<Record<string, string>> = {
  repair: 'To fly to a base for repair, alteration or maintenance (21.197(a)(1))',
  storage: 'To fly to storage (21.197(a)(1))',
  delivery: 'To deliver or export the aircraft (21.197(a)(2))',
  evacuation: 'To evacuate from impending danger (21.197(a)(4))',
};

/** Where a permit stands, as a tag says it: shape and word, never colour alone. */
export const STANDING: Readonly<
  Record<
    PermitStanding,
    { word: string; tone: 'green' | 'amber' | 'grey' | 'red'; shape: 'disc' | 'wedge' | 'tick' | 'block' }
  >
> = {
  ready: { word: 'Ready for its flight', tone: 'green', shape: 'disc' },
  'inspection-owed': { word: 'Inspection owed', tone: 'amber', shape: 'wedge' },
  'not-yet': { word: 'Not good yet', tone: 'amber', shape: 'wedge' },
  over: { word: 'Over', tone: 'red', shape: 'block' },
  used: { word: 'Used', tone: 'grey', shape: 'tick' },
};
