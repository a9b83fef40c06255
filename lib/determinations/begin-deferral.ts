import { randomUUID } from 'node:crypto';
import { command, type Context } from '../access/service';
import { calendarDateOrNull, dateColumn } from '../db/dates';
import { aircraftFacts, basePlace, readAircraft } from '../fleet/facts';
import { factsChanged } from '../fleet/require-aircraft';
import { tellReporters } from '../notices/tell-reporters';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { dayInWords } from '../rules/in-words';
import { localDate } from '../rules/months';
import { deferralEligibility, type EligibilityReport } from '../rules/part-91/91-213-deferral-eligibility';
import { mayDetermineNoHazard, toDeterminer } from '../rules/who-may-determine';
import { endCarriedOver, type PutAside } from './end-carried-over';
import { refuseListedUnairworthy } from './listed-unairworthy';
import { openDeferralWork } from './open-deferral-work';
import { recordDetermination } from './record-determination';
import { beginDeferralInput } from './schema';
import { linesOf, requireAllowed, requireOpenWriteUp, underWork } from './write-up';
import { filled, said } from '../words/said';

/**
 * Defers an inoperative item: asks the whole of 91.213 again with the facts of this moment, takes the signed (d)(4)
 * determination, and leaves what is still owed: the placard, and the part 43 entry where removing or deactivating was
 * maintenance. Until those are there the answer stays no go. Refuses with the paragraphs when 91.213 closes the way or
 * the signer may not determine, and what stands on a signed list of 43.11(b) as unairworthy. A deferral taken over from a
 * paper that does not count ends with it; any other that stands refuses the new one.
 */
export const beginDeferral = command({
  verb: 'deferral.begin',
  input: beginDeferralInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const writeUp = await requireOpenWriteUp(tx, operatorId, input.discrepancyId);
    const putAside = await endCarriedOver(context, writeUp);
    if (underWork(writeUp)) {
      throw new Refusal('conflict', {
        say: filled(said('Work on {number} has begun: sign it or give it up first.'), {
          number: writeUp.number,
        }),
      });
    }
    await refuseListedUnairworthy(tx, operatorId, writeUp);
    if (writeUp.severity === null) {
      throw new Refusal('conflict', { say: said('Judge the write-up first: undecided means grounding.') });
    }
    if (writeUp.severity === 'grounding') {
      throw new Refusal('conflict', {
        say: said(
          'This is judged grounding, and a deferral would not let it fly. Judge it anew first, with a signature.',
        ),
      });
    }
    const report = await eligibilityNow(context, writeUp.aircraftId, writeUp.id);
    if (!report.deferrable) {
      const lines = linesOf([...report.gate, ...report.table.flatMap((row) => row.lines)]);
      throw new Refusal('signature_refused', {
        say: said('This cannot be deferred. It is repaired, or found within limits by a mechanic.'),
        lines: distinct(lines),
      });
    }
    if (input.nature === 'damage') {
      throw fieldRefusal(
        'nature',
        said(
          'Damage comes first (91.405(a)): judge it as damage, make it safe, then ask about what still does not work.',
        ),
      );
    }
    refuseAloneOnly(report, input);
    if (input.method === 'removed' && !input.deactivationIsMaintenance) {
      throw fieldRefusal(
        'deactivationIsMaintenance',
        said('Removal is maintenance and is recorded under 43.9.'),
      );
    }
    const melItemId =
      report.path === 'mel' ? await melItemOf(context, writeUp.aircraftId, writeUp.equipmentId) : null;
    if (report.path === 'mel' && input.melProceduresDone === null) {
      throw fieldRefusal('melProceduresDone', said('Say whether the procedures of the list are done.'));
    }
    const proceduresOwed = report.stepsOwed.some((step) => step.id === 'mel-procedures');
    if (proceduresOwed && !input.melProceduresDone) {
      throw fieldRefusal(
        'melProceduresDone',
        said('The list asks for its procedures first: do them, then defer.'),
      );
    }
    const zone = writeUp.aircraft.base.zone;
    const on = dayAtBase(now, zone);
    if (input.eltFirstRemovedOn !== null && input.eltFirstRemovedOn > on) {
      throw fieldRefusal('eltFirstRemovedOn', said('This day has not come yet.'));
    }
    refuseLaterRemoval(putAside, input.eltFirstRemovedOn);
    const signer = await readSigner(tx, operatorId, actor.personId);
    const facts = signerFacts(signer);
    const ruling = mayDetermineNoHazard(facts, writeUp.aircraft.type.rating, on);
    requireAllowed(ruling);

    const { statement, method, methodWords, placardWording, placardLocation } = input;
    const signed = await recordDetermination(context, writeUp, signer, {
      kind: 'no-hazard',
      under: ruling.under,
      statement,
      lines: ruling.lines,
      said: {
        determiner: toDeterminer(facts, writeUp.aircraft.type.rating),
        noHazard: true,
        nature: input.nature,
        method,
        methodWords,
        deactivationIsMaintenance: input.deactivationIsMaintenance,
        placardWording,
        placardLocation,
        melProceduresDone: input.melProceduresDone,
        eltFirstRemovedOn: input.eltFirstRemovedOn,
        eltRecordComplete: input.eltRecordComplete,
        ...togetherSaid(report),
        eligibility: report,
      },
    });
    const deferralId = randomUUID();
    await tx.deferral.create({
      data: {
        id: deferralId,
        operatorId,
        discrepancyId: writeUp.id,
        determinationId: signed.id,
        basis: report.path === 'mel' ? 'mel' : '91.213(d)',
        method,
        methodWords,
        deactivationIsMaintenance: input.deactivationIsMaintenance,
        melItemId,
        melProceduresDone: input.melProceduresDone ?? false,
        // The clock starts at the write-up, not at the placard.
        recordedOn: dateColumn(localDate(writeUp.openedAt.toISOString(), zone)),
        eltFirstRemovedOn: input.eltFirstRemovedOn ? dateColumn(input.eltFirstRemovedOn) : null,
        eltRecordComplete: input.eltRecordComplete,
        eligibility: report as object,
        begunAt: now,
      },
    });
    const placardId = randomUUID();
    await tx.placard.create({
      data: { id: placardId, operatorId, deferralId, wording: placardWording, location: placardLocation },
    });
    if (input.deactivationIsMaintenance) await openDeferralWork(context, writeUp, deferralId, input);
    await tx.discrepancy.update({
      where: { operatorId_id: { operatorId, id: writeUp.id } },
      data: { state: 'deferred' },
    });
    await factsChanged(tx, operatorId, writeUp.aircraftId);
    await tellReporters(context, {
      discrepancyId: writeUp.id,
      what: 'deferred',
      eventId: deferralId,
      byName: actor.name,
      words: `${methodWords}\n${statement}`,
    });
    return {
      value: { deferralId, placardId },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: writeUp.id,
        detail: {
          number: writeUp.number,
          deferralId,
          basis: report.path,
          method,
          hash: signed.hash,
          ...(putAside ? { endedCarriedOver: { deferralId: putAside.deferralId, why: putAside.why } } : {}),
        },
      },
    };
  },
});

/** 91.207(f)(10)(ii): the 90 days run from the first removal, also when it is deferred anew. */
function refuseLaterRemoval(putAside: PutAside | null, on: string | null): void {
  const first = calendarDateOrNull(putAside?.eltFirstRemovedOn ?? null);
  if (first === null || (on !== null && on <= first)) return;
  throw fieldRefusal(
    'eltFirstRemovedOn',
    filled(said('The paper says that it was first removed on {day}. Enter that day or an earlier one.'), {
      day: dayInWords(first),
    }),
  );
}

/** What else was out when the hazard was answered, as it is signed; nothing where nothing else was. */
export const togetherSaid = ({ together }: EligibilityReport) =>
  together.length > 0 ? { together: together.map(({ number, title, why }) => ({ number, title, why })) } : {};

/** (d)(4) is asked of the aircraft as it will fly: with everything else that is out, and with what was seen when answering. */
export function refuseAloneOnly(
  { together }: EligibilityReport,
  input: { readonly together?: true; readonly togetherWith?: readonly string[] },
): void {
  const names = together.map(({ number, title }) => `${number} ${title}`).join('; ');
  if (together.length > 0 && !input.together) {
    throw fieldRefusal('together', filled(said('Answer for it together with: {names}.'), { names }));
  }
  const { togetherWith } = input;
  if (togetherWith && together.some(({ id }) => !togetherWith.includes(id))) {
    throw fieldRefusal(
      'together',
      filled(said('More is out than when you looked. Look again; now counted together: {names}.'), { names }),
    );
  }
}

/** 91.213 asked with the facts as they are inside this transaction. */
export async function eligibilityNow(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  aircraftId: string,
  discrepancyId: string,
): Promise<EligibilityReport> {
  const row = await readAircraft(tx, operatorId, aircraftId);
  if (!row) throw new Refusal('not_found');
  const facts = aircraftFacts(row);
  const discrepancy = facts.discrepancies.find((one) => one.id === discrepancyId);
  if (!discrepancy) throw new Refusal('not_found');
  const base = basePlace(row.base);
  return deferralEligibility(facts, discrepancy, base, dayAtBase(now, base.zone), now.toISOString());
}

async function melItemOf({ tx, operatorId }: Context, aircraftId: string, equipmentId: string | null) {
  const item = await tx.melItem.findFirst({
    where: { operatorId, equipmentId: equipmentId ?? undefined, mel: { aircraftId, endedAt: null } },
  });
  if (!item || !equipmentId)
    throw new Refusal('conflict', { say: said('The minimum equipment list has no such item.') });
  return item.id;
}

/** One of each, where several rows say the same. */
export const distinct = <T extends { because: string }>(lines: readonly T[]): T[] =>
  lines.filter((line, index) => lines.findIndex((other) => other.because === line.because) === index);
