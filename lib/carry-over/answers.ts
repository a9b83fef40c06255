/** How the cells of a history file are read; a form sends the same texts, so that both ways are read by one rule. */
import { z } from 'zod';
import { said } from '../words/said';
import type { OnPaper } from '../rules/carried-over';

/** A text that may be left empty. */
export const optionalText = (most: number) => z.string().trim().max(most, said('This is too long.'));

/** A text that must be there. `empty` is the whole sentence, so that a screen can say it in another language. */
export const neededText = (empty: string, most: number) =>
  z.string().trim().min(1, empty).max(most, said('This is too long.'));

const YES: Readonly<Record<string, OnPaper>> = {
  yes: 'yes',
  true: 'yes',
  no: 'no',
  false: 'no',
  '': 'not-known',
  'not known': 'not-known',
  'not-known': 'not-known',
  unknown: 'not-known',
};

/** yes, no, or not known; an empty cell is not known, which never counts in favour. */
export const yesNoUnknown = z
  .string()
  .trim()
  .toLowerCase()
  .refine((text) => Object.hasOwn(YES, text), said('Write yes, no, or not known.'))
  .transform((text): OnPaper => YES[text] ?? 'not-known');

/** yes or no; an empty cell is no. */
export const yesOrEmpty = z
  .string()
  .trim()
  .toLowerCase()
  .refine((text) => ['', 'yes', 'no', 'true', 'false'].includes(text), said('Write yes or no.'))
  .transform((text) => text === 'yes' || text === 'true');

const isDate = (text: string) => z.iso.date().safeParse(text).success;
const DATE = said('A day as 2026-11-25.');

export const neededDate = z.string().trim().refine(isDate, DATE);
/** Null where the cell is empty. */
export const optionalDate = z
  .string()
  .trim()
  .refine((text) => text === '' || isDate(text), DATE)
  .transform((text) => (text === '' ? null : text));

/** One of some words, written as they are or with spaces in place of hyphens. */
export const oneOf = <const T extends string>(choices: readonly T[], error: string) =>
  z
    .string()
    .trim()
    .transform((text) => text.toLowerCase().replaceAll(' ', '-'))
    .refine((text) => (choices as readonly string[]).includes(text), error)
    .transform((text) => text as T);

/** The same, or empty, which is null. */
export const oneOfOrEmpty = <const T extends string>(choices: readonly T[], error: string) =>
  z
    .string()
    .trim()
    .transform((text) => text.toLowerCase().replaceAll(' ', '-'))
    .refine((text) => text === '' || (choices as readonly string[]).includes(text), error)
    .transform((text) => (text === '' ? null : (text as T)));

/** A whole number from 1 on, or empty, which is null. */
export const optionalCount = (most: number, error: string) =>
  z
    .string()
    .trim()
    .refine(
      (text) => text === '' || (/^\d{1,6}$/.test(text) && Number(text) >= 1 && Number(text) <= most),
      error,
    )
    .transform((text) => (text === '' ? null : Number(text)));
