import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { Refusal } from '../problems';
import { toPlain } from '../records/canonical';
import { rowsAbout, rowsActedOn } from './rows-of-person';
import { TABLES_OF_PERSON } from './tables-of-person';
import { said } from '../words/said';

/** Everything here about one person, as plain data (docs/personal-data.md). */
export interface PersonalData {
  readonly format: 'wheelchock personal data';
  readonly version: 1;
  readonly madeAt: string;
  readonly person: Record<string, unknown>;
  /** Set by set, with what it is; whole rows. */
  readonly about: Readonly<Record<string, { readonly says: string; readonly rows: readonly object[] }>>;
  /** Rows about something else that the person entered, ended or the like. */
  readonly acted: Readonly<Record<string, readonly object[]>>;
}

/** One's own data; somebody else's for a manager, who hands it on when asked for it. No secret of signing in is in it. */
export const exportPersonalData = query({
  verb: 'personal-data.export',
  input: z.object({ personId: z.uuid().optional() }),
  async run({ tx, operatorId, actor, now }, { personId = actor.personId }): Promise<PersonalData> {
    if (personId !== actor.personId && !actor.roles.includes('manager')) {
      throw new Refusal('not_allowed', { say: said('Only managers take a copy of somebody else’s data.') });
    }
    const row = await tx.person.findUnique({ where: { operatorId_id: { operatorId, id: personId } } });
    if (!row) throw new Refusal('not_found', { say: said('There is no such person here.') });
    const { passwordHash: _hash, sessionVersion: _version, operatorId: _operator, ...person } = row;
    const about: Record<string, { says: string; rows: object[] }> = {};
    const acted: Record<string, object[]> = {};
    for (const table of TABLES_OF_PERSON) {
      const rows = await rowsAbout(tx, operatorId, personId, table);
      if (rows.length > 0) about[table.model] = { says: table.says, rows: rows.map(toPlain) };
      const touched = await rowsActedOn(tx, operatorId, personId, table);
      if (touched.length > 0) acted[table.model] = touched;
    }
    const proofs = await tx.proof.findMany({
      where: { operatorId, certificate: { personId } },
      select: { id: true, certificateId: true, fileName: true, mime: true, bytes: true, addedAt: true },
    });
    if (proofs.length > 0)
      about['Proof'] = { says: 'Proofs of their certificates', rows: proofs.map(toPlain) };
    const letters = await tx.letter.findMany({
      where: { operatorId, OR: [{ notice: { personId } }, { link: { personId } }] },
      select: { id: true, toAddress: true, subject: true, body: true, state: true, sentAt: true },
    });
    if (letters.length > 0) about['Letter'] = { says: 'Letters to them', rows: letters.map(toPlain) };
    return {
      format: 'wheelchock personal data',
      version: 1,
      madeAt: instant(now),
      person: toPlain(person) as Record<string, unknown>,
      about,
      acted,
    };
  },
});
