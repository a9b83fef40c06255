'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { changeAircraft } from '@/lib/aircraft/change-aircraft';
import { bringBackAircraft, retireAircraft } from '@/lib/aircraft/retire-aircraft';
import { beginSet } from '@/lib/equipment/begin-set';
import { confirmLines } from '@/lib/equipment/confirm-lines';
import { enterLine } from '@/lib/equipment/enter-line';
import { checkEquipment, importEquipment } from '@/lib/equipment/import-equipment';
import { removeLine } from '@/lib/equipment/remove-line';
import { type Result } from '@/lib/problems';
import { addType } from '@/lib/types/add-type';
import { changeType } from '@/lib/types/change-type';

export const saveNewType = async (input: unknown) => shown(await addType(await signedInRef(), input));
export const saveType = async (input: unknown) => shown(await changeType(await signedInRef(), input));
export const saveNewAircraft = async (input: unknown) => shown(await addAircraft(await signedInRef(), input));
export const saveAircraft = async (input: unknown) => shown(await changeAircraft(await signedInRef(), input));
export const retire = async (input: unknown) => shown(await retireAircraft(await signedInRef(), input));
export const bringBack = async (input: unknown) => shown(await bringBackAircraft(await signedInRef(), input));
export const putSet = async (input: unknown) => shown(await beginSet(await signedInRef(), input));
export const saveLine = async (input: unknown) => shown(await enterLine(await signedInRef(), input));
export const signLines = async (input: unknown) => shown(await confirmLines(await signedInRef(), input));
export const takeOff = async (input: unknown) => shown(await removeLine(await signedInRef(), input));
export const checkFile = async (input: unknown) => checkEquipment(await signedInRef(), input);
export const takeIn = async (input: unknown) => shown(await importEquipment(await signedInRef(), input));

/** What changed here can change any screen that shows an answer. */
function shown<T>(result: Result<T>): Result<T> {
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}
