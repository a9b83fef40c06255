import { inEnglish, type Values } from './translate';

export { said } from '../rules/said';

/**
 * English with its values filled in, for words that cross the wire as one text (refusals, messages of a form):
 * `filled(said('{what} can have {n} characters at most.'), { what, n })`. A screen says it with t like any other: who speaks
 * another language finds the form again (lib/words/find-forms.ts).
 */
export const filled = (text: string, values: Values): string => inEnglish(text, values);
