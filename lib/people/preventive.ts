import { command } from '../access/service';
import { fieldRefusal, Refusal } from '../problems';
import { requirePersonHere } from './require-person';
import { namePreventiveInput, withdrawPreventiveInput } from './schema';
import { SIGNER, signerFacts } from './signer';
import { said } from '../words/said';

/**
 * Names a pilot, in writing, for preventive maintenance on the operator's aircraft. 43.3(g) speaks of aircraft "owned or
 * operated by that pilot"; the naming is how the operator says that its aircraft is operated by the pilot for this. It is
 * the operator's choice, and whether a signature counts is still asked of 43.3(g) and 43.7(f) each time. Refuses somebody
 * without a pilot certificate, a student pilot's grade is left to the rule, and somebody who is named already.
 */
export const nameForPreventive = command({
  verb: 'preventive.name',
  input: namePreventiveInput,
  async run({ tx, operatorId, actor, now, requestId }, { personId, words }) {
    await requirePersonHere(tx, operatorId, personId);
    const row = await tx.person.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id: personId } },
      include: SIGNER,
    });
    const { pilot, namedForPreventiveMaintenance } = signerFacts(row);
    if (namedForPreventiveMaintenance)
      throw new Refusal('conflict', { say: said('This pilot is named already.') });
    if (!pilot)
      throw fieldRefusal('words', said('43.3(g) is for pilots: enter the pilot certificate first.'));
    await tx.preventiveAuthorization.create({
      data: { id: requestId, operatorId, personId, grantedById: actor.personId, grantedAt: now, words },
    });
    return {
      value: { authorizationId: requestId },
      audit: { subjectKind: 'person', subjectId: personId, detail: { authorizationId: requestId } },
    };
  },
});

/** Takes a naming back. What was signed under it stands; nothing more can be. */
export const withdrawPreventive = command({
  verb: 'preventive.withdraw',
  input: withdrawPreventiveInput,
  async run({ tx, operatorId, actor, now, requestId }, { authorizationId, words }) {
    const naming = await tx.preventiveAuthorization.findUnique({
      where: { operatorId_id: { operatorId, id: authorizationId } },
      include: { preventiveWithdrawal: true },
    });
    if (!naming) throw new Refusal('not_found', { say: said('There is no such naming here.') });
    if (naming.preventiveWithdrawal)
      throw new Refusal('conflict', { say: said('It was taken back already.') });
    await tx.preventiveWithdrawal.create({
      data: { id: requestId, operatorId, authorizationId, words, byId: actor.personId, at: now },
    });
    return {
      value: { authorizationId },
      audit: { subjectKind: 'person', subjectId: naming.personId, detail: { authorizationId } },
    };
  },
});
