import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { calendarDate, dateColumn } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import { localDate } from '../rules/months';
import { mayFlyCheckFlight } from '../rules/who-may-determine';
import { requireWork } from './entry';
import { logCheckFlightInput } from './schema';
import { filled, said } from '../words/said';

/** The operational check of 91.407(b): flown by a rated pilot, private or higher, and logged with a signature. */
export const logCheckFlight = command({
  verb: 'check-flight.log',
  input: logCheckFlightInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const work = await requireWork(tx, operatorId, input.workId);
    if (work.state !== 'signed' || !work.signOff) {
      throw new Refusal('conflict', {
        say: said('The work is not signed yet: 91.407(a) comes before 91.407(b).'),
      });
    }
    if (!work.checkFlightNeeded)
      throw new Refusal('conflict', { say: said('No check flight is owed for this work.') });
    if (work.corrections.some(({ state }) => state === 'signed')) {
      throw new Refusal('conflict', { say: said('This entry was corrected: log it with the newer one.') });
    }
    if (work.checkFlight) throw new Refusal('conflict', { say: said('The check flight is logged already.') });
    const zone = work.aircraft.base.zone;
    const today = dayAtBase(now, zone);
    if (input.flownOn > today) throw fieldRefusal('flownOn', said('This day has not come yet.'));
    if (input.flownOn < localDate(work.signOff.signedAt.toISOString(), zone)) {
      throw fieldRefusal(
        'flownOn',
        filled(said('The work was signed on {calendarDate}; fly after that.'), {
          calendarDate: calendarDate(work.signOff.signedOn),
        }),
      );
    }
    const facts = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const ruling = mayFlyCheckFlight(facts, work.aircraft.type.rating, today);
    if (!ruling.allowed || !facts.pilot)
      throw new Refusal('signature_refused', { lines: linesOf(ruling.lines) });
    const content = {
      what: 'check-flight',
      aircraft: work.aircraft.registration,
      work: work.title,
      signOff: work.signOff.hash,
      by: actor.name,
      certificate: facts.pilot.number,
      flownOn: input.flownOn,
      words: input.words,
    };
    const { content: kept, hash, signedAt } = signatureOver(content, now, zone);
    const id = randomUUID();
    await tx.checkFlight.create({
      data: {
        id,
        operatorId,
        workId: work.id,
        personId: actor.personId,
        personName: actor.name,
        certificateNumber: facts.pilot.number,
        words: input.words,
        flownOn: dateColumn(input.flownOn),
        signedAt,
        content: kept,
        hash,
      },
    });
    await factsChanged(tx, operatorId, work.aircraftId);
    return {
      value: { checkFlightId: id },
      audit: {
        subjectKind: 'work',
        subjectId: work.id,
        detail: { title: work.title, flownOn: input.flownOn, hash },
      },
    };
  },
});
