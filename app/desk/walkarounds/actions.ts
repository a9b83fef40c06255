'use server';

import { signedInRef } from '@/app/_session/actor-ref';
import { writeList } from '@/lib/walkarounds/write-list';

export const saveList = async (input: unknown) => writeList(await signedInRef(), input);
