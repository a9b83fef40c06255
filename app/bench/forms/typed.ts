/** What was typed or ticked, as the services want it. An answer not given stays missing; the service says so. */

/** The two answers of a yes-no question; nothing chosen is no answer. */
export const yesNo = (chosen: string): boolean | undefined =>
  chosen === 'yes' ? true : chosen === 'no' ? false : undefined;

/** A choice that may be left open. */
export const orNull = (chosen: string): string | null => (chosen.trim() === '' ? null : chosen.trim());

/** A whole number that may be left out. What is no number stays none, and the service refuses it. */
export const wholeOrNull = (typed: string): number | null =>
  typed.trim() === '' ? null : /^\d{1,6}$/.test(typed.trim()) ? Number(typed) : Number.NaN;
