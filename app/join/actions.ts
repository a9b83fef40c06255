'use server';

import { choosePasswordByLink, readLink } from '@/lib/people/by-link';

export const lookAt = async (token: string) => readLink(token);
export const choose = async (input: unknown) => choosePasswordByLink(input);
