/** How far setting up is. Source: issue 6, "set-up is done when the engine stops asking"; the steps are ours. */
import { describe, expect, it } from 'vitest';
import { STEPS, stepState, type SetUpFacts, type StepId, type StepState } from '@/lib/set-up/steps';

const EMPTY: SetUpFacts = {
  bases: 0,
  basesUnsaid: 0,
  people: 1,
  types: 0,
  aircraft: 0,
  aircraftWithEquipment: 0,
  papersAndInspections: 0,
  typesInUse: 0,
  typesWithOwnList: 0,
  houseRules: 0,
  lacking: {},
  calledDone: [],
};
const FULL: SetUpFacts = {
  bases: 1,
  basesUnsaid: 0,
  people: 6,
  types: 2,
  aircraft: 3,
  aircraftWithEquipment: 3,
  papersAndInspections: 30,
  typesInUse: 2,
  typesWithOwnList: 2,
  houseRules: 1,
  lacking: {},
  calledDone: ['people'],
};

it('nothing has begun where there is nothing, though the engine asks for nothing', () => {
  expect(STEPS.map((step) => stepState(step, EMPTY))).toEqual(STEPS.map(() => 'not-started'));
});

it('all is done where all is there', () => {
  expect(STEPS.map((step) => stepState(step, FULL))).toEqual(STEPS.map(() => 'done'));
});

describe('one step, with one thing different', () => {
  it.each<[StepId, Partial<SetUpFacts>, StepState]>([
    ['bases', { basesUnsaid: 1 }, 'begun'],
    ['bases', { lacking: { base: 1 } }, 'begun'],
    ['people', { calledDone: [] }, 'begun'],
    ['people', { calledDone: [], people: 1 }, 'not-started'],
    ['people', { people: 1 }, 'done'],
    ['types', { lacking: { type: 1 } }, 'begun'],
    // A type that no aircraft has is not asked about, so nobody knows yet.
    ['types', { typesInUse: 0 }, 'begun'],
    ['aircraft', { lacking: { aircraft: 1 } }, 'begun'],
    ['aircraft', { lacking: { operator: 1 } }, 'begun'],
    ['aircraft', { lacking: { type: 4, equipment: 9 } }, 'done'],
    ['equipment', { aircraftWithEquipment: 2 }, 'begun'],
    ['equipment', { lacking: { equipment: 1 } }, 'begun'],
    ['papers', { lacking: { papers: 1 } }, 'begun'],
    ['papers', { lacking: { requirements: 1 } }, 'begun'],
    ['papers', { lacking: { directives: 1 } }, 'begun'],
    ['papers', { lacking: { mel: 1 } }, 'begun'],
    ['walkaround', { typesWithOwnList: 1 }, 'begun'],
    ['walkaround', { typesWithOwnList: 0 }, 'not-started'],
    ['walkaround', { typesWithOwnList: 0, calledDone: ['walkaround'] }, 'done'],
    ['house-rules', { houseRules: 0 }, 'not-started'],
    ['house-rules', { houseRules: 0, calledDone: ['house-rules'] }, 'done'],
  ])('%s with %j is %s', (step, different, expected) => {
    expect(stepState(step, { ...FULL, ...different })).toBe(expected);
  });

  it('nobody can call a step done that the facts tell about', () => {
    const claimed = { ...EMPTY, calledDone: [...STEPS] };
    expect(stepState('equipment', claimed)).toBe('not-started');
    expect(stepState('papers', { ...claimed, papersAndInspections: 1, lacking: { papers: 1 } })).toBe(
      'begun',
    );
  });
});
