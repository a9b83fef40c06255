import type { Context } from '../access/service';
import { calendarDate } from '../db/dates';
import { recordDetermination } from '../determinations/record-determination';
import { requireOpenWriteUp } from '../determinations/write-up';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner } from '../people/signer';
import { Refusal } from '../problems';
import { dayInWords } from '../rules/in-words';
import { itemsOf, listInForce, type InspectionRow } from './inspection';
import { dueBefore } from './requirement';
import { writeCompliance } from './write-compliance';
import { said } from '../words/said';

/**
 * The last part is signed: every requirement the inspection answers gets its record, with the hours at which it was due so
 * that an excess is paid back (91.409(b)). Not approved it is done all the same (43.11(a)(5)): what the list names as
 * unairworthy grounds the aircraft until a 43.9 entry clears each.
 * Gives the hashes of what was signed by that, records and judgements, for the audit chain.
 */
export async function completeInspection(
  context: Context,
  inspection: InspectionRow,
): Promise<readonly string[]> {
  const { tx, operatorId, now } = context;
  const { completedOn, ttisTenths } = inspection;
  if (!completedOn || ttisTenths === null)
    throw new Refusal('conflict', { say: said('The entry is not whole.') });
  const doneOn = calendarDate(completedOn);
  // Asked before anything is written: it is about the record as it stood until now.
  const wasDueTenths = await dueBefore(tx, operatorId, inspection.aircraftId, {
    doneOn,
    ttisTenths,
    instead: null,
  });
  const airframe = inspection.work.find(({ part }) => part === 'airframe')?.signOff;
  const hashes: string[] = [];
  for (const id of inspection.requirementIds) {
    const requirement = await tx.requirement.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id } },
      select: { id: true, name: true, kind: true },
    });
    hashes.push(
      await writeCompliance(
        context,
        { requirement, aircraft: inspection.aircraft },
        {
          doneOn,
          ttisTenths,
          wasDueTenths,
          testedToFt: null,
          newExpiry: null,
          details: null,
          approvedBy: signersOf(inspection),
          supersedesId: null,
          inspectionId: inspection.id,
          workId: null,
          signOffId: airframe?.id ?? null,
        },
      ),
    );
  }
  await tx.inspection.update({
    where: { operatorId_id: { operatorId, id: inspection.id } },
    data: { state: 'complete', completedAt: now },
  });
  return [...hashes, ...(await groundWhatIsListed(context, inspection))];
}

/** Everybody who signed a part, once each: name, kind and number. */
function signersOf(inspection: InspectionRow): string {
  const all = inspection.work.flatMap(({ signOff }) =>
    signOff ? [`${signOff.personName}, ${signOff.certificateKind} ${signOff.certificateNumber}`] : [],
  );
  return [...new Set(all)].join('; ');
}

/** Signed anew as grounding: also what was found within limits before counts no more once an inspector has listed it. */
async function groundWhatIsListed(context: Context, inspection: InspectionRow): Promise<readonly string[]> {
  const { tx, operatorId, actor } = context;
  const list = listInForce(inspection);
  if (!list || inspection.work.every(({ signOff }) => signOff?.airworthy)) return [];
  const hashes: string[] = [];
  const signer = await readSigner(tx, operatorId, actor.personId);
  const under = signer.certificates.some(({ kind }) => kind === 'mechanic') ? 'mechanic' : 'repair-station';
  for (const item of itemsOf(list).filter(({ standing }) => standing === 'unairworthy')) {
    const row = await tx.discrepancy.findUnique({
      where: { operatorId_id: { operatorId, id: item.discrepancyId } },
      select: { state: true },
    });
    // Put right since the list was signed.
    if (row?.state !== 'open') continue;
    const writeUp = await requireOpenWriteUp(tx, operatorId, item.discrepancyId);
    const statement = `Listed as unairworthy at the inspection, list dated ${dayInWords(calendarDate(list.dated))}.`;
    const { id: eventId, hash } = await recordDetermination(context, writeUp, signer, {
      kind: 'severity',
      under,
      statement,
      severity: 'grounding',
      lines: [{ effect: 'supports', cite: '14cfr43.11(b)', because: statement }],
      said: { list: list.hash, severity: 'grounding' },
    });
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: { severity: 'grounding' },
    });
    await tellReporters(context, {
      discrepancyId: writeUp.id,
      what: 'judged',
      eventId,
      byName: actor.name,
      words: statement,
    });
    hashes.push(hash);
  }
  return hashes;
}
