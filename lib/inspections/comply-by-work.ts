import type { Context } from '../access/service';
import type { Tx } from '../db/client';
import { calendarDate } from '../db/dates';
import { Refusal } from '../problems';
import type { RequirementKind } from '../rules/aircraft';
import type { CiteId } from '../rules/law';
import { detailsOf, type EntryDetails, type WorkRow } from '../work/entry';
import { newExpiryRefused } from './new-expiry';
import { writeCompliance } from './write-compliance';
import { filled, said } from '../words/said';

/**
 * Work on something that recurs was signed: writes the record that it is answered. Called inside the signing transaction,
 * after the sign-off. Refuses what the kind's record needs and the entry does not say. A correction of an entry takes the
 * place of the record its predecessor made, or of what corrected that since. Gives the hash of the record for the audit
 * chain; null when the work is on nothing that recurs.
 */
export async function complyByWork(
  context: Context,
  work: WorkRow,
  signed: { readonly signOffId: string; readonly approvedBy: string },
): Promise<string | null> {
  const { tx, operatorId } = context;
  if (!work.requirementId) return null;
  const requirement = await tx.requirement.findUniqueOrThrow({
    where: { operatorId_id: { operatorId, id: work.requirementId } },
  });
  if (!work.completedOn || work.ttisTenths === null) {
    throw new Refusal('signature_refused', {
      say: said('The record of what recurs needs the day and the total time in service.'),
      lines: [
        {
          cite: '14cfr91.417(a)(2)(i)',
          because: `Not known: the total time in service of ${work.aircraft.registration}.`,
        },
      ],
    });
  }
  const details = detailsOf(work);
  const missing = missingDetail(requirement.kind as RequirementKind, details);
  if (missing) {
    throw new Refusal('signature_refused', {
      say: said('The entry does not say all that the record of this needs. Change the entry, then sign.'),
      lines: [{ cite: missing.cite, because: missing.because }],
    });
  }
  const { testedToFt, newExpiry, method, revision } = details;
  const doneOn = calendarDate(work.completedOn);
  const wrongExpiry = newExpiryRefused(requirement, doneOn, newExpiry);
  if (wrongExpiry)
    throw new Refusal('signature_refused', {
      say: filled(said('{wrongExpiry} Change the entry, then sign.'), { wrongExpiry }),
    });
  return writeCompliance(
    context,
    { requirement, aircraft: work.aircraft },
    {
      doneOn,
      ttisTenths: work.ttisTenths,
      wasDueTenths: null,
      testedToFt: testedToFt ?? null,
      newExpiry: newExpiry ?? null,
      details: { method: method ?? null, revision: revision ?? null },
      approvedBy: signed.approvedBy,
      supersedesId: work.supersedesId ? await standingRecordOf(tx, operatorId, work.supersedesId) : null,
      inspectionId: null,
      workId: work.id,
      signOffId: signed.signOffId,
    },
  );
}

/** The record that a piece of work made, or the newest correction of it; null when it made none. */
async function standingRecordOf(tx: Tx, operatorId: string, workId: string): Promise<string | null> {
  const select = { id: true } as const;
  let standing = await tx.compliance.findFirst({ where: { operatorId, workId }, select });
  for (let next = standing; next !== null;) {
    standing = next;
    next = await tx.compliance.findUnique({
      where: { operatorId_supersedesId: { operatorId, supersedesId: standing.id } },
      select,
    });
  }
  return standing?.id ?? null;
}

/** Something the record of a kind needs beyond date and hours: its field, why, and the paragraph. */
export interface MissingDetail {
  readonly field: 'testedToFt' | 'newExpiry' | 'method' | 'revision';
  readonly cite: CiteId;
  readonly because: string;
}

/** The first thing the record of this kind needs and does not say; null when nothing is missing. */
export function missingDetail(kind: RequirementKind, details: EntryDetails): MissingDetail | null {
  const blank = (text: string | undefined) => text === undefined || text.trim() === '';
  switch (kind) {
    case 'static-and-altimeter':
      return details.testedToFt === undefined
        ? {
            field: 'testedToFt',
            cite: '14cfr91.411(d)',
            because: 'Not known: the altitude to which the altimeter was tested.',
          }
        : null;
    case 'elt-battery':
      return blank(details.newExpiry)
        ? {
            field: 'newExpiry',
            cite: '14cfr91.207(c)(2)',
            because: 'Not known: the new date marked on the battery.',
          }
        : null;
    case 'directive': {
      const cite = '14cfr91.417(a)(2)(v)';
      if (blank(details.method))
        return { field: 'method', cite, because: 'Not known: how the directive was met.' };
      return blank(details.revision)
        ? { field: 'revision', cite, because: 'Not known: the revision date of the directive that was met.' }
        : null;
    }
    case 'annual':
    case 'hundred-hour':
    case 'transponder':
    case 'elt-inspection':
    case 'vor-check':
    case 'life-limit':
    case 'maker-interval':
      return null;
  }
}
