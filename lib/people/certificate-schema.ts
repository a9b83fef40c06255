import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { said } from '../words/said';

export const CERTIFICATE_KINDS = ['pilot', 'mechanic', 'inspection-authorization', 'repair-station'] as const;
export type CertificateKind = (typeof CERTIFICATE_KINDS)[number];

export const PILOT_GRADES = [
  'student',
  'sport',
  'recreational',
  'private',
  'commercial',
  'airline-transport',
] as const;

/** Category and class, 61.5(b)(1) to (4) (from memory); the words an aircraft's type uses for the rating it asks. */
export const PILOT_RATINGS = [
  'airplane-single-engine-land',
  'airplane-multiengine-land',
  'airplane-single-engine-sea',
  'airplane-multiengine-sea',
  'rotorcraft-helicopter',
  'rotorcraft-gyroplane',
  'glider',
  'lighter-than-air-airship',
  'lighter-than-air-balloon',
  'powered-lift',
] as const;

/** Ratings of each kind; none for the inspection authorization, which stands on those of the mechanic. */
export const RATINGS_OF: Readonly<Record<CertificateKind, readonly string[]>> = {
  pilot: PILOT_RATINGS,
  mechanic: ['airframe', 'powerplant'],
  'inspection-authorization': [],
  'repair-station': ['airframe', 'powerplant', 'propeller', 'radio', 'instrument'],
};

const dateOrNone = z.union([z.literal(''), z.iso.date(said('Enter a date, or leave it empty.'))]);
/** Left open stays unknown, and what rests on it is refused with its paragraph. */
const yesNo = z.enum(['yes', 'no', 'not-said']);

/** What is typed of a certificate. Fields of other kinds may be there and are left alone. */
export const enterCertificateInput = z
  .object({
    requestId,
    personId: z.uuid(),
    kind: z.enum(CERTIFICATE_KINDS),
    /** The certificate this one takes the place of; empty for the first of its kind. */
    renewsId: z.union([z.literal(''), z.uuid()]),
    number: writtenWords(said('The number'), 40),
    grade: z.union([z.literal(''), z.enum(PILOT_GRADES)]),
    ratings: z.array(z.string().max(40)),
    issuedOn: dateOrNone,
    expiresOn: dateOrNone,
    recentExperienceThrough: dateOrNone,
    firstYearActivityMet: yesNo,
    authorisedToSign: yesNo,
  })
  .superRefine((typed, { addIssue }) => {
    const wrong = (path: string, message: string) => addIssue({ code: 'custom', path: [path], message });
    const known = RATINGS_OF[typed.kind];
    if (
      typed.kind !== 'inspection-authorization' &&
      typed.ratings.some((rating) => !known.includes(rating))
    ) {
      wrong('ratings', said('This kind of certificate has no such rating.'));
    }
    if (typed.kind === 'pilot' && typed.grade === '') wrong('grade', said('Choose the grade.'));
    if ((typed.kind === 'mechanic' || typed.kind === 'repair-station') && typed.ratings.length === 0) {
      wrong('ratings', said('Choose the ratings that stand on it.'));
    }
    if (typed.kind === 'inspection-authorization' && !/^\d{3}[13579]-03-31$/.test(typed.expiresOn)) {
      wrong(
        'expiresOn',
        said('Enter the 31 March of the odd year on which it expires: 65.92(a) knows no other day.'),
      );
    }
    if (typed.issuedOn !== '' && typed.expiresOn !== '' && typed.expiresOn < typed.issuedOn) {
      wrong('expiresOn', said('It cannot expire before it was issued.'));
    }
  });

export type CertificateTyped = z.output<typeof enterCertificateInput>;
