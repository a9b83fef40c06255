import { type Role } from '@/lib/access/policy';
import { type CertificateKind } from '@/lib/people/certificate-schema';
import { type LinkState, type PersonState } from '@/lib/people/person-state';
import { said } from '@/lib/words/said';

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  pilot: said('Pilot'),
  mechanic: said('Mechanic'),
  dispatcher: said('Dispatcher'),
  manager: said('Manager'),
};

/** What each role opens, beside its box. */
export const ROLE_SAYS: Readonly<Record<Role, string>> = {
  pilot: said('Walks around, writes up, takes released flights.'),
  mechanic: said('Judges, repairs and signs, as far as the certificates reach.'),
  dispatcher: said('Asks for answers and releases flights.'),
  manager: said('Sets up the school: people, fleet, papers, rules of the house.'),
};

export const KIND_WORDS: Readonly<Record<CertificateKind, string>> = {
  pilot: said('Pilot certificate'),
  mechanic: said('Mechanic certificate'),
  'inspection-authorization': said('Inspection authorization'),
  'repair-station': said('Repair station'),
};

export const GRADE_WORDS: Readonly<Record<string, string>> = {
  student: said('Student'),
  sport: said('Sport'),
  recreational: said('Recreational'),
  private: said('Private'),
  commercial: said('Commercial'),
  'airline-transport': said('Airline transport'),
};

export const RATING_WORDS: Readonly<Record<string, string>> = {
  'airplane-single-engine-land': said('Airplane single-engine land'),
  'airplane-multiengine-land': said('Airplane multiengine land'),
  'airplane-single-engine-sea': said('Airplane single-engine sea'),
  'airplane-multiengine-sea': said('Airplane multiengine sea'),
  'rotorcraft-helicopter': said('Helicopter'),
  'rotorcraft-gyroplane': said('Gyroplane'),
  glider: said('Glider'),
  'lighter-than-air-airship': said('Airship'),
  'lighter-than-air-balloon': said('Balloon'),
  'powered-lift': said('Powered-lift'),
  airframe: said('Airframe'),
  powerplant: said('Powerplant'),
  propeller: said('Propeller'),
  radio: said('Radio'),
  instrument: said('Instrument'),
};

export const STATE_WORDS: Readonly<Record<PersonState, string>> = {
  here: said('Works here'),
  invited: said('Invited, not yet in'),
  left: said('Has left'),
  erased: said('Erased'),
};

export const LINK_WORDS: Readonly<Record<LinkState['kind'], string>> = {
  invitation: said('Invitation'),
  'password-reset': said('Link for a new password'),
};

export const EVENT_WORDS: Readonly<Record<string, string>> = {
  joined: said('Joined'),
  left: said('Has left'),
  returned: said('Returned'),
  roles: said('Roles changed'),
  erased: said('Data erased'),
};
