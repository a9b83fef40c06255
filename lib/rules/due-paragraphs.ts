/** The paragraph that makes a recurring requirement or a paper fall due, for lists of what is coming. */
import type { PaperKind, RequirementKind } from './aircraft';
import type { CiteId } from './law';

export const PARAGRAPH_OF_KIND: Readonly<Record<RequirementKind, CiteId>> = {
  annual: '14cfr91.409(a)',
  'hundred-hour': '14cfr91.409(b)',
  'static-and-altimeter': '14cfr91.411(a)(1)',
  transponder: '14cfr91.413(a)',
  'elt-inspection': '14cfr91.207(d)',
  'elt-battery': '14cfr91.207(c)(2)',
  'vor-check': '14cfr91.171(a)(2)',
  directive: '14cfr39.7',
  'life-limit': '14cfr91.403(c)',
  'maker-interval': '14cfr91.403(a)',
};

export const PARAGRAPH_OF_PAPER: Readonly<Record<PaperKind, CiteId>> = {
  'airworthiness-certificate': '14cfr91.203(a)(1)',
  registration: '14cfr47.40(a)',
  'flight-manual': '14cfr91.9(b)',
  'weight-and-balance': '14cfr91.9(b)',
};

/** Kinds whose interval a regulation sets, so that a row of theirs cannot be ended while the equipment is there. */
export const SET_BY_REGULATION: readonly RequirementKind[] = [
  'annual',
  'hundred-hour',
  'static-and-altimeter',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
];
