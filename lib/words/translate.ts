import { compileWords } from './compile-words';
import { formatWords } from './format-words';
import { type Language } from './language';

export type Values = Readonly<Record<string, string | number>>;
/** English text -> text of the language. */
export type Catalog = Readonly<Record<string, string>>;

/** Says a text in the language of whoever looks. The English text is the key; what a catalog lacks is said in English. */
export interface Translate {
  (text: string, values?: Values): string;
  readonly language: Language;
}

/** What a language knows besides its catalog: texts that came in one piece, and values that are words of ours (days). */
export interface Besides {
  readonly whole: (text: string) => string;
  readonly value: (text: string) => string;
}

export function translate(language: Language, catalog: Catalog, besides?: Besides): Translate {
  const say = (text: string, values?: Values): string => {
    const found = catalog[text];
    if (besides && found === undefined && !values) return besides.whole(text);
    const compiled = compileWords(found ?? text);
    if (typeof compiled === 'string') return compiled;
    return formatWords(language, compiled, besides && values ? spoken(values, besides) : (values ?? {}));
  };
  return Object.assign(say, { language });
}

const spoken = (values: Values, { value: inWords }: Besides): Values =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, typeof value === 'string' ? inWords(value) : value]),
  );

/** For what is said in English whoever looks: papers, records, exports. */
export const inEnglish: Translate = translate('en', {});
