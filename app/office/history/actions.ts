'use server';

import { revalidatePath } from 'next/cache';
import { type z } from 'zod';
import { signedInRef } from '@/app/_session/actor-ref';
import { type Command } from '@/lib/access/service';
import { addUsualSet } from '@/lib/carry-over/add-usual-set';
import { carryOverLastDone } from '@/lib/carry-over/carry-over-last-done';
import { carryOverWriteUp } from '@/lib/carry-over/carry-over-write-up';
import { checkHistory } from '@/lib/carry-over/check-history';
import { importHistory } from '@/lib/carry-over/import-history';
import { addDirective } from '@/lib/directives/add-directive';
import { endDirective } from '@/lib/directives/end-directive';
import { reviewDirectives } from '@/lib/directives/review-directives';
import { addLimit } from '@/lib/limits/add-limit';
import { endLimit } from '@/lib/limits/end-limit';
import { checkMel } from '@/lib/mel/check-mel';
import { endMel } from '@/lib/mel/end-mel';
import { importMel } from '@/lib/mel/import-mel';
import { melLetter } from '@/lib/mel/mel-letter';
import { noMel } from '@/lib/mel/no-mel';
import { addPaper } from '@/lib/papers-aboard/add-paper';
import { type Result } from '@/lib/problems';

/** Through the one door; what changed here can change any screen that shows an answer. */
async function through<T>(command: Command<z.ZodType, T>, input: unknown): Promise<Result<T>> {
  const result = await command(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export const writeUpCarried = async (input: unknown) => through(carryOverWriteUp, input);
export const lastDoneCarried = async (input: unknown) => through(carryOverLastDone, input);
export const usualSetAdded = async (input: unknown) => through(addUsualSet, input);
export const paperAdded = async (input: unknown) => through(addPaper, input);
export const directiveAdded = async (input: unknown) => through(addDirective, input);
export const directiveEnded = async (input: unknown) => through(endDirective, input);
export const directivesReviewed = async (input: unknown) => through(reviewDirectives, input);
export const limitAdded = async (input: unknown) => through(addLimit, input);
export const limitEnded = async (input: unknown) => through(endLimit, input);
export const letterSaid = async (input: unknown) => through(melLetter, input);
export const melEnded = async (input: unknown) => through(endMel, input);
export const withoutMelSaid = async (input: unknown) => through(noMel, input);
export const listTakenIn = async (input: unknown) => through(importMel, input);
export const historyTakenIn = async (input: unknown) => through(importHistory, input);
export const checkHistoryFile = async (input: unknown) => checkHistory(await signedInRef(), input);
export const checkListFile = async (input: unknown) => checkMel(await signedInRef(), input);
