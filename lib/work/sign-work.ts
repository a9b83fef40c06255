import { command } from '../access/service';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { complyByWork } from '../inspections/comply-by-work';
import { rulingsForRequirementWork, whoCanSignRequirementWork } from '../inspections/work-of-requirement';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import { workerStanding43_3, type WorkerStanding } from '../rules/part-43/43-3-who-may-perform';
import { closeWriteUp, settlesWriteUp, tellOfWork } from './close-write-up';
import { refuseOtherDoor } from './enter-work';
import { entryContent, entryHash, requireWork, type WorkRow } from './entry';
import { keepSignOff } from './keep-sign-off';
import { signWorkInput } from './schema';
import { entryLinesOf, workerAsked, workToSign } from './signing-lines';
import { filled, said } from '../words/said';

/** What the signer declares by signing, shown before and kept with the signature. */
export const RETURN_TO_SERVICE_STATEMENT =
  'I approve the aircraft for return to service with respect to the work described here and no other (14 CFR 43.9).';

/**
 * Approval for return to service. The password was asked again at the door. Here the law is asked: does this person's
 * certificate reach this work (43.7, part 65), is the entry whole (43.9(a)), is all complete that 43.5 asks, and could
 * whoever did the work do it (43.3)? If so the signature is bound to the entry and the work is frozen. Work on a write-up
 * closes it; work on what recurs answers it; a correction takes the place of the entry it corrects.
 */
export const signWork = command({
  verb: 'work.sign',
  input: signWorkInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const work = await requireWork(tx, operatorId, input.workId);
    refuseUnlessReady(work, input.entryHash);
    const zone = work.aircraft.base.zone;
    const on = dayAtBase(now, zone);
    const facts = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const toSign = workToSign(work, facts);
    const recurs = work.requirement?.kind ?? null;
    const ruling = rulingsForRequirementWork(facts, toSign, recurs, on);
    if (!ruling.allowed || !ruling.under) {
      throw new Refusal('signature_refused', {
        say: filled(said('Your certificates do not allow this signature. {whoCanSignRequirementWork}'), {
          whoCanSignRequirementWork: whoCanSignRequirementWork(toSign, recurs),
        }),
        lines: linesOf(ruling.lines),
      });
    }
    const entryLines = entryLinesOf(work, facts, ruling.under, on);
    const gaps = entryLines.filter((line) => line.effect === 'bars');
    if (gaps.length > 0) {
      throw new Refusal('signature_refused', {
        say: said('The entry is not complete.'),
        lines: linesOf(gaps),
      });
    }
    const asked = workerAsked(work, facts, ruling.under);
    const worker = asked ? [workerStanding43_3(input.worker ?? null)] : [];
    refuseUnsaid(worker);
    const supervised = asked ? supervisedBy(input.worker ?? null) : null;
    const { certificate, capacity } = ruling.under;
    const content = {
      entry: entryContent({ ...work, supervised }),
      statement: RETURN_TO_SERVICE_STATEMENT,
      signer: { name: actor.name, capacity, certificate },
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, zone);
    const signOffId = await keepSignOff(
      context,
      {
        workId: work.id,
        certificate,
        statement: RETURN_TO_SERVICE_STATEMENT,
        lines: [...ruling.lines, ...entryLines, ...worker],
      },
      signature,
    );
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: { state: 'signed', supervised },
    });
    if (settlesWriteUp(work)) await closeWriteUp(context, work, input.placardRemoved);
    const record = await complyByWork(context, work, { signOffId, approvedBy: actor.name });
    await factsChanged(tx, operatorId, work.aircraftId);
    await tellOfWork(context, work, signOffId);
    return {
      value: { signOffId, hash: signature.hash },
      audit: {
        subjectKind: 'work',
        subjectId: work.id,
        detail: {
          title: work.title,
          writeUp: work.discrepancy?.number ?? null,
          capacity,
          hash: signature.hash,
          ...(record !== null && { record }),
        },
      },
    };
  },
});

/** The entry stands, is the one the signer read, and is signed here and not with an inspection. */
function refuseUnlessReady(work: WorkRow, hashSeen: string): void {
  refuseOtherDoor(work);
  if (work.state === 'started') {
    throw new Refusal('conflict', { say: said('Write the entry first: there is nothing to sign yet.') });
  }
  if (work.state !== 'entered') throw new Refusal('conflict', { say: said('This work is closed already.') });
  if (entryHash(work) !== hashSeen) {
    throw new Refusal('superseded', {
      say: said('The entry was changed after you read it. Read it again, then sign.'),
    });
  }
}

/** Somebody else did the work, and the signer has not said how they could. */
function refuseUnsaid(worker: readonly ReturnType<typeof workerStanding43_3>[]): void {
  const unsaid = worker.filter((line) => line.effect === 'bars');
  if (unsaid.length === 0) return;
  throw new Refusal('invalid', {
    fields: { worker: [said('Say how whoever did the work could do it.')] },
    lines: linesOf(unsaid),
  });
}

const supervisedBy = (worker: WorkerStanding | null): boolean | null =>
  worker === null ? null : worker === 'supervised';
