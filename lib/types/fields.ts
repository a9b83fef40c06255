/**
 * Every fact of an aircraft type as the editor asks for it: the question, the paragraph that asks, and what cannot be judged while it
 * is not known. Plain data; the order is that of the form.
 */
import { said } from '../words/said';

export const CATEGORIES = [
  'airplane',
  'rotorcraft',
  'glider',
  'lighter-than-air',
  'powered-parachute',
  'weight-shift-control',
] as const;

/** Category and class ratings a pilot certificate shows (14 CFR 61.5(b)); the text was not looked up, from memory. */
export const RATINGS = [
  'airplane-single-engine-land',
  'airplane-single-engine-sea',
  'airplane-multiengine-land',
  'airplane-multiengine-sea',
  'rotorcraft-helicopter',
  'rotorcraft-gyroplane',
  'glider',
  'lighter-than-air-airship',
  'lighter-than-air-balloon',
  'powered-parachute-land',
  'powered-parachute-sea',
  'weight-shift-control-land',
  'weight-shift-control-sea',
] as const;

export const COOLINGS = ['air', 'liquid'] as const;

/** Facts that are yes, no, or not known yet. */
export const YES_NO_FACTS = [
  'turbine',
  'mmelPublished',
  'certificatedUnderPart23',
  'altitudeEngine',
  'retractableGear',
  'usesFuses',
] as const;
export type YesNoFact = (typeof YES_NO_FACTS)[number];

/** Facts that are whole numbers, or not known yet. */
export const NUMBER_FACTS = ['maxTakeoffWeightLb', 'fuelTanks', 'seats', 'frontSeats'] as const;
export type NumberFact = (typeof NUMBER_FACTS)[number];

export interface AskedFact {
  readonly label: string;
  /** The paragraph that asks for it, as a label. */
  readonly paragraph: string;
  /** What the engine cannot judge without it. */
  readonly without: string;
}

export type TypeFact = YesNoFact | NumberFact | 'certificatedOn' | 'cooling';

export const ASKED_FACTS: Record<TypeFact, AskedFact> = {
  turbine: {
    label: said('Is the engine a turbine?'),
    paragraph: '91.213(d)(1)',
    without: said('Without it nothing can be deferred on an airplane: paragraph (d) is for nonturbine ones.'),
  },
  maxTakeoffWeightLb: {
    label: said('Maximum takeoff weight'),
    paragraph: '1.1, 91.205(b)(11), (b)(14), 91.213(d)(1)',
    without: said(
      'Without it nobody can say whether the aircraft is small (12,500 lb or less): lights, harnesses and deferrals stay open.',
    ),
  },
  mmelPublished: {
    label: said('Has the FAA published a master minimum equipment list for the type?'),
    paragraph: '91.213(d)(1)',
    without: said('Without it some types cannot be deferred under paragraph (d).'),
  },
  certificatedOn: {
    label: said('Date of the type’s certification'),
    paragraph: '91.205(b)(11)',
    without: said('Without it the anticollision light of 91.205(b)(11) cannot be judged.'),
  },
  certificatedUnderPart23: {
    label: said('Was it certificated under part 23?'),
    paragraph: '91.205(b)(11)',
    without: said('Without it the anticollision light of 91.205(b)(11) cannot be judged.'),
  },
  cooling: {
    label: said('How is the engine cooled?'),
    paragraph: '91.205(b)(6), (b)(7)',
    without: said('Without it nobody knows which temperature gauge each engine needs.'),
  },
  altitudeEngine: {
    label: said('Is the engine turbocharged or supercharged?'),
    paragraph: '91.205(b)(8)',
    without: said('Without it the manifold pressure gauge cannot be judged.'),
  },
  retractableGear: {
    label: said('Does the landing gear retract?'),
    paragraph: '91.205(b)(10)',
    without: said('Without it the landing gear position indicator cannot be judged.'),
  },
  fuelTanks: {
    label: said('Fuel tanks'),
    paragraph: '91.205(b)(9)',
    without: said('Without it nobody knows how many fuel gauges must work.'),
  },
  seats: {
    label: said('Seats in all, pilot seats included'),
    paragraph: '91.205(b)(13), 91.207(f)(9)',
    without: said('Without it nobody knows how many safety belts are needed.'),
  },
  frontSeats: {
    label: said('Front seats'),
    paragraph: '91.205(b)(14)',
    without: said('Without it nobody knows how many shoulder harnesses are needed.'),
  },
  usesFuses: {
    label: said('Are the circuits protected by fuses a pilot could replace?'),
    paragraph: '91.205(c)(6)',
    without: said('Without it spare fuses for night flight cannot be judged. Breakers only: no.'),
  },
};

/** What whoever enters a type signs. */
export const TYPE_STATEMENT = said(
  'I entered the facts of this aircraft type from the document named, and they agree with it.',
);
