import type { Tx } from '../db/client';
import { fieldRefusal, Refusal } from '../problems';
import { filled, said } from '../words/said';

/** A person of this operator. Refuses `not_found`; and `conflict` about somebody whose data was erased. */
export async function requirePerson(tx: Tx, operatorId: string, personId: string) {
  const person = await tx.person.findUnique({ where: { operatorId_id: { operatorId, id: personId } } });
  if (!person) throw new Refusal('not_found', { say: said('There is no such person here.') });
  if (person.erasedAt) throw new Refusal('conflict', { say: said('The data of this person was erased.') });
  return person;
}

/** The same for what only makes sense about somebody who still works here. */
export async function requirePersonHere(tx: Tx, operatorId: string, personId: string) {
  const person = await requirePerson(tx, operatorId, personId);
  if (person.leftOn) throw new Refusal('conflict', { say: said('This person has left.') });
  return person;
}

/** Refuses when nobody else could manage: a manager who can sign in has to stay. */
export async function requireAnotherManager(tx: Tx, operatorId: string, personId: string): Promise<void> {
  const others = await tx.person.count({
    where: {
      operatorId,
      id: { not: personId },
      roles: { has: 'manager' },
      leftOn: null,
      passwordSetAt: { not: null },
    },
  });
  if (others > 0) return;
  throw new Refusal('conflict', {
    say: said('This is the last manager who can sign in. Make somebody else a manager first.'),
  });
}

/** Refuses an address that somebody signs in with. It is asked over all operators, because signing in is. */
export async function requireFreeAddress(
  tx: Tx,
  operatorId: string,
  email: string,
  exceptId?: string,
): Promise<void> {
  await tx.$queryRaw`SELECT set_config('app.sign_in_email', ${email}, true)`;
  const taken = await tx.person.findUnique({ where: { email } });
  await tx.$queryRaw`SELECT set_config('app.sign_in_email', '', true)`;
  if (!taken || taken.id === exceptId) return;
  if (taken.operatorId !== operatorId) {
    throw fieldRefusal('email', said('This address is taken. Use another one for work here.'));
  }
  throw fieldRefusal(
    'email',
    taken.leftOn
      ? filled(said('{name} has this address and has left. Let them return instead.'), { name: taken.name })
      : filled(said('{name} has this address already.'), { name: taken.name }),
  );
}

/** Refuses a home base that is none of ours; empty is no base. */
export async function homeBaseOf(tx: Tx, operatorId: string, baseId: string): Promise<string | null> {
  if (baseId === '') return null;
  const base = await tx.base.findUnique({ where: { operatorId_id: { operatorId, id: baseId } } });
  if (!base) throw fieldRefusal('homeBaseId', said('There is no such base here.'));
  return base.id;
}
