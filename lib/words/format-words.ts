import { type Token } from './compile-words';
import { type Language } from './language';
import { type Values } from './translate';

/** Making these costs more than using them. */
const kept = new Map<Language, { readonly plural: Intl.PluralRules; readonly number: Intl.NumberFormat }>();

function rulesOf(language: Language) {
  const before = kept.get(language);
  if (before) return before;
  const made = { plural: new Intl.PluralRules(language), number: new Intl.NumberFormat(language) };
  kept.set(language, made);
  return made;
}

/** Puts the values into a compiled message, as Lingui's runtime would (tests/rules/words-compiler.test.ts holds it against that). */
export function formatWords(
  language: Language,
  tokens: readonly Token[],
  values: Values,
  counted?: number,
): string {
  return tokens
    .map((token) => {
      if (typeof token === 'string') {
        return token === '#' && counted !== undefined ? rulesOf(language).number.format(counted) : token;
      }
      const [name, kind, arms] = token;
      const value = values[name];
      if (kind === undefined || arms === undefined) return value ?? '';
      const n = Number(value);
      const arm =
        arms[String(value)] ??
        (kind === 'plural' ? arms[rulesOf(language).plural.select(n)] : undefined) ??
        arms.other;
      return formatWords(language, arm ?? [], values, kind === 'plural' ? n : counted);
    })
    .join('');
}
