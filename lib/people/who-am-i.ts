import { z } from 'zod';
import { query } from '../access/service';
import { type Role } from '../access/policy';

/** Who is signed in, for the head of a screen. */
export interface WhoAmI {
  readonly name: string;
  readonly roles: readonly Role[];
  readonly operatorName: string;
  /** Notices about own write-ups and observations not seen yet; left out where nobody could ask, as on a phone offline. */
  readonly unreadNews?: number;
}

/** The signed-in person's name, roles and operator. Refuses `not_signed_in` for an ended session. */
export const whoAmI = query({
  verb: 'fleet.read',
  input: z.object({}),
  run: async ({ tx, actor, operatorId }): Promise<WhoAmI> => {
    const operator = await tx.operator.findUniqueOrThrow({
      where: { id: operatorId },
      select: { name: true },
    });
    const unreadNews = await tx.notice.count({
      where: { operatorId, personId: actor.personId, readAt: null },
    });
    return { name: actor.name, roles: actor.roles, operatorName: operator.name, unreadNews };
  },
});
