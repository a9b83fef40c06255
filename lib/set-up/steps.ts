/**
 * The path of setting up, and how far each step of it is. What can be read from the facts is; nobody ticks off what the engine
 * still asks for. Pure.
 */
import type { EnterAt } from '../rules/lacking';

/** In the order in which a manager goes through them. */
export const STEPS = [
  'bases',
  'people',
  'types',
  'aircraft',
  'equipment',
  'papers',
  'walkaround',
  'house-rules',
] as const;
export type StepId = (typeof STEPS)[number];
export type StepState = 'not-started' | 'begun' | 'done';

/** Steps which only a person can call done: the facts cannot tell whether everybody is there, or no rule is wanted. */
export const CALLED_DONE = ['people', 'walkaround', 'house-rules'] as const satisfies readonly StepId[];

/** All of it. Until somebody calls it done, the manager starts at the office. */
export const WHOLE = 'all';

/** What the steps are read from. */
export interface SetUpFacts {
  readonly bases: number;
  /** Bases of which it is not said in which airspace they lie. */
  readonly basesUnsaid: number;
  readonly people: number;
  readonly types: number;
  readonly aircraft: number;
  /** Aircraft with an equipment list. */
  readonly aircraftWithEquipment: number;
  readonly papersAndInspections: number;
  /** Types of the aircraft there are, and those of them that have a walkaround list of their own. */
  readonly typesInUse: number;
  readonly typesWithOwnList: number;
  readonly houseRules: number;
  /** How many facts the engine lacks, by where they are entered. */
  readonly lacking: Readonly<Partial<Record<EnterAt, number>>>;
  /** Steps somebody called done, and did not take back. */
  readonly calledDone: readonly string[];
}

const state = (begun: boolean, done: boolean): StepState =>
  !begun ? 'not-started' : done ? 'done' : 'begun';

/** How far a step is. A step without anything in it has not begun, whatever the engine does not ask. */
export function stepState(step: StepId, facts: SetUpFacts): StepState {
  const asks = (...places: EnterAt[]): boolean => places.some((place) => (facts.lacking[place] ?? 0) > 0);
  const called = facts.calledDone.includes(step);
  switch (step) {
    case 'bases':
      return state(facts.bases > 0, facts.basesUnsaid === 0 && !asks('base'));
    case 'people':
      return called ? 'done' : state(facts.people > 1, false);
    case 'types':
      // The engine asks about the type of an aircraft, so a type that none has is not asked about yet.
      return state(facts.types > 0, facts.typesInUse > 0 && !asks('type'));
    case 'aircraft':
      return state(facts.aircraft > 0, !asks('aircraft', 'operator'));
    case 'equipment':
      return state(
        facts.aircraftWithEquipment > 0,
        facts.aircraftWithEquipment === facts.aircraft && !asks('equipment'),
      );
    case 'papers':
      return state(facts.papersAndInspections > 0, !asks('papers', 'requirements', 'directives', 'mel'));
    case 'walkaround':
      if (called) return 'done';
      return state(
        facts.typesWithOwnList > 0,
        facts.typesInUse > 0 && facts.typesWithOwnList === facts.typesInUse,
      );
    case 'house-rules':
      return called ? 'done' : state(facts.houseRules > 0, facts.houseRules > 0);
  }
}
