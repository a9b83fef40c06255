'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { endSessionsOf } from '@/lib/access/account/end-sessions-of';
import { resetSecondFactor } from '@/lib/access/second-factor/reset';
import { endCertificate, enterCertificate } from '@/lib/people/certificates';
import { changePerson } from '@/lib/people/change-person';
import { endPersonLink } from '@/lib/people/end-link';
import { erasePerson } from '@/lib/people/erase-person';
import { invitePerson, makePersonLink } from '@/lib/people/invite-person';
import { leavePerson, returnPerson } from '@/lib/people/leave-and-return';
import { nameForPreventive, withdrawPreventive } from '@/lib/people/preventive';
import { type Result } from '@/lib/problems';

function shownAnew<T>(result: Result<T>): Result<T> {
  if (result.ok) revalidatePath('/office/people', 'layout');
  return result;
}

const ref = signedInRef;

export const invite = async (input: unknown) => shownAnew(await invitePerson(await ref(), input));
export const makeLink = async (input: unknown) => shownAnew(await makePersonLink(await ref(), input));
export const endLink = async (input: unknown) => shownAnew(await endPersonLink(await ref(), input));
export const change = async (input: unknown) => shownAnew(await changePerson(await ref(), input));
export const leave = async (input: unknown) => shownAnew(await leavePerson(await ref(), input));
export const comeBack = async (input: unknown) => shownAnew(await returnPerson(await ref(), input));
export const enter = async (input: unknown) => shownAnew(await enterCertificate(await ref(), input));
export const endOne = async (input: unknown) => shownAnew(await endCertificate(await ref(), input));
export const nameOne = async (input: unknown) => shownAnew(await nameForPreventive(await ref(), input));
export const takeBack = async (input: unknown) => shownAnew(await withdrawPreventive(await ref(), input));
export const erase = async (input: unknown) => shownAnew(await erasePerson(await ref(), input));
export const endSessions = async (input: unknown) => shownAnew(await endSessionsOf(await ref(), input));
export const resetFactor = async (input: unknown) => shownAnew(await resetSecondFactor(await ref(), input));
