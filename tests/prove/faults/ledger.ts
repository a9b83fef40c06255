/** What the clients outside know: every act that was acknowledged to them, and what that makes of each aircraft. */
import { randomUUID } from 'node:crypto';
import type { Severity } from '@/lib/rules/aircraft';
import { known } from '@/lib/rules/facts';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { discrepancyOf } from '../../fixtures/aircraft';
import type { Call } from './app-process';
import { flightOn, NOT_COUNTED, trainerToday, type SchoolToday } from './school-today';

/** One act the application said yes to. */
export interface Acked {
  readonly call: Call;
  readonly value: unknown;
}

interface OpenWriteUp {
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  readonly severity: Severity | null;
  work: 'started' | 'entered' | null;
}

/** One aircraft as its acknowledged acts leave it. */
export class AircraftLedger {
  readonly writeUps = new Map<string, OpenWriteUp>();

  constructor(
    readonly school: SchoolToday,
    readonly registration: string,
  ) {}

  take({ call, value }: Acked): void {
    const { act, input } = call;
    const subject = String(input['discrepancyId'] ?? '');
    if (act === 'reportFinding') {
      const { discrepancyId, number, title, severity } = value as Omit<OpenWriteUp, 'work'>;
      this.writeUps.set(discrepancyId, { discrepancyId, number, title, severity, work: null });
    }
    if (act === 'startWork') this.workOn(subject, 'started');
    if (act === 'enterWork') this.workOn(this.ofWork(input), 'entered');
    if (act === 'signWork') this.writeUps.delete(this.ofWork(input));
    if (act === 'startWork') this.works.set((value as { workId: string }).workId, subject);
  }

  /** The answer for a lesson two days from now by the acknowledged acts alone: the pure rules, asked without the application. */
  expected(): string {
    const writeUps = [...this.writeUps.values()];
    const facts: AircraftFacts = {
      ...trainerToday(this.registration),
      discrepancies: writeUps.map(({ discrepancyId: id, number, title, severity }) =>
        discrepancyOf({
          id,
          number,
          title,
          kind: 'damage',
          severity: severity === null ? { known: false, missing: 'its severity' } : known(severity),
          jasc: '6111',
          equipmentId: null,
          inoperativeCount: NOT_COUNTED,
          station: 'propeller',
        }),
      ),
      work: writeUps.flatMap(({ work, title }) =>
        work
          ? [
              {
                id: randomUUID(),
                title,
                state: work,
                checkFlight: known('not-needed' as const),
                testsOwed: [],
              },
            ]
          : [],
      ),
    };
    return inShort(answerForFlight(facts, flightOn(ASKED_DAYS_AHEAD)).answer);
  }

  private readonly works = new Map<string, string>();

  private ofWork(input: Call['input']): string {
    return this.works.get(String(input['workId'])) ?? '';
  }

  private workOn(discrepancyId: string, state: 'started' | 'entered'): void {
    const writeUp = this.writeUps.get(discrepancyId);
    if (writeUp) writeUp.work = state;
  }
}

/** The day that is asked about; flights are released for later days. */
export const ASKED_DAYS_AHEAD = 2;

/** Outcome and what bars or limits, by paragraph: what two answers about the same facts have in common whatever the words. */
export function inShort(answer: {
  outcome: string;
  lines: readonly { effect: string; cite: string }[];
}): string {
  const lines = answer.lines.filter(({ effect }) => effect === 'bars' || effect === 'limits');
  const told = lines.map(({ effect, cite }) => `${effect} ${cite}`).sort();
  return [answer.outcome, ...told].join(', ');
}
