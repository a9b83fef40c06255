import { setupI18n } from '@lingui/core';
import { compileMessage } from '@lingui/message-utils/compileMessage';
import { describe, expect, it } from 'vitest';
import { compileWords } from '../../lib/words/compile-words';
import { LANGUAGES } from '../../lib/words/language';
import { inEnglish, translate } from '../../lib/words/translate';

/** Outside reference: Lingui's compiler and its runtime, which are too heavy for the phone's 200 kB. */
const MESSAGES = [
  'Sign in',
  "That’s it; don't worry, 100 % #1 <b>bold</b>",
  'Released by {dispatcher} on {when}.',
  '{who}{when} and {who}',
  '{ who }',
  '{n, plural, one {# flight} other {# flights}}',
  '{n, plural, =0 {None} one {# flight of {who}} other {# flights of {who}}} would be replaced',
  '{n,plural,one{#}other{#, #}}',
  '{n, plural, one {{m, plural, one {a} other {#}}} other {b}}',
  '{n, plural, one {{who} #} other {{who} of # and {m, plural, one {#} other {# more}}}}',
  '{who, select, pilot {its # pilot} other {somebody}} came',
];
const NUMBERS = [0, 1, 2, 21, 999, 1000, 1234567];

describe('our messages', () => {
  it.each(MESSAGES)('are compiled as Lingui compiles them: %s', (message) => {
    // A plain text needs no list around it.
    expect([compileWords(message)].flat()).toEqual(compileMessage(message));
  });

  it.each(['{', '{a', '{}', '{a}}', '{n, plural, one {a}', '{n, plural, one a}'])('refuse %s', (message) => {
    expect(() => compileWords(message)).toThrow('Not a message');
  });

  it.each(MESSAGES)('are said as Lingui says them: %s', (message) => {
    for (const language of LANGUAGES) {
      const reference = setupI18n({ locale: language, messages: { [language]: { [message]: message } } });
      reference.setMessagesCompiler(compileMessage);
      const t = translate(language, { [message]: message });
      for (const n of NUMBERS) {
        for (const who of ['pilot', 'Pia']) {
          const values = { n, m: n === 1 ? 2 : 1, who, when: 'now', dispatcher: 'Dee' };
          expect(t(message, values)).toBe(reference._(message, values));
        }
      }
    }
  });

  it('are said in the catalog’s words, and in English where it has none', () => {
    const flights = '{n, plural, one {# flight} other {# flights}} of {who}';
    const t = translate('es', { [flights]: '{n, plural, one {# vuelo} other {# vuelos}} de {who}' });
    expect(inEnglish(flights, { n: 1, who: 'Pia' })).toBe('1 flight of Pia');
    expect(inEnglish(flights, { n: 0, who: 'Pia' })).toBe('0 flights of Pia');
    expect(t(flights, { n: 2, who: 'Pia' })).toBe('2 vuelos de Pia');
    expect(t('Not in the catalog: {n}', { n: 3 })).toBe('Not in the catalog: 3');
  });

  it('keep every mark of what a person typed', () => {
    expect(inEnglish('{a}', { a: '{b} # <c> \\u0041' })).toBe('{b} # <c> \\u0041');
  });
});
