import { z } from 'zod';
import { requestId } from '../access/request-id';
import { said } from '../words/said';

/** Notices that were seen, several at once. */
export const markNoticesReadInput = z.object({
  requestId,
  noticeIds: z.array(z.uuid()).min(1, said('Say which notices were read.')).max(100),
});
