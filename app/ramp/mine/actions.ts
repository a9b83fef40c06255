'use server';

import { markNoticesRead } from '@/lib/notices/mark-read';
import { signedInRef } from '../../_session/actor-ref';

/** Somebody says that they have seen this news. */
export async function sayNewsSeen(input: { requestId: string; noticeIds: string[] }) {
  return markNoticesRead(await signedInRef(), input);
}
