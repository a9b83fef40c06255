import { type InspectionView } from '@/lib/inspections/read-inspection';

export const inspectionName = (kind: InspectionView['kind']) =>
  kind === 'annual' ? 'Annual inspection' : '100-hour inspection';

/** The groups of part 43 Appendix D, in order: a reminder, not a checklist. */
export const APPENDIX_D = [
  'opened and cleaned',
  'fuselage and hull group',
  'cabin and cockpit group',
  'engine and nacelle group',
  'landing gear group',
  'wing and center section',
  'empennage',
  'propeller group',
  'radio group',
  'each other installed item',
] as const;

/** What is asked next, in one sentence. */
export function nextAsked(view: InspectionView): string {
  if (view.state === 'complete') {
    return view.parts.every(({ signed }) => signed?.airworthy)
      ? 'Complete: every part is signed as airworthy.'
      : 'Complete, not approved as airworthy. It stays no go until each item of the list is cleared by its own entry.';
  }
  if (view.state === 'given-up') return `Given up: ${view.givenUpWhy ?? ''}`;
  if (view.state === 'begun') return 'Inspect, write up what you find, then write the entry.';
  const owed = view.deferred.filter(({ inspected }) => !inspected);
  if (owed.length > 0) return `Say what becomes of ${owed.map(({ number }) => number).join(', ')}.`;
  const unplacarded = view.deferred.filter(({ placard }) => placard === null);
  if (unplacarded.length > 0)
    return `Put up the placard of ${unplacarded.map(({ number }) => number).join(', ')}.`;
  const left = view.parts.filter(({ signed }) => !signed).map(({ part }) => part);
  const parts = `the ${left.join(', the ')}`;
  if (view.against.airworthy.length === 0) return `Sign for ${parts}.`;
  if (view.against.notAirworthy.length === 0) {
    return `Repair what stands open, or sign for ${parts} as not airworthy.`;
  }
  return view.open.some(({ standing }) => standing === 'repair-owed')
    ? 'Repair what stands open, or sign the list of it.'
    : 'Sign the list, then each part.';
}
