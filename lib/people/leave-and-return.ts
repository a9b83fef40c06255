import { command } from '../access/service';
import { endSessions } from '../access/sessions';
import type { Tx } from '../db/client';
import { calendarDate, dateColumn } from '../db/dates';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { dayInWords } from '../rules/in-words';
import { LET_IN } from './let-in';
import { writePersonEvent } from './person-events';
import { requireAnotherManager, requirePerson, requirePersonHere } from './require-person';
import { leaveInput, returnInput } from './schema';
import { zoneOfPerson } from './today';
import { filled, said } from '../words/said';

/**
 * Somebody leaves. At once every session and every access key of theirs ends and no link opens; from then on the door
 * refuses them, and lib/rules/who-may-sign.ts refuses any signature of theirs. What they signed stands as it is. Refuses
 * the last manager, a day to come, and a day before something they did here.
 */
export const leavePerson = command({
  verb: 'person.leave',
  input: leaveInput,
  async run({ tx, operatorId, actor, now }, { personId, leftOn }) {
    const person = await requirePersonHere(tx, operatorId, personId);
    if (person.roles.includes('manager')) await requireAnotherManager(tx, operatorId, personId);
    const zone = await zoneOfPerson(tx, operatorId, person.homeBaseId);
    if (leftOn > dayAtBase(now, zone)) {
      throw fieldRefusal('leftOn', said('This day is still to come. Enter it on the day: it works at once.'));
    }
    const last = await tx.auditRow.findFirst({
      // Anybody can ask for a link at the sign-in page, in anybody's name; the console is nobody.
      where: { operatorId, personId, verb: { notIn: ['person.ask-for-link', LET_IN] } },
      orderBy: { seq: 'desc' },
      select: { at: true },
    });
    const lastOn = last && dayAtBase(last.at, zone);
    // Somebody who lets themselves leave has just been here.
    if (lastOn && lastOn > leftOn) {
      throw fieldRefusal(
        'leftOn',
        filled(said('They did something here on {day}. Enter that day or a later one.'), {
          day: dayInWords(lastOn),
        }),
      );
    }
    await tx.person.update({
      where: { operatorId_id: { operatorId, id: personId } },
      data: { leftOn: dateColumn(leftOn), sessionVersion: { increment: 1 } },
    });
    const ended = await endWaysIn(tx, { operatorId, personId, byId: actor.personId, now });
    const words = 'Left.';
    const event = {
      operatorId,
      personId,
      what: 'left',
      onDate: leftOn,
      words,
      byId: actor.personId,
      at: now,
    } as const;
    await writePersonEvent(tx, event);
    return {
      value: { personId, leftOn },
      audit: { subjectKind: 'person', subjectId: personId, detail: { leftOn, ...ended } },
    };
  },
});

/** Ends sessions, access keys and links of somebody. */
export async function endWaysIn(
  tx: Tx,
  { operatorId, personId, byId, now }: { operatorId: string; personId: string; byId: string; now: Date },
): Promise<{ sessions: number; keys: number; links: number }> {
  const open = { operatorId, personId, endedAt: null };
  const ended = { endedAt: now, endedById: byId };
  const sessions = await endSessions(tx, { operatorId, personId, byId, now });
  const keys = await tx.accessKey.updateMany({ where: open, data: ended });
  const links = await tx.personLink.updateMany({
    where: { ...open, usedAt: null },
    data: { endedAt: now, sealedToken: null },
  });
  return { sessions, keys: keys.count, links: links.count };
}

/**
 * Somebody who left is back, with the roles and the password they had. Sessions and keys from before stay ended. That
 * they were away stays on record.
 */
export const returnPerson = command({
  verb: 'person.return',
  input: returnInput,
  async run({ tx, operatorId, actor, now }, { personId }) {
    const person = await requirePerson(tx, operatorId, personId);
    if (!person.leftOn) throw new Refusal('conflict', { say: said('This person has not left.') });
    const zone = await zoneOfPerson(tx, operatorId, person.homeBaseId);
    await tx.person.update({
      where: { operatorId_id: { operatorId, id: personId } },
      data: { leftOn: null, sessionVersion: { increment: 1 }, failedSignIns: 0, lockedUntil: null },
    });
    await writePersonEvent(tx, {
      operatorId,
      personId,
      what: 'returned',
      onDate: dayAtBase(now, zone),
      words: `Had left on ${dayInWords(calendarDate(person.leftOn))}.`,
      byId: actor.personId,
      at: now,
    });
    return {
      value: { personId },
      audit: {
        subjectKind: 'person',
        subjectId: personId,
        detail: { hadLeftOn: calendarDate(person.leftOn) },
      },
    };
  },
});
