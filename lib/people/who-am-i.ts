import { z } from 'zod';
import { query } from '../access/service';
import { type Role } from '../access/policy';
import { chosenUnits } from '../units/chosen';
import type { Units } from '../units/say';
import { keptFactors } from '../access/second-factor/kept';

/** Who is signed in, for the head of a screen. */
export interface WhoAmI {
  readonly name: string;
  readonly roles: readonly Role[];
  readonly operatorName: string;
  /** What this person reads quantities in; left out where nobody could ask. */
  readonly units?: Units;
  /** Notices about own write-ups and observations not seen yet; left out where nobody could ask, as on a phone offline. */
  readonly unreadNews?: number;
  /**
   * Set where the operator asks everybody who signs for a second factor and this session has none: `missing` when none is
   * set up, `not-used` when one was set up after signing in.
   */
  readonly secondFactor?: 'missing' | 'not-used';
}

/** The signed-in person's name, roles and operator. Refuses `not_signed_in` for an ended session. */
export const whoAmI = query({
  verb: 'fleet.read',
  input: z.object({}),
  run: async ({ tx, actor, operatorId }): Promise<WhoAmI> => {
    const operator = await tx.operator.findUniqueOrThrow({
      where: { id: operatorId },
      select: { name: true, signersNeedSecondFactor: true },
    });
    const without = operator.signersNeedSecondFactor && actor.session?.secondFactor === 'none';
    const whose = { operatorId, personId: actor.personId };
    const has = without && (await keptFactors(tx, whose)).length > 0;
    const unreadNews = await tx.notice.count({
      where: { operatorId, personId: actor.personId, readAt: null },
    });
    return {
      name: actor.name,
      roles: actor.roles,
      operatorName: operator.name,
      units: await chosenUnits(tx, actor),
      unreadNews,
      ...(without && { secondFactor: has ? ('not-used' as const) : ('missing' as const) }),
    };
  },
});
