/**
 * Judging a new password. Sources: NIST SP 800-63B-4, 3.1.1.2 (no composition rules, Unicode counted by code point, lists
 * of common and context words), read in summaries; 12 and 200 characters are the operator's choice (issue 6's brief).
 */
import { describe, expect, test } from 'vitest';
import { passwordTroubles } from '@/lib/access/set-password';

const ABOUT = ['Tess Quillmarsh', 'tess@quillback.example', 'Quillback Flying School'];
const troubles = (password: string) => passwordTroubles(password, ABOUT).join(' ');

describe('length', () => {
  test.each([
    ['11 characters', 'pv8 kzt wqm', /at least 12/],
    ['12 characters', 'pv8 kzt wqmx', /^$/],
    ['13 characters', 'pv8 kzt wqmxj', /^$/],
    ['199 characters', `pv8 kzt wqmxj ${'brindle-ox '.repeat(17)}`.slice(0, 199), /^$/],
    ['200 characters', `pv8 kzt wqmxj ${'brindle-ox '.repeat(17)}`.slice(0, 200), /^$/],
    ['201 characters', `pv8 kzt wqmxj ${'brindle-ox '.repeat(17)}`.slice(0, 201), /200 characters at most/],
    // Eleven code points, though more UTF-16 units.
    ['eleven signs outside the first plane', '𝒲𝒽ℯℯ𝓁𝒸𝒽𝓸𝒸𝓀𝓏', /at least 12/],
  ])('%s', (_, password, expected) => {
    expect(troubles(password)).toMatch(expected);
  });
});

test('no kinds of characters are asked for', () => {
  expect(troubles('gravel tacho umbrella ninety')).toBe('');
  expect(troubles('pvkztwqmxjrb')).toBe('');
});

test.each([
  ['what many people use', 'password1234', /many people use/],
  ['one sign over and over', 'aaaaaaaaaaaaaa', /repeats itself/],
  ['keys side by side', 'qwertyuiopasdf', /many people use|keyboard/],
  ['the own name', 'TessQuillmarsh', /your name, your address or your school/],
  ['the own name and a year', 'Quillmarsh2026', /your name, your address or your school/],
  ['the address', 'tess@quillback.example', /your name, your address or your school/],
  ['the school', 'quillback flying', /your name, your address or your school/],
  ['this program', 'wheelchock12', /your name, your address or your school/],
])('%s is refused in plain words', (_, password, expected) => {
  expect(troubles(password)).toMatch(expected);
});

test('a name among words that have nothing to do with it may stand', () => {
  expect(troubles('tess rode seven green walruses home')).toBe('');
});
