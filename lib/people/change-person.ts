import { command } from '../access/service';
import { homeBaseOf, requireAnotherManager, requireFreeAddress, requirePersonHere } from './require-person';
import { writePersonEvent } from './person-events';
import { changePersonInput } from './schema';
import { todayOfPerson } from './today';

/**
 * Changes name, address, roles and home base. Roles are read afresh on every request, so they count at once. The name in
 * what was signed stays as it was signed. Refuses to take the role from the last manager, and an address that is taken.
 */
export const changePerson = command({
  verb: 'person.change',
  input: changePersonInput,
  async run({ tx, operatorId, actor, now }, { personId, name, email, roles: asked, homeBaseId }) {
    const before = await requirePersonHere(tx, operatorId, personId);
    const roles = [...new Set(asked)];
    const losesManager = before.roles.includes('manager') && !roles.includes('manager');
    if (losesManager) await requireAnotherManager(tx, operatorId, personId);
    if (email !== before.email) await requireFreeAddress(tx, operatorId, email, personId);
    const base = await homeBaseOf(tx, operatorId, homeBaseId);
    const otherRoles = [...before.roles].sort().join() !== [...roles].sort().join();
    const changed = [
      ...(name === before.name ? [] : ['name']),
      ...(email === before.email ? [] : ['email']),
      ...(otherRoles ? ['roles'] : []),
      ...(base === before.homeBaseId ? [] : ['homeBaseId']),
    ];
    if (changed.length > 0) {
      await tx.person.update({
        where: { operatorId_id: { operatorId, id: personId } },
        data: { name, email, roles, homeBaseId: base },
      });
      // A link on its way went to the address of before.
      if (changed.includes('email')) {
        await tx.personLink.updateMany({
          where: { operatorId, personId, usedAt: null, endedAt: null },
          data: { endedAt: now, sealedToken: null },
        });
      }
    }
    if (otherRoles) {
      await writePersonEvent(tx, {
        operatorId,
        personId,
        what: 'roles',
        onDate: await todayOfPerson(tx, operatorId, before, now),
        words: `Roles: ${[...before.roles].sort().join(', ') || 'none'} before, ${[...roles].sort().join(', ')} now.`,
        byId: actor.personId,
        at: now,
      });
    }
    return {
      value: { personId, changed },
      // Which fields, not what was in them: an audit row is never erased.
      audit: {
        subjectKind: 'person',
        subjectId: personId,
        detail: { changed, ...(otherRoles && { roles }) },
      },
    };
  },
});
