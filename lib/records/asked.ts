import type { CalendarDate } from '../rules/facts';

/** What the records page asks for: one aircraft, the records signed in one year, and how verification found them. */
export interface Asked {
  readonly operatorId: string;
  readonly aircraftId: string;
  readonly today: CalendarDate;
  readonly zone: string;
  readonly signed: { readonly gte: Date; readonly lt: Date };
  /** Id of a signed row -> in what way it is no longer as it was signed. */
  readonly verified: ReadonlyMap<string, readonly string[]>;
}

/** What verification said of a signed row; one it did not see has not been verified, and that is said. */
export const changesOf = (asked: Asked, id: string): readonly string[] =>
  asked.verified.get(id) ?? ['could not be verified'];
