/** Values of `at` that are no station: the screen before the stations, the drawing, the screen after them. */
export const KNOWN = 'known';
export const PLAN = 'plan';
export const FINISH = 'finish';

/** The address of one place of the walk; without one it opens where something is still open. */
export function pathAt(aircraftId: string, at: string | null): string {
  return `/ramp/${aircraftId}/walk${at === null ? '' : `?at=${encodeURIComponent(at)}`}`;
}

/** The address that tells how the finish of a walk fares. */
export const pathDone = (aircraftId: string, messageId: string): string =>
  `/ramp/${aircraftId}/walk?done=${encodeURIComponent(messageId)}`;
