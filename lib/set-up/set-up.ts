import { randomUUID } from 'node:crypto';
import { observed } from '../access/observed';
import { parse, type CallOptions } from '../access/service';
import { setPassword } from '../access/set-password';
import { baseColumns, requireFittingZone, sourceOf } from '../bases/columns';
import { dateColumn } from '../db/dates';
import type { Tx } from '../db/client';
import { enterOperator, writeWithSetUpToken } from '../db/scope';
import { fieldRefusal, type Result } from '../problems';
import { appendAudit } from '../records/audit';
import { contentHash, toPlain } from '../records/canonical';
import { dayAtBase } from '../records/signature';
import { said } from '../words/said';
import { isOpen, lockToken, tokenDoesNotOpen } from './open-token';
import { setUpInput, type SetUpInput } from './schema';
import { sha256OfToken } from './token';

export interface SetUpDone {
  readonly operatorId: string;
  readonly baseId: string;
  readonly personId: string;
}

const VERB = 'operator.set-up';
/** The password of a row that has none yet; it fits no password, and is gone at the end of the transaction. */
const NO_PASSWORD = 'none';

/**
 * Makes an operator with its first base and its first manager, for whoever holds the token. It is not behind `command()`,
 * since nobody is signed in; the same is kept here by hand: one transaction, an earlier answer for a request sent again, an
 * audit row, which is the first of the operator's chain. The token's row is locked, so that one token makes one operator.
 * Refuses `link_closed`, and `invalid` with the fields.
 */
export function setUp(raw: unknown, options: CallOptions = {}): Promise<Result<SetUpDone>> {
  return observed('command', VERB, null, raw, async () => {
    const input = parse(setUpInput, raw);
    const now = options.now ?? new Date();
    const sha256 = sha256OfToken(input.token);
    return writeWithSetUpToken(sha256, async (tx) => {
      const token = await lockToken(tx, sha256);
      if (token?.madeOperatorId) return earlierAnswer(tx, token.madeOperatorId, input);
      if (!isOpen(token, now)) throw tokenDoesNotOpen();
      const base = baseColumns(input);
      requireFittingZone(base, { zoneConfirmed: input.zoneConfirmed, now });

      await requireFreeAddress(tx, input.email);
      const made = { operatorId: randomUUID(), baseId: randomUUID(), personId: randomUUID() };
      await enterOperator(tx, made.operatorId);
      await writeRows(tx, made, input, now);
      await setPassword(tx, { ...made, password: input.password, now });
      await tx.setUpToken.update({
        where: { id: token.id },
        data: { usedAt: now, madeOperatorId: made.operatorId },
      });
      await keepAnswer(tx, made, input, now);
      return made;
    });
  });
}

/** An address signs one person in, whichever operator they are of. */
async function requireFreeAddress(tx: Tx, email: string): Promise<void> {
  await tx.$queryRaw`SELECT set_config('app.sign_in_email', ${email}, true)`;
  const taken = await tx.person.findUnique({ where: { email }, select: { id: true } });
  if (taken)
    throw fieldRefusal('email', said('Somebody here signs in with this address already. Use another one.'));
}

async function writeRows(tx: Tx, made: SetUpDone, input: SetUpInput, now: Date): Promise<void> {
  const { operatorId, baseId, personId } = made;
  const base = baseColumns(input);
  const source = sourceOf(base, input.airportIdent);
  await tx.operator.create({
    data: {
      id: operatorId,
      name: input.operatorName,
      part141: part141Of(input),
      units: input.units,
      createdAt: now,
    },
  });
  await tx.base.create({
    data: { id: baseId, operatorId, ident: input.ident, ...base, source, addedById: personId, addedAt: now },
  });
  await tx.person.create({
    data: {
      id: personId,
      operatorId,
      name: input.personName,
      email: input.email,
      passwordHash: NO_PASSWORD,
      roles: ['manager'],
      homeBaseId: baseId,
      createdAt: now,
    },
  });
  const by = { operatorId, byId: personId, at: now };
  await tx.personEvent.create({
    data: {
      ...by,
      id: randomUUID(),
      personId,
      what: 'joined',
      onDate: dateColumn(dayAtBase(now, base.zone)),
      words: 'Set the operator up, as its first manager.',
    },
  });
  // From here on the manager starts at the office, until somebody calls it done (lib/set-up/steps.ts).
  await tx.setUpStep.create({ data: { ...by, id: randomUUID(), step: 'all', done: false, words: '' } });
}

const part141Of = ({ part141 }: SetUpInput): boolean | null =>
  part141 === 'not-said' ? null : part141 === 'yes';

/** What makes a request sent again the same one. Token and password reach no hash. */
const hashOf = ({ token: _token, password: _password, ...counted }: SetUpInput): string =>
  contentHash({ verb: VERB, input: counted });

async function keepAnswer(tx: Tx, made: SetUpDone, input: SetUpInput, now: Date): Promise<void> {
  const { operatorId, personId } = made;
  await tx.request.create({
    data: {
      id: input.requestId,
      operatorId,
      personId,
      verb: VERB,
      inputHash: hashOf(input),
      result: toPlain({ value: made }) as object,
      at: now,
    },
  });
  const { ident, operatorName, units } = input;
  await appendAudit(tx, operatorId, {
    at: now,
    personId,
    verb: VERB,
    subjectKind: 'operator',
    subjectId: operatorId,
    requestId: input.requestId,
    // Names of people stand in their rows alone, which can be erased.
    detail: {
      name: operatorName,
      part141: part141Of(input),
      units,
      base: {
        id: made.baseId,
        ident,
        ...baseColumns(input),
        source: sourceOf(baseColumns(input), input.airportIdent),
      },
      firstManagerId: personId,
    },
  });
}

/** The answer of the request that used the token, when this is it again; to anybody else the token is closed. */
async function earlierAnswer(tx: Tx, operatorId: string, input: SetUpInput): Promise<SetUpDone> {
  await enterOperator(tx, operatorId);
  const earlier = await tx.request.findUnique({ where: { id: input.requestId } });
  if (!earlier || earlier.verb !== VERB || earlier.inputHash !== hashOf(input)) throw tokenDoesNotOpen();
  return (earlier.result as unknown as { value: SetUpDone }).value;
}
