import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, instant } from '../db/dates';
import { letterSettingsOrNone } from '../notices/letter-settings';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { CalendarDate, Instant } from '../rules/facts';
import type { NamesKept } from '../rules/part-91/91-417-retention';
import { CERTIFICATE_ROW, certificateView, type CertificateView } from './certificate-view';
import { rowsKept, type KeptRows } from './erase-person';
import { nameIn, namesOf } from './names';
import { namesKeptOf } from './names-kept';
import { PERSON_ROW, personHead, type PersonHead } from './person-state';
import type { BaseChoice } from './read-people';
import { said } from '../words/said';

export interface PersonPage extends PersonHead {
  readonly asOf: Instant;
  readonly today: CalendarDate;
  readonly isOneself: boolean;
  readonly bases: readonly BaseChoice[];
  readonly sendsLetters: boolean;
  /** Newest first; those that stand before those that do not. */
  readonly certificates: readonly CertificateView[];
  readonly naming: {
    readonly id: string;
    readonly words: string;
    readonly at: Instant;
    readonly byName: string;
  } | null;
  readonly events: readonly {
    readonly id: string;
    readonly what: string;
    readonly on: CalendarDate;
    readonly words: string;
    readonly byName: string;
  }[];
  /** What waits on this person, to be settled before they leave. */
  readonly waiting: { readonly flights: number; readonly work: number };
  readonly openSessions: number;
  readonly secondFactors: number;
  /** What an erasure would leave, and how long the law asks for it. Only of somebody who has left. */
  readonly erasure: { readonly kept: readonly KeptRows[]; readonly signed: NamesKept } | null;
}

/** One person, for the office. Refuses `not_found`. */
export const readPerson = query({
  verb: 'person.read',
  input: z.object({ personId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { personId }): Promise<PersonPage> {
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const row = await tx.person.findUnique({
      where: { operatorId_id: { operatorId, id: personId } },
      include: {
        ...PERSON_ROW,
        certificates: { include: CERTIFICATE_ROW, orderBy: { enteredAt: { sort: 'desc', nulls: 'last' } } },
        preventiveAuthorizations: {
          where: { preventiveWithdrawal: { is: null } },
          orderBy: { grantedAt: 'desc' },
          take: 1,
        },
        events: { orderBy: { at: 'desc' } },
      },
    });
    if (!row) throw new Refusal('not_found', { say: said('There is no such person here.') });
    const head = personHead(row, now, bases[0]?.zone ?? 'UTC');
    const today = dayAtBase(now, head.zone);
    const [naming] = row.preventiveAuthorizations;
    const names = await namesOf(tx, [
      ...row.events.map(({ byId }) => byId),
      ...(naming ? [naming.grantedById] : []),
    ]);
    const certificates = row.certificates.map((one) => certificateView(one, today));
    const stands = ({ state }: CertificateView) => state === 'stands';
    return {
      ...head,
      asOf: instant(now),
      today,
      isOneself: actor.personId === personId,
      bases: bases.map(({ id, ident, name }) => ({ id, ident, name })),
      sendsLetters: letterSettingsOrNone() !== null,
      certificates: [...certificates.filter(stands), ...certificates.filter((one) => !stands(one))],
      naming: naming
        ? {
            id: naming.id,
            words: naming.words,
            at: instant(naming.grantedAt),
            byName: nameIn(names, naming.grantedById),
          }
        : null,
      events: row.events.map(({ id, what, onDate, words, byId }) => ({
        id,
        what,
        on: calendarDate(onDate),
        words,
        byName: nameIn(names, byId),
      })),
      waiting: {
        flights: await tx.plannedFlight.count({
          where: { operatorId, pilotId: personId, cancelledAt: null, departAt: { gt: now } },
        }),
        work: await tx.maintenanceAction.count({
          where: { operatorId, startedById: personId, state: { in: ['started', 'entered'] } },
        }),
      },
      openSessions: await tx.session.count({
        where: { operatorId, personId, endedAt: null, expiresAt: { gt: now } },
      }),
      secondFactors: await tx.secondFactor.count({
        where: { operatorId, personId, endedAt: null, confirmedAt: { not: null } },
      }),
      erasure:
        head.state === 'left'
          ? {
              kept: await rowsKept(tx, operatorId, personId),
              signed: await namesKeptOf(tx, operatorId, personId, today),
            }
          : null,
    };
  },
});
