import { calendarDate, calendarDateOrNull } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { Refusal } from '../problems';
import { factOf, unknown } from '../rules/facts';
import type { PilotGrade } from '../rules/operations';
import type { SignerFacts } from '../rules/people';

/** A certificate that counts: not ended, and not renewed by a newer entry. */
export const CERTIFICATE_STANDS = {
  revokedOn: null,
  supersedesBy: { is: null },
} as const satisfies Prisma.CertificateWhereInput;

/** A person with what decides whether a signature counts: certificates that stand, namings not taken back. */
export const SIGNER = {
  certificates: { where: CERTIFICATE_STANDS },
  preventiveAuthorizations: { where: { preventiveWithdrawal: { is: null } } },
} as const satisfies Prisma.PersonInclude;
export type SignerRow = Prisma.PersonGetPayload<{ include: typeof SIGNER }>;

/** Reads a person with everything that decides whether a signature counts. Refuses `not_found`. */
export async function readSigner(tx: Tx, operatorId: string, personId: string): Promise<SignerRow> {
  const person = await tx.person.findUnique({
    where: { operatorId_id: { operatorId, id: personId } },
    include: SIGNER,
  });
  if (!person) throw new Refusal('not_found');
  return person;
}

/** The person's certificates as facts. Ended and renewed ones are not there; what the record leaves open is unknown. */
export function signerFacts(person: SignerRow): SignerFacts {
  const of = (kind: string) => person.certificates.find((held) => held.kind === kind);
  const pilot = of('pilot');
  const mechanic = of('mechanic');
  const authorization = of('inspection-authorization');
  const station = of('repair-station');
  return {
    id: person.id,
    name: person.name,
    pilot: pilot?.grade
      ? {
          number: pilot.number,
          grade: pilot.grade as PilotGrade,
          ratings: pilot.ratings,
          expiresOn: calendarDateOrNull(pilot.expiresOn),
        }
      : null,
    mechanic: mechanic
      ? {
          number: mechanic.number,
          ratings: mechanic.ratings.filter((rating) => rating === 'airframe' || rating === 'powerplant'),
          recentExperienceThrough: factOf(
            calendarDateOrNull(mechanic.recentExperienceThrough),
            `the recent experience of ${person.name}`,
          ),
        }
      : null,
    inspectionAuthorization: authorization?.expiresOn
      ? {
          number: authorization.number,
          expiresOn: calendarDate(authorization.expiresOn),
          firstYearActivityMet:
            authorization.firstYearActivityMet === null
              ? unknown(`whether ${person.name} met the first year's activity`)
              : factOf(authorization.firstYearActivityMet, ''),
        }
      : null,
    repairStation: station
      ? {
          number: station.number,
          ratings: station.ratings as NonNullable<SignerFacts['repairStation']>['ratings'],
          authorisedToSign: factOf(
            station.authorisedToSign,
            `whether ${person.name} may sign for the repair station`,
          ),
          expiresOn: calendarDateOrNull(station.expiresOn),
        }
      : null,
    namedForPreventiveMaintenance: person.preventiveAuthorizations.length > 0,
    leftOn: calendarDateOrNull(person.leftOn),
  };
}
