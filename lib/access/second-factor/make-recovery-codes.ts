import { fieldRefusal, type Result } from '../../problems';
import { said } from '../../words/said';
import { madeCodes, makeCodesInput } from '../account/schema';
import type { ActorRef } from '../actor';
import { command, type CallOptions } from '../service';
import { keptFactors } from './kept';
import { newRecoveryCodes, recoveryRows, replaceRecoveryCodes } from './recovery-codes';

const written = command({
  verb: 'recovery-codes.make',
  asksPassword: true,
  input: makeCodesInput.extend({ made: madeCodes }),
  counts: () => ({}),
  async run({ tx, operatorId, actor, now }, { made }) {
    const { personId } = actor;
    if ((await keptFactors(tx, { operatorId, personId })).length === 0)
      throw fieldRefusal('password', said('Set up a second factor first; codes take its place for once.'));
    await replaceRecoveryCodes(tx, { operatorId, personId, now }, made);
    return {
      value: { madeId: made[0]?.id ?? null },
      audit: { subjectKind: 'person', subjectId: personId, detail: { codes: made.length } },
    };
  },
});

/** Makes new recovery codes in the place of the old ones. Null when they were shown before, to a request sent again. */
export async function makeRecoveryCodes(
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<{ codes: readonly string[] | null }>> {
  const codes = newRecoveryCodes();
  const made = recoveryRows(codes);
  const result = await written(ref, { ...(raw as object), made }, options);
  if (!result.ok) return result;
  return { ok: true, value: { codes: result.value.madeId === made[0]?.id ? codes : null } };
}
