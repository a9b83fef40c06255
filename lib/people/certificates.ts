import { command } from '../access/service';
import type { Tx } from '../db/client';
import { calendarDateOrNull, dateColumn } from '../db/dates';
import { fieldRefusal, Refusal } from '../problems';
import { enterCertificateInput, type CertificateTyped } from './certificate-schema';
import { requirePersonHere } from './require-person';
import { endCertificateInput } from './schema';
import { CERTIFICATE_STANDS } from './signer';
import { todayOfPerson } from './today';
import { filled, said } from '../words/said';

const yesNoNull = (said: 'yes' | 'no' | 'not-said'): boolean | null =>
  said === 'not-said' ? null : said === 'yes';
const dateOrNull = (typed: string): Date | null => (typed === '' ? null : dateColumn(typed));

/** Columns of the kind that was chosen; what was typed for another kind is not taken. */
function columnsOf(typed: CertificateTyped) {
  const { kind, number } = typed;
  return {
    kind,
    number,
    grade: kind === 'pilot' ? typed.grade : null,
    // 61.83 and 61.87 (from memory): a student holds no category and class ratings, the instructor endorses.
    ratings:
      kind === 'inspection-authorization' || typed.grade === 'student' ? [] : [...new Set(typed.ratings)],
    issuedOn: dateOrNull(typed.issuedOn),
    expiresOn: kind === 'mechanic' ? null : dateOrNull(typed.expiresOn),
    recentExperienceThrough: kind === 'mechanic' ? dateOrNull(typed.recentExperienceThrough) : null,
    firstYearActivityMet: kind === 'inspection-authorization' ? yesNoNull(typed.firstYearActivityMet) : null,
    authorisedToSign: kind === 'repair-station' ? yesNoNull(typed.authorisedToSign) : null,
  };
}

/**
 * Enters a certificate, or renews one: a new row that names the one it takes the place of, so that what stood on which day
 * can be told later. One of each kind stands at a time. It raises no aircraft's facts: signatures ask at the moment of
 * signing, and a release asks the pilot's certificate again when it is accepted. The id is the request's.
 */
export const enterCertificate = command({
  verb: 'certificate.enter',
  input: enterCertificateInput,
  async run({ tx, operatorId, actor, now, requestId }, typed) {
    const { personId, kind, renewsId } = typed;
    const person = await requirePersonHere(tx, operatorId, personId);
    const today = await todayOfPerson(tx, operatorId, person, now);
    if (typed.issuedOn > today) throw fieldRefusal('issuedOn', said('This day is still to come.'));
    const standing = await tx.certificate.findFirst({
      where: { operatorId, personId, kind, ...CERTIFICATE_STANDS },
    });
    if ((standing?.id ?? '') !== renewsId) {
      throw new Refusal('superseded', {
        say: standing
          ? said('A certificate of this kind stands already. Look at it, then renew it.')
          : said('The certificate to be renewed does not stand any more. Look again.'),
      });
    }
    await requireOwnNumber(tx, operatorId, typed);
    const columns = columnsOf(typed);
    await tx.certificate.create({
      data: {
        id: requestId,
        operatorId,
        personId,
        ...columns,
        enteredById: actor.personId,
        enteredAt: now,
        supersedesId: standing?.id ?? null,
      },
    });
    return {
      value: { certificateId: requestId },
      // Without the number, which may be erased one day.
      audit: {
        subjectKind: 'person',
        subjectId: personId,
        detail: {
          certificateId: requestId,
          kind,
          renews: standing?.id ?? null,
          grade: columns.grade,
          ratings: columns.ratings,
          expiresOn: calendarDateOrNull(columns.expiresOn),
          recentExperienceThrough: calendarDateOrNull(columns.recentExperienceThrough),
          firstYearActivityMet: columns.firstYearActivityMet,
          authorisedToSign: columns.authorisedToSign,
        },
      },
    };
  },
});

/** One's own number only: a slip into somebody else's would sign in their name. A repair station's is everybody's there. */
async function requireOwnNumber(tx: Tx, operatorId: string, { personId, kind, number }: CertificateTyped) {
  if (kind === 'repair-station') return;
  const other = await tx.certificate.findFirst({
    where: {
      operatorId,
      kind,
      number,
      personId: { not: personId },
      person: { leftOn: null },
      ...CERTIFICATE_STANDS,
    },
    include: { person: { select: { name: true } } },
  });
  if (other)
    throw fieldRefusal(
      'number',
      filled(said('This number stands with {name}. Check both.'), { name: other.person.name }),
    );
}

/**
 * Ends a certificate that was suspended, revoked, surrendered or entered by mistake: from now on it carries nothing. What
 * was signed under it stands. Refuses one that was renewed or ended already, and a day to come.
 */
export const endCertificate = command({
  verb: 'certificate.end',
  input: endCertificateInput,
  async run({ tx, operatorId, actor, now }, { certificateId, revokedOn, words }) {
    const held = await tx.certificate.findUnique({
      where: { operatorId_id: { operatorId, id: certificateId } },
      include: { person: true, supersedesBy: { select: { id: true } } },
    });
    if (!held) throw new Refusal('not_found', { say: said('There is no such certificate here.') });
    if (held.revokedOn || held.supersedesBy) {
      throw new Refusal('conflict', { say: said('This certificate does not stand any more.') });
    }
    if (revokedOn > (await todayOfPerson(tx, operatorId, held.person, now))) {
      throw fieldRefusal(
        'revokedOn',
        said('This day is still to come. Enter it on the day: it works at once.'),
      );
    }
    await tx.certificate.update({
      where: { operatorId_id: { operatorId, id: certificateId } },
      data: { revokedOn: dateColumn(revokedOn), revokedWhy: words, revokedById: actor.personId },
    });
    return {
      value: { certificateId },
      audit: {
        subjectKind: 'person',
        subjectId: held.personId,
        detail: { certificateId, kind: held.kind, revokedOn },
      },
    };
  },
});
