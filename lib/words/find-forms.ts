import { compileWords, type Token } from './compile-words';
import { type Catalog } from './translate';

/** A message with values, as it looks when they are filled in: for finding it again in a text that came as one piece. */
interface Form {
  readonly message: string;
  readonly pattern: RegExp;
  readonly names: readonly { readonly name: string; readonly isNumber: boolean }[];
}

export interface Found {
  readonly message: string;
  readonly values: Readonly<Record<string, string | number>>;
}

/**
 * Finds the message and the values a finished English text was made of. Forms with the most words of their own are tried first, so
 * that "{a} {b}" takes nothing from a fuller one.
 */
export function formsOf(catalog: Catalog): (text: string) => Found | null {
  const forms = Object.keys(catalog)
    .filter((message) => message.includes('{'))
    .map(formOf)
    .filter((form) => form !== null)
    .sort((a, b) => ownLetters(b.message) - ownLetters(a.message));
  return (text) => {
    for (const { message, pattern, names } of forms) {
      const found = pattern.exec(text);
      if (!found) continue;
      const values: Record<string, string | number> = {};
      names.forEach(({ name, isNumber }, index) => {
        const part = found[index + 1];
        if (part !== undefined) values[name] = isNumber ? Number(part.replaceAll(',', '')) : part;
      });
      return { message, values };
    }
    return null;
  };
}

/** Words outside of braces; a form of hardly any would be found in every text. */
const ownLetters = (message: string): number =>
  message.replaceAll(/\{[^{}]*\}/g, '').replaceAll(/\P{L}/gu, '').length;
const ENOUGH_LETTERS = 4;

function formOf(message: string): Form | null {
  if (ownLetters(message) < ENOUGH_LETTERS) return null;
  const names: { name: string; isNumber: boolean }[] = [];
  const source = [compileWords(message)]
    .flat()
    .map((token) => patternOf(token, names))
    .join('');
  return { message, pattern: new RegExp(`^${source}$`, 'su'), names };
}

function patternOf(token: Token, names: { name: string; isNumber: boolean }[], counted?: string): string {
  if (typeof token === 'string') {
    if (token !== '#' || counted === undefined) return token.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
    names.push({ name: counted, isNumber: true });
    return '([\\d,]+)';
  }
  const [name, kind, arms] = token;
  if (kind === undefined || arms === undefined) {
    names.push({ name, isNumber: false });
    return '(.+?)';
  }
  const counts = kind === 'plural' ? name : undefined;
  return `(?:${Object.values(arms)
    .map((arm) => arm.map((one) => patternOf(one, names, counts)).join(''))
    .join('|')})`;
}
