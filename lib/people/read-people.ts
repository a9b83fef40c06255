import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { letterSettingsOrNone } from '../notices/letter-settings';
import { dayAtBase } from '../records/signature';
import { wantsALook } from '../rules/certificate-expiry';
import type { Instant } from '../rules/facts';
import { CERTIFICATE_ROW, certificateView, type CertificateView } from './certificate-view';
import { PERSON_ROW, personHead, type PersonHead } from './person-state';
import { CERTIFICATE_STANDS } from './signer';

export interface PersonOnList extends PersonHead {
  /** Those that stand. */
  readonly certificates: readonly CertificateView[];
  /** Of them those that run out soon, have run out, or nobody knows. */
  readonly warnings: readonly CertificateView[];
}

export interface BaseChoice {
  readonly id: string;
  readonly ident: string;
  readonly name: string;
}

export interface People {
  readonly asOf: Instant;
  readonly people: readonly PersonOnList[];
  readonly bases: readonly BaseChoice[];
  /** Whether this server sends letters: otherwise links are printed. */
  readonly sendsLetters: boolean;
}

/** Everybody of the operator, by name, with their certificates as they stand today. */
export const readPeople = query({
  verb: 'person.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<People> {
    const bases = await tx.base.findMany({
      where: { operatorId },
      select: { id: true, ident: true, name: true, zone: true },
      orderBy: { ident: 'asc' },
    });
    const zone = bases[0]?.zone ?? 'UTC';
    const rows = await tx.person.findMany({
      where: { operatorId },
      include: {
        ...PERSON_ROW,
        certificates: { where: CERTIFICATE_STANDS, include: CERTIFICATE_ROW, orderBy: { kind: 'asc' } },
      },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
    });
    return {
      asOf: instant(now),
      people: rows.map((row): PersonOnList => {
        const head = personHead(row, now, zone);
        const certificates = row.certificates.map((one) => certificateView(one, dayAtBase(now, head.zone)));
        return {
          ...head,
          certificates,
          warnings: head.leftOn ? [] : certificates.filter(({ standing }) => wantsALook(standing)),
        };
      }),
      bases: bases.map(({ id, ident, name }) => ({ id, ident, name })),
      sendsLetters: letterSettingsOrNone() !== null,
    };
  },
});
