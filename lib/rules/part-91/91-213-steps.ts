/**
 * 14 CFR 91.213(d)(3), (d)(4), and (a)(4), (a)(5) with a minimum equipment list: the steps somebody has to take before
 * an item counts as deferred.
 *
 * (d)(3)(i) Removed, cockpit control placarded, work recorded under 43.9.
 * (d)(3)(ii) Or deactivated and placarded "Inoperative"; recorded under part 43 where deactivating is maintenance.
 *   Deactivated means that nobody can make it work from the cockpit; a placard alone is not enough (AC 91-67).
 * (d)(4) Determined to be no hazard to the aircraft by a pilot certificated and appropriately rated under part 61, or by
 *   a person certificated and appropriately rated to maintain the aircraft. A student pilot certificate carries no
 *   rating and does not do.
 * 91.207(f)(10)(i) A removed emergency locator transmitter is recorded in five fields.
 * (a)(4) Described in the aircraft records. (a)(5) Placard and procedures of the list.
 */
import type { DeferralFacts, DeterminerFacts, MelItemFacts } from '../aircraft';
import type { CalendarDate } from '../facts';
import { dayInWords } from '../in-words';
import type { CiteId } from '../law';
import type { Line, Subject } from '../verdict';

export type StepId =
  | 'record'
  | 'remove-or-deactivate'
  | 'part-43-record'
  | 'placard'
  | 'elt-removal-record'
  | 'determination'
  | 'mel-procedures';

/** One step owed for a deferral. `text` tells what is to be done, or what is wrong with what was done. */
export interface StepOwed {
  readonly id: StepId;
  readonly cite: CiteId;
  readonly text: string;
  readonly done: boolean;
  /** The fact that is missing, when nobody has said whether the step was taken. */
  readonly missing?: string;
}

/** (d)(3) and (d)(4) for an item called `name`, in the order in which they are taken. */
export function stepsWithoutMel(name: string, deferral: DeferralFacts | null): readonly StepOwed[] {
  return [
    removeOrDeactivate(name, deferral),
    ...recordAndPlacard(name, deferral),
    ...eltRemovalRecord(deferral),
    determination(name, deferral),
  ];
}

/** (a)(4) and (a)(5) for an item called `name` under an entry of the list. */
export function stepsWithMel(
  name: string,
  entry: MelItemFacts,
  deferral: DeferralFacts | null,
): readonly StepOwed[] {
  const record: StepOwed = {
    id: 'record',
    cite: '14cfr91.213(a)(4)',
    text: `Describe ${name} as inoperative in the aircraft records that the pilot can see.`,
    done: deferral !== null,
  };
  const steps = [record, ...recordAndPlacard(name, deferral)];
  const procedures = [
    entry.operatingProcedure === null ? null : `(O) ${entry.operatingProcedure}`,
    entry.maintenanceProcedure === null ? null : `(M) ${entry.maintenanceProcedure}`,
  ].filter((procedure) => procedure !== null);
  if (procedures.length === 0) return steps;
  return [
    ...steps,
    {
      id: 'mel-procedures',
      cite: '14cfr91.213(a)(5)',
      text: `Carry out the procedures of the list: ${procedures.join(' ')}`,
      done: deferral?.melProceduresDone === true,
    },
  ];
}

/** The record by its own paragraph: owed for work that was done, whatever becomes of 91.213. */
export const recordOwed = (name: string, deferral: DeferralFacts): readonly StepOwed[] =>
  recordAndPlacard(name, deferral)
    .filter(({ id }) => id === 'part-43-record')
    .map((step) => ({ ...step, cite: '14cfr43.9(a)' }));

/** A barring line for every step not yet taken. */
export const linesOfSteps = (steps: readonly StepOwed[], about: Subject): readonly Line[] =>
  steps
    .filter((step) => !step.done)
    .map((step) => ({
      effect: 'bars',
      cite: step.cite,
      because:
        step.missing === undefined ? `Still owed: ${step.text}` : `Not known: ${step.missing}. ${step.text}`,
      about,
      ...(step.missing === undefined ? {} : { missing: step.missing }),
    }));

/** (d)(3), the choice: out of the aircraft, or made unusable. */
function removeOrDeactivate(name: string, deferral: DeferralFacts | null): StepOwed {
  if (deferral === null) {
    const text = `Remove ${name}, or deactivate it so that nobody can make it work from the cockpit.`;
    return { id: 'remove-or-deactivate', cite: '14cfr91.213(d)(3)', text, done: false };
  }
  return deferral.method === 'removed'
    ? { id: 'remove-or-deactivate', cite: '14cfr91.213(d)(3)(i)', text: `${name} is removed.`, done: true }
    : {
        id: 'remove-or-deactivate',
        cite: '14cfr91.213(d)(3)(ii)',
        text: `${name} is deactivated.`,
        done: true,
      };
}

/** (d)(3)(i), (ii): the record where the work is maintenance, the placard always; a list asks for both as well. */
function recordAndPlacard(name: string, deferral: DeferralFacts | null): readonly StepOwed[] {
  const mel = deferral?.basis === 'mel';
  const removed = deferral?.method === 'removed';
  const cite: CiteId = removed ? '14cfr91.213(d)(3)(i)' : '14cfr91.213(d)(3)(ii)';
  const placard: StepOwed = {
    id: 'placard',
    cite: mel ? '14cfr91.213(a)(5)' : deferral === null ? '14cfr91.213(d)(3)' : cite,
    text: removed
      ? `Placard the cockpit control of ${name}: removed.`
      : `Placard ${name} in view of the pilot: "Inoperative".`,
    done: deferral?.placardPlaced === true,
  };
  if (deferral !== null && !removed && !deferral.deactivationIsMaintenance) return [placard];
  const record: StepOwed = {
    id: 'part-43-record',
    cite: mel ? '14cfr43.9(a)' : deferral === null ? '14cfr91.213(d)(3)' : cite,
    text:
      deferral === null
        ? `If ${name} is removed, or if deactivating it is maintenance: sign the part 43 record.`
        : `Sign the part 43 record for ${removed ? 'removing' : 'deactivating'} ${name}.`,
    done: deferral?.maintenanceRecordSigned === true,
  };
  return [record, placard];
}

/** 91.207(f)(10)(i): date first removed, make, model, serial number and reason, for a removed transmitter. */
function eltRemovalRecord(deferral: DeferralFacts | null): readonly StepOwed[] {
  if (deferral === null || deferral.eltRemoval === null) return [];
  return [
    {
      id: 'elt-removal-record',
      cite: '14cfr91.207(f)(10)(i)',
      text: 'Record the date of first removal, make, model, serial number and reason.',
      done: deferral.eltRemoval.recordComplete,
    },
  ];
}

/** (d)(4): somebody entitled to has determined, since the item was recorded, that it is no hazard. */
function determination(name: string, deferral: DeferralFacts | null): StepOwed {
  const step = { id: 'determination', cite: '14cfr91.213(d)(4)' } as const;
  const owed = `A rated pilot or a rated mechanic determines that ${name} is no hazard to the aircraft.`;
  if (deferral === null) return { ...step, text: owed, done: false };
  const made = deferral.determination;
  if (!made.known) return { ...step, text: owed, done: false, missing: made.missing };
  const problem = determinationProblem(made.value, deferral.recordedOn);
  if (problem !== null) return { ...step, text: `${owed} ${problem}`, done: false };
  return {
    ...step,
    text: `${made.value.by.name} determined on ${dayInWords(made.value.on)}: no hazard.`,
    done: true,
  };
}

function determinationProblem(
  { by, on }: { readonly by: DeterminerFacts; readonly on: CalendarDate },
  recordedOn: CalendarDate,
): string | null {
  if (!mayDetermine(by)) {
    return `${by.name} may not: neither a pilot rated for this aircraft nor certificated to maintain it.`;
  }
  return on < recordedOn
    ? `The determination of ${dayInWords(on)} is older than the write-up of ${dayInWords(recordedOn)}.`
    : null;
}

/**
 * (d)(4): who may determine. A pilot with more than a student certificate who is rated for the aircraft; a mechanic
 * with a rating; a repair station.
 */
export function mayDetermine(by: DeterminerFacts): boolean {
  const asPilot = by.pilotGrade !== null && by.pilotGrade !== 'student' && by.pilotRatedForAircraft;
  return asPilot || by.mechanicRatings.length > 0 || by.repairStation;
}
