import { aircraftFacts, type AircraftRow } from '../fleet/facts';
import { testInWords } from './tests-owed';

/** Something that stands after work and is on no open write-up, or only beside it. */
export interface OwedAfterWork {
  readonly workId: string;
  readonly title: string;
  readonly registration: string;
  readonly discrepancyId: string | null;
  readonly requirementId: string | null;
  /** What is owed: the check flight of 91.407(b), a test, or the entry and signature of work away from the queue. */
  readonly what: 'check-flight' | 'test' | 'unsigned';
  readonly words: string;
}

/**
 * What work leaves owed over the fleet: unsigned work whose write-up is closed or that has none (a correction, an owed test,
 * work on what recurs), check flights, tests. Work of an inspection stands with its inspection. An entry that was corrected
 * owes nothing any more: its correction does.
 */
export function owedAfterWork(fleet: readonly AircraftRow[]): readonly OwedAfterWork[] {
  return fleet.flatMap((row) => {
    const inQueue = new Set(row.discrepancies.map(({ id }) => id));
    const facts = aircraftFacts(row).work;
    return row.work.flatMap((work): OwedAfterWork[] => {
      const fact = facts.find(({ id }) => id === work.id);
      const { title, discrepancyId, requirementId } = work;
      const about = { workId: work.id, title, registration: row.registration, discrepancyId, requirementId };
      if (work.state !== 'signed') {
        const elsewhere = (discrepancyId === null || !inQueue.has(discrepancyId)) && !work.inspectionId;
        const words = work.state === 'entered' ? 'Signature owed' : 'Entry owed';
        return elsewhere ? [{ ...about, what: 'unsigned', words }] : [];
      }
      const flight = fact?.checkFlight.known === true && fact.checkFlight.value === 'owed';
      return [
        ...(flight ? [{ ...about, what: 'check-flight', words: 'Nobody carried until flown' } as const] : []),
        ...(fact?.testsOwed ?? []).map(
          (test) => ({ ...about, what: 'test', words: testInWords(test) }) as const,
        ),
      ];
    });
  });
}
