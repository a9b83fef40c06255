import type { FindingKind } from '../aircraft';

/** What a kind is called where the catalogue has no better title; in the order a form asks. Light enough for a phone. */
export const KIND_TITLES: Readonly<Record<FindingKind, string>> = {
  inoperative: 'Something does not work',
  damage: 'Damage',
  wear: 'Wear',
  leak: 'Leak',
  contamination: 'Contamination',
  fastener: 'Fastener missing or loose',
  servicing: 'Needs servicing',
  document: 'Document or marking',
  cosmetic: 'Cosmetic',
};
