/**
 * The flight form: what it holds as typed, which questions it asks, and what it sends. Pure, shared by browser and
 * tests. Nothing is answered for the person at the desk: an unanswered question and one that was not asked are both
 * sent as not said.
 */
import type { Problem } from '../problems';
import type { AtcAnswer, Purpose } from '../rules/operations';
import { baseIn, identIn } from './place-text';

/** Questions with yes and no, in the order in which the form asks them. */
export const QUESTIONS = [
  'transponderAirspace',
  'adsbAirspace',
  'controlledAirspace',
  'usesVor',
  'overWaterBeyondGlide',
  'trainingWithin50Nm',
  'crewOnly',
] as const;
export type Question = (typeof QUESTIONS)[number];

/** The form as typed. Empty text stands for nothing chosen or typed yet. */
export type FlightForm = {
  aircraftId: string;
  pilotId: string;
  /** A place as lib/releases/place-text.ts writes it, or as typed. */
  from: string;
  to: string;
  departLocal: string;
  arriveLocal: string;
  rules: '' | 'VFR' | 'IFR';
  purpose: '' | Purpose;
  plannedHours: string;
  highestAltitudeFtMsl: string;
  atcTransponder: AtcAnswer;
  atcAdsb: AtcAnswer;
  continuingToRepair: boolean;
  permitId: string;
  /** The plan it is composed from, and the aircraft that is planned for; with another it is another flight. */
  plannedFlightId: string;
  plannedAircraftId: string;
} & Record<Question, '' | 'yes' | 'no'>;

/** An empty form, with an aircraft when one is given. Asking nothing of air traffic control is the strict case. */
export const emptyFlightForm = (aircraftId = ''): FlightForm => ({
  aircraftId,
  pilotId: '',
  from: '',
  to: '',
  departLocal: '',
  arriveLocal: '',
  rules: '',
  purpose: '',
  plannedHours: '',
  transponderAirspace: '',
  adsbAirspace: '',
  controlledAirspace: '',
  usesVor: '',
  overWaterBeyondGlide: '',
  trainingWithin50Nm: '',
  crewOnly: '',
  highestAltitudeFtMsl: '',
  atcTransponder: 'not-asked',
  atcAdsb: 'not-asked',
  continuingToRepair: false,
  permitId: '',
  plannedFlightId: '',
  plannedAircraftId: '',
});

type Chosen = Pick<FlightForm, 'rules' | 'purpose'> & Partial<Pick<FlightForm, 'permitId'>>;

const FOR_HIRE: readonly FlightForm['purpose'][] = ['instruction-for-hire', 'carriage-for-hire'];

/**
 * Whether a question can decide a flight under these rules for this purpose. `aside`: only as a relief in a rare case
 * (91.207(e)(2): crew only, ferry to repair), so the form keeps it apart.
 */
const MATTERS: Record<Question, (chosen: Chosen) => 'asked' | 'aside' | null> = {
  // 91.215(b), 91.225: any flight.
  transponderAirspace: () => 'asked',
  adsbAirspace: () => 'asked',
  // 91.411(a)(1): IFR in controlled airspace. 91.171, 91.205(d)(2), (e): IFR by VOR.
  controlledAirspace: ({ rules }) => (rules === 'IFR' ? 'asked' : null),
  usesVor: ({ rules }) => (rules === 'IFR' ? 'asked' : null),
  // 91.205(b)(12): for hire over water.
  overWaterBeyondGlide: ({ purpose }) => (FOR_HIRE.includes(purpose) ? 'asked' : null),
  // 91.207(f)(3): training.
  trainingWithin50Nm: ({ purpose }) => (purpose === 'instruction-for-hire' ? 'asked' : null),
  // 91.407(b): check flight. 91.207(e)(2): ferry. 21.199: who may be aboard under a permit.
  crewOnly: ({ purpose, permitId }) =>
    permitId || purpose === 'check-flight' || purpose === 'to-inspection'
      ? 'asked'
      : purpose === 'private'
        ? 'aside'
        : null,
};

/** The questions to ask, in order: `asked` in plain sight, `aside` under "more". */
export const questionsFor = (chosen: Chosen, where: 'asked' | 'aside'): Question[] =>
  QUESTIONS.filter((question) => MATTERS[question](chosen) === where);

/** The altitude decides under IFR only: 91.205(e), 91.411(d). */
export const asksAltitude = ({ rules }: Chosen): boolean => rules === 'IFR';

const WHOLE_FEET = /^\d{1,6}$/;

/**
 * What is sent for the form as typed. An answer to a question that is not asked any more stays in the form, but is
 * sent as not said. An altitude that is no whole number goes as typed, for the service to refuse with its words. A place
 * that is none of `bases` goes by its identifier.
 */
export function flightAsTyped(form: FlightForm, bases: readonly { id: string; ident: string }[] = []) {
  const sentAs = (question: Question): 'yes' | 'no' | 'not-said' =>
    MATTERS[question](form) !== null && (form[question] === 'yes' || form[question] === 'no')
      ? form[question]
      : 'not-said';
  const from = baseIn(form.from, bases);
  const to = baseIn(form.to, bases);
  return {
    aircraftId: form.aircraftId,
    pilotId: form.pilotId || null,
    fromBaseId: from?.id ?? '',
    toBaseId: to?.id ?? '',
    ...(from || identIn(form.from) === '' ? {} : { fromIdent: identIn(form.from) }),
    ...(to || identIn(form.to) === '' ? {} : { toIdent: identIn(form.to) }),
    departLocal: form.departLocal,
    arriveLocal: form.arriveLocal,
    rules: form.rules,
    purpose: form.purpose,
    plannedHours: form.plannedHours,
    overWaterBeyondGlide: sentAs('overWaterBeyondGlide'),
    transponderAirspace: sentAs('transponderAirspace'),
    adsbAirspace: sentAs('adsbAirspace'),
    controlledAirspace: sentAs('controlledAirspace'),
    usesVor: sentAs('usesVor'),
    trainingWithin50Nm: sentAs('trainingWithin50Nm'),
    crewOnly: sentAs('crewOnly'),
    highestAltitudeFtMsl: asksAltitude(form) ? feet(form.highestAltitudeFtMsl) : null,
    atcTransponder: form.atcTransponder,
    atcAdsb: form.atcAdsb,
    continuingToRepair: form.continuingToRepair,
    // Not there at all without a permit, as in requests from before there were any.
    ...(form.permitId === '' ? {} : { permitId: form.permitId }),
    ...(form.plannedFlightId !== '' && form.plannedAircraftId === form.aircraftId
      ? { plannedFlightId: form.plannedFlightId }
      : {}),
  };
}
export type FlightAsTyped = ReturnType<typeof flightAsTyped>;

const FIELD_OF_FORM: Readonly<Record<string, string>> = {
  fromBaseId: 'from',
  fromIdent: 'from',
  toBaseId: 'to',
  toIdent: 'to',
};

/** A refusal of what was sent, by the fields of the form: a place is sent as one of two and typed as one. */
export function problemOfForm(problem: Problem): Problem {
  if (!problem.fields) return problem;
  const fields: Record<string, string[]> = {};
  for (const [path, messages] of Object.entries(problem.fields)) {
    const field = FIELD_OF_FORM[path] ?? path;
    fields[field] = [...new Set([...(fields[field] ?? []), ...messages])];
  }
  return { ...problem, fields };
}

function feet(typed: string): number | string | null {
  const text = typed.trim();
  if (text === '') return null;
  return WHOLE_FEET.test(text) ? Number(text) : text;
}
