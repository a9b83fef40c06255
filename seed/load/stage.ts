import type { ActorRef } from '../../lib/access/actor';
import type { Result } from '../../lib/problems';
import type { AircraftPlan, BasePlan, OperatorPlan } from '../shapes';
import * as ids from './ids';

/** The operator on whose stage the invented year is played: who is who, where things are, and what day it is. */
export interface Stage {
  readonly operator: OperatorPlan;
  readonly operatorId: string;
  readonly now: Date;
  readonly password: string;
  person(key: string): ActorRef;
  nameOf(key: string): string;
  aircraft(registration: string): AircraftPlan;
  baseOf(registration: string): BasePlan;
}

export function stageFor(operator: OperatorPlan, now: Date, password: string): Stage {
  const operatorId = ids.operatorId(operator.key);
  const personOf = (key: string) =>
    found(
      operator.people.find((person) => person.key === key),
      `person ${key}`,
    );
  const aircraft = (registration: string) =>
    found(
      operator.aircraft.find((one) => one.registration === registration),
      registration,
    );
  return {
    operator,
    operatorId,
    now,
    password,
    aircraft,
    person: (key) => ({
      personId: ids.personId(operator.key, personOf(key).key),
      operatorId,
      sessionVersion: 1,
    }),
    nameOf: (key) => personOf(key).name,
    baseOf(registration) {
      const { base } = aircraft(registration);
      return found(
        operator.bases.find((one) => one.key === base),
        `base ${base}`,
      );
    },
  };
}

function found<T>(thing: T | undefined, what: string): T {
  if (thing === undefined) throw new Error(`The demo's data name ${what}, which they do not hold.`);
  return thing;
}

/** One thing that happened at a moment. All of them are played in order of time. */
export interface Happening {
  readonly at: Date;
  readonly what: string;
  play(): Promise<void>;
}

/** The value of a command that has to succeed; anything else stops the loading and says what was refused. */
export function granted<T>(result: Result<T>, what: string): T {
  if (result.ok) return result.value;
  throw new Error(`The demo was refused: ${what}. ${JSON.stringify(result.problem)}`);
}

/** A command that has to be refused as a signature the law does not give. */
export function refused<T>(result: Result<T>, what: string): void {
  if (!result.ok && result.problem.code === 'signature_refused') return;
  const came = result.ok ? 'granted' : JSON.stringify(result.problem);
  throw new Error(`The demo expected a refused signature: ${what}. It was ${came}.`);
}
