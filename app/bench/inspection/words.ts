import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type InspectionView } from '@/lib/inspections/read-inspection';

export const inspectionName = (t: Translate, kind: InspectionView['kind']) =>
  kind === 'annual' ? t('Annual inspection') : t('100-hour inspection');

/** The groups of part 43 Appendix D, in order: a reminder, not a checklist. */
export const APPENDIX_D = [
  said('opened and cleaned'),
  said('fuselage and hull group'),
  said('cabin and cockpit group'),
  said('engine and nacelle group'),
  said('landing gear group'),
  said('wing and center section'),
  'empennage',
  said('propeller group'),
  said('radio group'),
  said('each other installed item'),
] as const;

/** What is asked next, in one sentence. */
export function nextAsked(t: Translate, view: InspectionView): string {
  if (view.state === 'complete') {
    return view.parts.every(({ signed }) => signed?.airworthy)
      ? t('Complete: every part is signed as airworthy.')
      : t(
          'Complete, not approved as airworthy. It stays no go until each item of the list is cleared by its own entry.',
        );
  }
  if (view.state === 'given-up') return t('Given up: {givenUpWhy}', { givenUpWhy: view.givenUpWhy ?? '' });
  if (view.state === 'begun') return t('Inspect, write up what you find, then write the entry.');
  const owed = view.deferred.filter(({ inspected }) => !inspected);
  if (owed.length > 0)
    return t('Say what becomes of {owed}.', { owed: owed.map(({ number }) => number).join(', ') });
  const unplacarded = view.deferred.filter(({ placard }) => placard === null);
  if (unplacarded.length > 0)
    return t('Put up the placard of {unplacarded}.', {
      unplacarded: unplacarded.map(({ number }) => number).join(', '),
    });
  const left = view.parts.filter(({ signed }) => !signed).map(({ part }) => part);
  const parts = t('the {left}', { left: left.join(', the ') });
  if (view.against.airworthy.length === 0) return t('Sign for {parts}.', { parts });
  if (view.against.notAirworthy.length === 0) {
    return t('Repair what stands open, or sign for {parts} as not airworthy.', { parts });
  }
  return view.open.some(({ standing }) => standing === 'repair-owed')
    ? t('Repair what stands open, or sign the list of it.')
    : t('Sign the list, then each part.');
}
