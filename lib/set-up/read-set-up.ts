import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';
import { readFleet, type AircraftRow } from '../fleet/facts';
import { versionsInForce } from '../fleet/house-facts';
import { lackingOfFleet, type LackingOfAircraft } from '../fleet/read-lacking';
import { namesOf } from '../people/names';
import type { EnterAt } from '../rules/lacking';
import { CALLED_DONE, STEPS, stepState, WHOLE, type SetUpFacts, type StepId, type StepState } from './steps';

/** Who called something done (or not done after all), and when. */
export interface Mark {
  readonly done: boolean;
  readonly by: string;
  readonly at: string;
}

export interface StepView {
  readonly step: StepId;
  readonly state: StepState;
  /** Set for a step that only a person can call done. */
  readonly canBeCalled: boolean;
  readonly mark: Mark | null;
}

export interface SetUpView {
  /** The manager starts here until somebody has called the whole done. */
  readonly isOpen: boolean;
  readonly whole: Mark | null;
  readonly school: { readonly name: string; readonly part141: boolean | null };
  readonly facts: SetUpFacts;
  readonly steps: readonly StepView[];
  readonly lacking: readonly LackingOfAircraft[];
}

/** The path of setting up and what the engine still lacks, in one view. */
export const readSetUp = query({
  verb: 'set-up.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<SetUpView> {
    const fleet = await readFleet(tx);
    const lacking = lackingOfFleet(fleet, now);
    const marks = await newestMarks(tx, operatorId);
    const facts: SetUpFacts = {
      ...(await counts(tx, operatorId, fleet)),
      lacking: byPlace(lacking),
      calledDone: [...marks].filter(([, { done }]) => done).map(([step]) => step),
    };
    const whole = marks.get(WHOLE) ?? null;
    const school = await tx.operator.findUniqueOrThrow({
      where: { id: operatorId },
      select: { name: true, part141: true },
    });
    return {
      school,
      isOpen: whole !== null && !whole.done,
      whole,
      facts,
      lacking,
      steps: STEPS.map((step) => ({
        step,
        state: stepState(step, facts),
        canBeCalled: (CALLED_DONE as readonly StepId[]).includes(step),
        mark: marks.get(step) ?? null,
      })),
    };
  },
});

/** Whether the manager is still setting up. An operator that did not come by the set-up page (the demo) never was. */
export const readIsSettingUp = query({
  verb: 'set-up.read',
  input: z.object({}),
  async run({ tx, operatorId }): Promise<boolean> {
    const newest = await tx.setUpStep.findFirst({
      where: { operatorId, step: WHOLE },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      select: { done: true },
    });
    return newest !== null && !newest.done;
  },
});

async function newestMarks(tx: Tx, operatorId: string): Promise<ReadonlyMap<string, Mark>> {
  const rows = await tx.setUpStep.findMany({
    where: { operatorId },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const names = await namesOf(
    tx,
    rows.map(({ byId }) => byId),
  );
  // Later rows take the place of earlier ones.
  return new Map(
    rows.map(({ step, done, byId, at }) => [step, { done, by: names.get(byId) ?? '', at: at.toISOString() }]),
  );
}

async function counts(
  tx: Tx,
  operatorId: string,
  fleet: readonly AircraftRow[],
): Promise<Omit<SetUpFacts, 'lacking' | 'calledDone'>> {
  const ofOperator = { where: { operatorId } };
  const bases = await tx.base.findMany(ofOperator);
  const typesInUse = new Set(fleet.map(({ typeId }) => typeId));
  const lists = await tx.walkaroundPlan.findMany({
    ...ofOperator,
    select: { typeId: true },
    distinct: ['typeId'],
  });
  return {
    bases: bases.length,
    basesUnsaid: bases.filter(
      ({ transponderAirspace, adsbAirspace, controlledAirspace }) =>
        transponderAirspace === null || adsbAirspace === null || controlledAirspace === null,
    ).length,
    people: await tx.person.count({ where: { operatorId, leftOn: null } }),
    types: await tx.aircraftType.count(ofOperator),
    aircraft: fleet.length,
    aircraftWithEquipment: fleet.filter(({ equipment }) => equipment.length > 0).length,
    papersAndInspections: fleet.reduce((sum, row) => sum + row.papers.length + row.requirements.length, 0),
    typesInUse: typesInUse.size,
    typesWithOwnList: lists.filter(({ typeId }) => typesInUse.has(typeId)).length,
    houseRules: (await versionsInForce(tx)).length,
  };
}

function byPlace(fleet: readonly LackingOfAircraft[]): Partial<Record<EnterAt, number>> {
  const found: Partial<Record<EnterAt, number>> = {};
  for (const { enterAt } of fleet.flatMap(({ lacking }) => lacking))
    found[enterAt] = (found[enterAt] ?? 0) + 1;
  return found;
}
