import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { wordsInCode } from '../../lib/operate/words-in-code';
import { chosenIn, firstHad } from '../../lib/words/language';
import { compileWords, type Token } from '../../lib/words/compile-words';
import inSpanish from '../../lib/words/es';
import { filled, said } from '../../lib/words/said';
import { inEnglish } from '../../lib/words/translate';

// Source: issue 6, "language files (English first, one more language complete)". Plural arms: Unicode CLDR, which Intl.PluralRules has.

const FOLDER = path.resolve(import.meta.dirname, '../../lib/words/es');
const AREAS = ['ui', 'lib', 'ramp', 'bench', 'desk', 'office'] as const;
const catalogs = AREAS.map(
  (area) => JSON.parse(readFileSync(path.join(FOLDER, `${area}.json`), 'utf8')) as Record<string, string>,
);
const spanish = new Map(catalogs.flatMap((catalog) => Object.entries(catalog)));
const { messages, bare, unreadable } = wordsInCode();

/** Screens for those who build, never linked to: their words need no language. */
const FOR_BUILDERS = /^app\/parts\//;

describe('the words of the screens', () => {
  it('are all found: a catalog of a handful would prove nothing', () => {
    expect(messages.size).toBeGreaterThan(3_000);
  });

  it('can all be read from the code', () => {
    expect(unreadable).toEqual([]);
  });

  it('never stand bare in JSX', () => {
    expect(bare.filter((one) => !FOR_BUILDERS.test(one))).toEqual([]);
  });

  it('have Spanish, each in one file', () => {
    expect([...messages.keys()].filter((message) => !spanish.has(message))).toEqual([]);
    expect(catalogs.reduce((sum, catalog) => sum + Object.keys(catalog).length, 0)).toBe(spanish.size);
  });

  it('have no Spanish left over', () => {
    expect([...spanish.keys()].filter((message) => !messages.has(message))).toEqual([]);
  });

  it('have the same values and elements on both sides', () => {
    const differing = [...spanish].filter(([en, es]) => marksIn(en).join() !== marksIn(es).join());
    expect(differing).toEqual([]);
  });

  it('have an arm for each plural form the language asks a whole number for, and the one that is always there', () => {
    const wrong = [...spanish].flatMap(([en, es]) => [
      ...armsMissing(en, 'en').map((arm) => `${en}: ${arm}`),
      ...armsMissing(es, 'es').map((arm) => `${es}: ${arm}`),
    ]);
    expect(wrong).toEqual([]);
  });

  it('keep the white space at their ends, where another text follows', () => {
    const ends = (text: string) => [/^\s*/.exec(text)?.[0], /\s*$/.exec(text)?.[0]];
    expect([...spanish].filter(([en, es]) => ends(en).join('|') !== ends(es).join('|'))).toEqual([]);
  });
});

/** Names of values, kinds of argument, and tags, sorted; a value may be said twice in one language. */
function marksIn(message: string): string[] {
  const found = new Set<string>();
  const walk = (tokens: readonly Token[]) => {
    for (const token of tokens) {
      if (typeof token === 'string') {
        for (const [tag] of token.matchAll(/<\/?\w+\/?>/g)) found.add(tag);
      } else {
        const [name, kind, arms] = token;
        found.add(kind === undefined ? `{${name}}` : `{${name}, ${kind}}`);
        Object.values(arms ?? {}).forEach(walk);
      }
    }
  };
  walk([compileWords(message)].flat());
  return [...found].sort();
}

/** Spanish has "many" for whole millions; nothing here is counted so far, and `other` says it well enough. */
function armsMissing(message: string, language: 'en' | 'es'): string[] {
  const rules = new Intl.PluralRules(language);
  const wanted = new Set([0, 1, 2, 5, 11, 21, 100, 1000].map((n) => rules.select(n))).add('other');
  const missing: string[] = [];
  const walk = (tokens: readonly Token[]) => {
    for (const token of tokens) {
      if (typeof token === 'string') continue;
      const [, kind, arms = {}] = token;
      if (kind === 'plural') missing.push(...[...wanted].filter((arm) => !(arm in arms)));
      if (kind === 'select' && !('other' in arms)) missing.push('other');
      Object.values(arms).forEach(walk);
    }
  };
  walk([compileWords(message)].flat());
  return missing;
}

describe('Spanish', () => {
  it('says what stands in its files', () => {
    expect(inSpanish('Sign in')).toBe('Iniciar sesión');
    expect(inSpanish('{n, plural, one {# day ago} other {# days ago}}', { n: 2 })).toBe('hace 2 días');
  });

  it('finds a text again that came in one piece with its values in it', () => {
    const english = filled(said('{what} can have {max} characters at most.'), {
      what: said('The finding'),
      max: 77,
    });
    expect(english).toBe('The finding can have 77 characters at most.');
    expect(inSpanish(english)).toBe('Lo encontrado: puede tener 77 caracteres como máximo.');
  });

  it('finds sentences that follow one another', () => {
    expect(inSpanish('This is not a day. Choose yes or no.')).toBe('Esto no es un día. Elija sí o no.');
  });

  it.each([
    ['Wed 25 Nov 2026, 08:58 PST', 'mié 25 nov 2026, 08:58 PST'],
    ['3 Jan 2027', '3 ene 2027'],
    ['Seen again on 3 Jan 2027, says Pia', 'Seen again on 3 Jan 2027, says Pia'],
  ])('says days of ours in its own words, and leaves what a person typed: %s', (english, expected) => {
    expect(inSpanish(english)).toBe(expected);
    expect(inSpanish('Since {moment}.', { moment: english })).toBe(`Desde ${expected}.`);
  });

  it('leaves what it does not know in English', () => {
    expect(inSpanish('Landing light dead on N012QB')).toBe('Landing light dead on N012QB');
    expect(inEnglish('Landing light dead')).toBe('Landing light dead');
  });
});

// RFC 9110, section 12.5.4 (read from memory).
describe('which language', () => {
  it.each([
    ['es-MX,es;q=0.9,en;q=0.8', 'es'],
    ['en-US,en;q=0.9,es;q=0.8', 'en'],
    ['de-DE,de;q=0.9', null],
    ['de, es;q=0.3, en;q=0.2', 'es'],
    ['es;q=0, en;q=0.1', 'en'],
    ['', null],
    ['*', null],
  ])('%s: %s', (asked, language) => expect(firstHad(asked)).toBe(language));

  it.each([
    ['a=1; wheelchock-language=es; b=2', 'es'],
    ['wheelchock-language=fr', null],
    ['not-wheelchock-language=es', null],
    ['', null],
  ])('cookie %s: %s', (cookies, language) => expect(chosenIn(cookies)).toBe(language));
});
