import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { said } from '../words/said';

const ids = z.array(z.uuid()).max(100, said('A visit holds a hundred things at most.'));

const about = {
  title: writtenWords(said('A name for the visit'), 120),
  words: z.string().trim().max(2000, said('The words can have 2000 characters at most.')),
  /** The day it is planned for, at the base. */
  plannedOn: z.iso.date(said('This is not a day.')).nullable(),
};

/** Write-ups and recurring items of one aircraft, taken together in one stay at the shop. */
export const openVisitInput = z.object({
  requestId,
  aircraftId: z.uuid(said('Choose the aircraft.')),
  ...about,
  discrepancyIds: ids,
  requirementIds: ids,
});

export const changeVisitInput = z.object({
  requestId,
  visitId: z.uuid(),
  ...about,
  addDiscrepancyIds: ids,
  addRequirementIds: ids,
  /** Items of the visit (not write-ups) that are taken out of it. */
  removeItemIds: ids,
});

export const closeVisitInput = z.object({ requestId, visitId: z.uuid() });
