import { z } from 'zod';
import { requestId } from '../access/request-id';
import { documentNamed, password, yesNoOrNot } from '../aircraft/asked';
import { isCalendarDate } from '../aircraft/calendar-date';
import { said } from '../words/said';
import { CATEGORIES, COOLINGS, RATINGS } from './fields';

/** A whole number as typed; empty: not known yet. */
const wholeOrNot = (most: number, say: string) =>
  z
    .string()
    .trim()
    .regex(/^\d{0,6}$/, say)
    .refine((text) => text === '' || (Number(text) >= 1 && Number(text) <= most), say);

const facts = {
  requestId,
  name: z
    .string()
    .trim()
    .min(1, said('Enter the name of the type.'))
    .max(120, said('The name can have 120 characters at most.')),
  category: z.enum(CATEGORIES, said('Choose the category.')),
  rating: z.enum(RATINGS, said('Choose the rating a pilot needs.')),
  engines: z
    .string()
    .trim()
    .regex(/^[0-8]$/, said('Enter how many engines it has, 0 to 8.')),
  turbine: yesNoOrNot,
  maxTakeoffWeightLb: wholeOrNot(
    999_999,
    said('Enter whole pounds, for example 2450, or leave it empty: not known yet.'),
  ),
  mmelPublished: yesNoOrNot,
  certificatedOn: z
    .string()
    .trim()
    .refine(
      (text) => text === '' || isCalendarDate(text),
      said('Enter a date, or leave it empty: not known yet.'),
    ),
  certificatedUnderPart23: yesNoOrNot,
  cooling: z.enum([...COOLINGS, 'not-known'], said('Choose one; “Not known yet” is an answer.')),
  altitudeEngine: yesNoOrNot,
  retractableGear: yesNoOrNot,
  fuelTanks: wholeOrNot(20, said('Enter 1 to 20, or leave it empty: not known yet.')),
  seats: wholeOrNot(99, said('Enter 1 to 99, or leave it empty: not known yet.')),
  frontSeats: wholeOrNot(9, said('Enter 1 to 9, or leave it empty: not known yet.')),
  usesFuses: yesNoOrNot,
  equipmentListSource: z.string().trim().max(200, said('200 characters at most.')),
  source: documentNamed,
  password,
};

const seatsFit = (
  { seats, frontSeats }: { seats: string; frontSeats: string },
  context: { addIssue: (issue: { code: 'custom'; path: string[]; message: string }) => void },
) => {
  if (seats !== '' && frontSeats !== '' && Number(frontSeats) > Number(seats)) {
    const message = said('There cannot be more front seats than seats in all.');
    context.addIssue({ code: 'custom', path: ['frontSeats'], message });
  }
};

export const addTypeInput = z.object(facts).superRefine(seatsFit);
export const changeTypeInput = z.object({ ...facts, typeId: z.uuid() }).superRefine(seatsFit);
export type TypeInput = z.output<typeof addTypeInput>;
