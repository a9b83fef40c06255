import type { Fact } from '../facts';
import { barsForMissing, type Line } from '../verdict';

/**
 * 14 CFR 43.15: how an inspection is made.
 *
 * (a) So as to determine whether the aircraft, or the part of it under inspection, meets all applicable airworthiness
 *   requirements.
 * (b) Rotorcraft: not coded, the rotorcraft part of a checklist is the work of the inspector.
 * (c)(1) Annual and 100-hour: with a checklist that has the scope and detail of Appendix D: own, the maker's, or bought.
 * (c)(2) Before a piston-engined aircraft is approved, its engines are run to determine that they perform as the maker
 *   says: (i) power output, static and idle rpm; (ii) magnetos; (iii) fuel and oil pressure; (iv) cylinder and oil
 *   temperature.
 *   Not approved, it may have an engine that cannot be run, or did not do well. What the run showed is then something
 *   found: we hold the inspector to a listed write-up of the powerplant or propeller (43.11(b)).
 * (c)(3) Turbine engines: not coded, such an aircraft is not offered an inspection here.
 * (d) Progressive inspection: not offered here.
 * Read in an eCFR copy of 24 August 2026.
 */

/** What the engine run of (c)(2) shows, in the order of the text. */
export const RUN_UP_CHECKS = [
  { key: 'static-rpm', name: 'Static rpm', paragraph: '(i)' },
  { key: 'idle-rpm', name: 'Idle rpm', paragraph: '(i)' },
  { key: 'magnetos', name: 'Magnetos', paragraph: '(ii)' },
  { key: 'fuel-pressure', name: 'Fuel pressure', paragraph: '(iii)' },
  { key: 'oil-pressure', name: 'Oil pressure', paragraph: '(iii)' },
  { key: 'cylinder-temperature', name: 'Cylinder temperature', paragraph: '(iv)' },
  { key: 'oil-temperature', name: 'Oil temperature', paragraph: '(iv)' },
] as const;
export type RunUpKey = (typeof RUN_UP_CHECKS)[number]['key'];

/** `no-instrument`: nothing aboard shows it, and the reading says how it was judged. `not-run`: the engine was not run. */
export const RUN_UP_ANSWERS = ['satisfactory', 'not-satisfactory', 'no-instrument', 'not-run'] as const;
export type RunUpAnswer = (typeof RUN_UP_ANSWERS)[number];

export interface RunUpCheck {
  readonly answer: RunUpAnswer;
  /** What was read, or how it was judged. */
  readonly reading: string;
}

export interface PerformanceFacts {
  /** (a) Somebody says that it was made so. */
  readonly madeToDetermineAirworthiness: Fact<boolean>;
  /** (c)(1) The checklist by name and revision; null or blank when none is named. */
  readonly checklist: string | null;
  readonly checklistCoversAppendixD: Fact<boolean>;
  /** From the type; a turbine engine closes the way here. */
  readonly turbine: Fact<boolean>;
  readonly runUp: Readonly<Partial<Record<RunUpKey, RunUpCheck>>>;
  /** A write-up of the powerplant or the propeller stands open on the signed list as unairworthy. */
  readonly engineListed: boolean;
}

/** (a). */
function purpose({ madeToDetermineAirworthiness: made }: PerformanceFacts): Line {
  const cite = '14cfr43.15(a)';
  if (!made.known) return barsForMissing(cite, made.missing);
  return made.value
    ? {
        effect: 'supports',
        cite,
        because: 'Made so as to determine whether all airworthiness requirements are met.',
      }
    : {
        effect: 'bars',
        cite,
        because: 'It was not made so as to determine whether all airworthiness requirements are met.',
      };
}

/** (c)(1). */
function checklist(facts: PerformanceFacts): Line {
  const cite = '14cfr43.15(c)(1)';
  if (facts.checklist === null || facts.checklist.trim() === '')
    return barsForMissing(cite, 'the checklist that was used');
  const covers = facts.checklistCoversAppendixD;
  if (!covers.known) return barsForMissing(cite, covers.missing);
  return covers.value
    ? { effect: 'supports', cite, because: `Checklist used: ${facts.checklist}.` }
    : { effect: 'bars', cite, because: 'The checklist does not have the scope and detail of Appendix D.' };
}

/** (c)(2), one line for each thing the run did not show to be satisfactory. */
function engineRun(facts: PerformanceFacts): readonly Line[] {
  const cite = '14cfr43.15(c)(2)';
  if (!facts.turbine.known) return [barsForMissing(cite, facts.turbine.missing)];
  if (facts.turbine.value) {
    return [
      {
        effect: 'bars',
        cite: '14cfr43.15(c)',
        because: 'Inspections of aircraft with turbine engines are not offered here.',
      },
    ];
  }
  const lines = RUN_UP_CHECKS.flatMap(({ key, name, paragraph }): Line[] => {
    const check = facts.runUp[key];
    if (!check) return [barsForMissing(cite, `what the engine run showed: ${name} ${paragraph}`)];
    switch (check.answer) {
      case 'satisfactory':
        return [];
      case 'no-instrument':
        return check.reading.trim() === ''
          ? [barsForMissing(cite, `how ${name.toLowerCase()} was judged without an instrument ${paragraph}`)]
          : [
              {
                effect: 'notes',
                cite,
                because: `${name}: no instrument shows it. Judged: ${check.reading}.`,
              },
            ];
      case 'not-satisfactory':
        return [
          { effect: 'bars', cite, because: `${name} was not satisfactory at the engine run ${paragraph}.` },
        ];
      case 'not-run':
        return [{ effect: 'bars', cite, because: `${name}: the engine was not run ${paragraph}.` }];
    }
  });
  const barred = lines.some((line) => line.effect === 'bars');
  return barred
    ? lines
    : [...lines, { effect: 'supports', cite, because: 'Engine run made, and all of it satisfactory.' }];
}

/** 43.11(b), without an approval: what the run did not show is something found, and stands on the list. */
function engineRunListed(facts: PerformanceFacts): readonly Line[] {
  if (facts.engineListed) return [];
  return RUN_UP_CHECKS.flatMap(({ key, name, paragraph }): Line[] => {
    const answer = facts.runUp[key]?.answer;
    if (answer !== 'not-satisfactory' && answer !== 'not-run') return [];
    const shown =
      answer === 'not-run'
        ? `${name}: the engine was not run`
        : `${name} was not satisfactory at the engine run`;
    return [
      {
        effect: 'bars',
        cite: '14cfr43.15(c)(2)',
        because: `${shown} ${paragraph}, and nothing of the powerplant or propeller is on the list as unairworthy. Write it up and list it.`,
        strictReading:
          'The run is asked before an approval. Not approved, we ask that what it showed is on the list of 43.11(b).',
      },
    ];
  });
}

/**
 * Checks how an annual or 100-hour inspection was made. The engine run has to be good only before an approval: an aircraft
 * that is not approved may have an engine that cannot be run, and its list says so.
 */
export function checkPerformance4315(facts: PerformanceFacts, approving: boolean): readonly Line[] {
  return [purpose(facts), checklist(facts), ...(approving ? engineRun(facts) : engineRunListed(facts))];
}
