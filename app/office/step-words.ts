import { said } from '@/lib/words/said';
import { type StepId } from '@/lib/set-up/steps';

interface StepWords {
  readonly title: string;
  /** What it is for, in one sentence. */
  readonly lead: string;
  readonly href: string;
  readonly link: string;
  /** On the button, where only a person can call it done. */
  readonly call?: string;
}

export const STEP_WORDS: Record<StepId, StepWords> = {
  bases: {
    title: said('Bases'),
    lead: said(
      'Position, time zone and airspace decide when it is night there and what a local flight needs.',
    ),
    href: '/desk/bases',
    link: said('To the bases'),
  },
  people: {
    title: said('People'),
    lead: said(
      'Everybody who flies, mends or dispatches, with roles and certificates: who may sign is worked out from them.',
    ),
    href: '/office/people',
    link: said('To the people'),
    call: said('Everybody is here'),
  },
  types: {
    title: said('Aircraft types'),
    lead: said(
      'What the law asks of an aircraft hangs on its type: certification date, weight, engine, seats.',
    ),
    href: '/office/fleet',
    link: said('To the types'),
  },
  aircraft: {
    title: said('Aircraft'),
    lead: said('Each aircraft with its type, base and time in service.'),
    href: '/office/fleet',
    link: said('To the aircraft'),
  },
  equipment: {
    title: said('Equipment'),
    lead: said(
      'What is installed and what is required, item by item, confirmed against the aircraft’s own documents.',
    ),
    href: '/office/fleet',
    link: said('To the equipment'),
  },
  papers: {
    title: said('Papers and inspections'),
    lead: said(
      'What must be aboard, when each inspection was last done, which directives apply, and what is still open from before.',
    ),
    href: '/office/history',
    link: said('To papers and inspections'),
  },
  walkaround: {
    title: said('Walkaround'),
    lead: said(
      'What the pilot looks at before a flight, type by type; without a list of its own a type is walked by the starting list.',
    ),
    href: '/desk/walkarounds',
    link: said('To the walkaround lists'),
    call: said('The lists are right'),
  },
  'house-rules': {
    title: said('Rules of the house'),
    lead: said('Where this school is stricter than the law, the engine keeps to that too.'),
    href: '/office/rules',
    link: said('To the rules of the house'),
    call: said('No more rules are wanted'),
  },
};
