import type { FindingKind } from '../aircraft';
import { said } from '../said';

/** What a kind is called where the catalogue has no better title; in the order a form asks. Light enough for a phone. */
export const KIND_TITLES: Readonly<Record<FindingKind, string>> = {
  inoperative: said('Something does not work'),
  damage: said('Damage'),
  wear: said('Wear'),
  leak: said('Leak'),
  contamination: said('Contamination'),
  fastener: said('Fastener missing or loose'),
  servicing: said('Needs servicing'),
  document: said('Document or marking'),
  cosmetic: said('Cosmetic'),
};
