import { z } from 'zod';
import { requestId } from '../access/request-id';
import { parseTenths } from '../rules/hours';
import { isRegistrationNumber } from '../rules/part-47/47-15-registration-number';
import { said } from '../words/said';
import { documentNamed, password, reason, yesNoOrNot } from './asked';
import { isCalendarDate } from './calendar-date';

/** Hours as the meter shows them; empty: not known yet. */
const hoursOrNot = z
  .string()
  .trim()
  .refine(
    (text) => text === '' || parseTenths(text) !== null,
    said('Enter hours with one decimal, for example 1234.5, or leave it empty: not known yet.'),
  );

const facts = {
  requestId,
  registration: z
    .string()
    .trim()
    .toUpperCase()
    .refine(
      isRegistrationNumber,
      said('Enter N and up to five digits, or fewer digits and one or two letters at the end (no I, no O).'),
    ),
  serial: z.string().trim().min(1, said('Enter the serial number.')).max(60, said('60 characters at most.')),
  typeId: z.uuid(said('Choose the type.')),
  baseId: z.uuid(said('Choose the base.')),
  forHire: z.enum(['yes', 'no'], said('Choose yes or no.')),
  standardCategory: yesNoOrNot,
  manufacturedOn: z
    .string()
    .trim()
    .refine(
      (text) => text === '' || isCalendarDate(text),
      said('Enter a date, or leave it empty: not known yet.'),
    ),
  hobbs: hoursOrNot,
  tach: hoursOrNot,
  ttis: hoursOrNot,
  ttisMeter: z.enum(['hobbs', 'tach', 'not-known'], said('Choose one; “Not known yet” is an answer.')),
  source: documentNamed,
  password,
};

export const addAircraftInput = z.object(facts);
export const changeAircraftInput = z.object({ ...facts, aircraftId: z.uuid() });
export type AircraftInput = z.output<typeof addAircraftInput>;

export const retireAircraftInput = z.object({ requestId, aircraftId: z.uuid(), why: reason });
export const bringBackAircraftInput = z.object({ requestId, aircraftId: z.uuid(), why: reason });

/** What whoever enters an aircraft signs. */
export const AIRCRAFT_STATEMENT = said(
  'I entered the facts of this aircraft from the document named, and they agree with it.',
);
