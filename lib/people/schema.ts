import { z } from 'zod';
import { ROLES } from '../access/policy';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { said } from '../words/said';

const id = z.uuid();

/** One plain address. It is kept in small letters, because it is what one signs in with. */
const email = z
  .string()
  .trim()
  .toLowerCase()
  .min(1, said('An e-mail address is needed.'))
  .max(200, said('The address can have 200 characters at most.'))
  .regex(
    /^[^\s\p{Cc}@<>()",;:\\[\]]+@[^\s\p{Cc}@<>()",;:\\[\]]+$/u,
    said('Enter one plain e-mail address, such as lee@school.example.'),
  );

const facts = {
  name: writtenWords('A name', 80),
  email,
  roles: z.array(z.enum(ROLES)).min(1, said('Choose at least one role.')),
  /** Empty: none. */
  homeBaseId: z.union([z.literal(''), id]),
};

/** mail: the server sends the link. printed: it is shown once, to be printed or scanned. */
const handedOver = z.enum(['mail', 'printed'], { error: said('Choose how the link is handed over.') });

export const invitePersonInput = z.object({ requestId, ...facts, handedOver });
export const makeLinkInput = z.object({ requestId, personId: id, handedOver });
export const endLinkInput = z.object({ requestId, linkId: id });
export const changePersonInput = z.object({ requestId, personId: id, ...facts });

const date = z.iso.date(said('Enter a date.'));

export const leaveInput = z.object({ requestId, personId: id, leftOn: date });
export const returnInput = z.object({ requestId, personId: id });

export const namePreventiveInput = z.object({
  requestId,
  personId: id,
  words: writtenWords(said('What the pilot may do'), 600),
});
export const withdrawPreventiveInput = z.object({
  requestId,
  authorizationId: id,
  words: writtenWords(said('A reason'), 600),
});

export const endCertificateInput = z.object({
  requestId,
  certificateId: id,
  revokedOn: date,
  words: writtenWords(said('A reason'), 300),
});

export const erasePersonInput = z.object({
  requestId,
  personId: id,
  /** The day on which the person, or somebody for them, asked. */
  askedOn: date,
  words: writtenWords(said('Why it is erased'), 300),
  understood: z.literal(true, { error: said('Tick that you know what stays.') }),
  password: z.string().min(1, said('Your password is needed.')).max(200),
});
