import { z } from 'zod';
import { type ActorRef } from '@/lib/access/actor';

/**
 * All a session token says. No name, no roles: those are read fresh on every request, and so is the row of the session,
 * which can be ended. A raised session version ends them all.
 */
const content = z.object({
  personId: z.uuid(),
  operatorId: z.uuid(),
  sessionVersion: z.number().int().positive(),
  // Cookies from before there were rows of sessions have none: they are signed out.
  sessionId: z.uuid(),
});

/** The token's content, or null when it is not one of ours. */
export function readSessionContent(token: unknown): (ActorRef & { readonly sessionId: string }) | null {
  const parsed = content.safeParse(token);
  return parsed.success ? parsed.data : null;
}
