import { command, type Context } from '../access/service';
import { calendarDate, calendarDateOrNull } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import { factOf, known } from '../rules/facts';
import { workPartOf } from '../rules/findings/catalogue';
import {
  checkEntry4311,
  checkFindings4311,
  inspectionStatement,
  type InspectionKind,
} from '../rules/part-43/43-11-inspection-entry';
import { checkPerformance4315 } from '../rules/part-43/43-15-performance';
import { dispositionsOwed } from '../rules/part-91/91-405-maintenance-required';
import type { Line } from '../rules/verdict';
import { whoCanSentence, type SigningRuling } from '../rules/who-may-sign';
import { entryContent, requireWork } from '../work/entry';
import { keepSignOff } from '../work/keep-sign-off';
import { completeInspection } from './complete-inspection';
import {
  disposedAt,
  inspectionEntry,
  inspectionHash,
  itemsOf,
  listInForce,
  performanceOf,
  requireInspection,
  requireOpenInspection,
  type InspectionRow,
} from './inspection';
import { openAtInspection } from './open-at-inspection';
import { signInspectionInput } from './schema';
import { mayInspect, partToSign } from './who-inspects';
import { filled, said } from '../words/said';

/**
 * One entry of 43.11 signed, for one logbook: approved as airworthy, or not approved with the list. The law is asked in
 * order: whose signature (43.7, part 65), how it was made (43.15), every deferral disposed of (91.405(c)), what stands
 * open (43.11(b)), the entry itself (43.11(a)). With the last part the inspection is complete and what was due is answered.
 */
export const signInspection = command({
  verb: 'inspection.sign',
  input: signInspectionInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const inspection = await requireOpenInspection(tx, operatorId, input.inspectionId);
    if (inspection.state !== 'entered') {
      throw new Refusal('conflict', { say: said('Write the entry first: there is nothing to sign yet.') });
    }
    const work = inspection.work.find(({ part }) => part === input.part);
    if (!work || work.signOff) throw new Refusal('conflict', { say: said('This part is signed already.') });
    if (inspectionHash(inspection, work) !== input.entryHash) {
      throw new Refusal('superseded', {
        say: said(
          'The entry, the list or a disposition changed after you read it. Read it again, then sign.',
        ),
      });
    }
    const on = dayAtBase(now, inspection.aircraft.base.zone);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const ruling = mayInspect(signerFacts(signer), inspection, input.part, input.madeByMe, on);
    if (!ruling.allowed || !ruling.under) {
      throw new Refusal('signature_refused', {
        say: filled(said('Your certificates do not allow this signature. {whoCanSentence}'), {
          whoCanSentence: whoCanSentence(partToSign(inspection, input.part, true)),
        }),
        lines: linesOf(ruling.lines),
      });
    }
    const asked = await whatTheLawAsks(context, inspection, ruling, input.airworthy);
    const against = asked.filter((line) => line.effect === 'bars');
    if (against.length > 0) {
      throw new Refusal('signature_refused', {
        say: input.airworthy
          ? said('It cannot be certified airworthy as it stands.')
          : said('This cannot be signed as it stands.'),
        lines: linesOf(against),
      });
    }
    const { certificate, capacity } = ruling.under;
    const list = listInForce(inspection);
    const statement = statementOf(inspection, input.airworthy);
    const signature = signatureOver(
      {
        what: 'inspection-entry',
        entry: { ...entryContent(await requireWork(tx, operatorId, work.id)), performedBy: actor.name },
        inspection: inspectionEntry(inspection, work),
        airworthy: input.airworthy,
        madeByMe: input.madeByMe,
        listId: list?.id ?? null,
        statement,
        signer: { name: actor.name, capacity, certificate },
        at: now.toISOString(),
      },
      now,
      inspection.aircraft.base.zone,
    );
    const signOffId = await keepSignOff(
      context,
      {
        workId: work.id,
        certificate,
        statement,
        lines: [...ruling.lines, ...asked],
        airworthy: input.airworthy,
        listId: list?.id ?? null,
      },
      signature,
    );
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: { state: 'signed', performedBy: actor.name },
    });
    const signed = await requireInspection(tx, operatorId, inspection.id);
    const complete = signed.work.every(({ signOff }) => signOff);
    const grounded = complete ? await completeInspection(context, signed) : [];
    await factsChanged(tx, operatorId, inspection.aircraftId);
    return {
      value: { signOffId, hash: signature.hash, complete },
      audit: {
        subjectKind: 'inspection',
        subjectId: inspection.id,
        detail: {
          aircraft: inspection.aircraft.registration,
          kind: inspection.kind,
          part: input.part,
          airworthy: input.airworthy,
          capacity,
          hash: signature.hash,
          complete,
          grounded,
        },
      },
    };
  },
});

/** All that is asked beside the certificate, in the order of the paragraphs. Also for the screen, before anybody signs. */
export async function whatTheLawAsks(
  context: Pick<Context, 'tx' | 'operatorId' | 'actor' | 'now'>,
  inspection: InspectionRow,
  ruling: SigningRuling,
  airworthy: boolean,
): Promise<readonly Line[]> {
  const { facts, open } = await openAtInspection(context, inspection.aircraftId);
  const list = listInForce(inspection);
  const zone = inspection.aircraft.base.zone;
  const how = performanceOf(inspection);
  const certificate = ruling.under?.certificate ?? null;
  return [
    ...dispositionsOwed(open, disposedAt(inspection)),
    ...checkPerformance4315(
      {
        madeToDetermineAirworthiness: factOf(
          how?.madeToDetermineAirworthiness,
          'whether the inspection was made so as to determine airworthiness',
        ),
        checklist: inspection.checklist,
        checklistCoversAppendixD: factOf(
          how?.checklistCoversAppendixD,
          'whether the checklist covers Appendix D',
        ),
        turbine: facts.type.turbine,
        runUp: how?.runUp ?? {},
        engineListed: await engineListed(context, list),
      },
      airworthy,
    ),
    ...checkFindings4311(open, list && itemsOf(list), airworthy),
    ...checkEntry4311(
      {
        kind: inspection.kind as InspectionKind,
        extent: inspection.extent,
        begunOn: known(dayAtBase(inspection.begunAt, zone)),
        completedOn: factOf(calendarDateOrNull(inspection.completedOn), 'the date of the inspection'),
        ttisTenths: factOf(inspection.ttisTenths, 'the total time in service'),
        onRecordTenths: facts.ttisTenths,
        signer: {
          name: context.actor.name,
          signed: true,
          certificateNumber: certificate?.number ?? null,
          certificateKind: certificate?.kind ?? null,
        },
        airworthy: known(airworthy),
        listDated: list ? calendarDate(list.dated) : null,
      },
      dayAtBase(context.now, zone),
    ),
  ];
}

/** Whether a write-up of the powerplant or propeller is on the list as unairworthy and still open. */
async function engineListed(
  { tx, operatorId }: Pick<Context, 'tx' | 'operatorId'>,
  list: ReturnType<typeof listInForce>,
): Promise<boolean> {
  const listed = itemsOf(list).filter(({ standing }) => standing === 'unairworthy');
  const rows = await tx.discrepancy.findMany({
    where: {
      operatorId,
      id: { in: listed.map(({ discrepancyId }) => discrepancyId) },
      state: { not: 'closed' },
    },
    select: { findingKey: true, jasc: true },
  });
  return rows.some(({ findingKey, jasc }) => {
    const part = workPartOf(findingKey, jasc);
    return part.known && (part.value === 'powerplant' || part.value === 'propeller');
  });
}

/** The statement of 43.11(a)(4), or of (a)(5) with the date of the list in force. */
export function statementOf(inspection: InspectionRow, airworthy: boolean): string {
  const kind = inspection.kind as InspectionKind;
  if (airworthy) return inspectionStatement(kind, { airworthy: true });
  const list = listInForce(inspection);
  if (!list) throw new Refusal('conflict', { say: said('The list is signed first.') });
  return inspectionStatement(kind, { airworthy: false, listDated: calendarDate(list.dated) });
}
