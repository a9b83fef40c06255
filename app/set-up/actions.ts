'use server';

import { checkToken, findAirportsToSetUp, proposeZoneToSetUp } from '@/lib/set-up/look-up';
import { setUp } from '@/lib/set-up/set-up';

/** Nobody is signed in here: each of these asks for the token of the console instead. */
export const doesTokenOpen = async (token: string) => checkToken(token);

export const findAirportsHere = async (token: string, text: string) => findAirportsToSetUp(token, text);

export const proposeZoneHere = async (token: string, point: { latitudeDeg: number; longitudeDeg: number }) =>
  proposeZoneToSetUp(token, point);

export const sendSetUp = async (input: unknown) => setUp(input);
