'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { readAirports, readZoneProposal } from '@/lib/airports/read-airports';
import { addBase } from '@/lib/bases/add-base';
import { changeBase } from '@/lib/bases/change-base';

export const findAirports = async (text: string) => readAirports(await signedInRef(), { text });

export const proposeZone = async (point: { latitudeDeg: number; longitudeDeg: number }) =>
  readZoneProposal(await signedInRef(), point);

export async function saveNewBase(input: unknown) {
  const result = await addBase(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export async function saveBase(input: unknown) {
  const result = await changeBase(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}
