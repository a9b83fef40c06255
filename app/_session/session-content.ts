import { z } from 'zod';
import { type ActorRef } from '@/lib/access/actor';

/**
 * All a session token says. No name, no roles: those are read fresh on every request, and a raised session version
 * ends the session everywhere.
 */
const content = z.object({
  personId: z.uuid(),
  operatorId: z.uuid(),
  sessionVersion: z.number().int().positive(),
});

/** The token's content, or null when it is not one of ours. */
export function readSessionContent(token: unknown): ActorRef | null {
  const parsed = content.safeParse(token);
  return parsed.success ? parsed.data : null;
}
