import { said } from '@/lib/words/said';
import { type Lacking } from '@/lib/rules/lacking';
import { type LackingOfAircraft } from '@/lib/fleet/read-lacking';

type EnterAt = Lacking['enterAt'];

/** What a group of missing facts is called, and what its link says. */
export const ENTER_AT: Record<
  EnterAt,
  { readonly title: string; readonly enter: string; readonly hint?: string }
> = {
  operator: { title: said('The school'), enter: said('Enter it at the school') },
  base: { title: said('The base'), enter: said('Enter it at the base') },
  type: { title: said('The aircraft type'), enter: said('Enter it at the type') },
  aircraft: { title: said('The aircraft'), enter: said('Enter it at the aircraft') },
  equipment: {
    title: said('Equipment'),
    enter: said('To the equipment list'),
    hint: said(
      'Put the starting sets for night and IFR on the list too and go through them: what is not installed is said as well. The engine then asks nothing more for flights that need it, and says no go to them.',
    ),
  },
  papers: { title: said('Papers'), enter: said('To the papers') },
  requirements: { title: said('Inspections and tests'), enter: said('To the inspections') },
  directives: { title: said('Airworthiness directives'), enter: said('To the directives') },
  mel: { title: said('Minimum equipment list'), enter: said('To the minimum equipment list') },
  'write-ups': { title: said('Write-ups that nobody has decided'), enter: said('To the write-ups') },
  work: { title: said('Work that is not finished'), enter: said('To the work') },
};

/** The very place where a missing fact is entered. */
export function enterHref(enterAt: EnterAt, of: LackingOfAircraft): string {
  const aircraft = `/office/fleet/aircraft/${of.aircraftId}`;
  const history = `/office/history/${of.aircraftId}`;
  switch (enterAt) {
    case 'operator':
      return '/office#school';
    case 'base':
      return `/desk/bases/${of.baseId}`;
    case 'type':
      return `/office/fleet/types/${of.typeId}`;
    case 'aircraft':
      return aircraft;
    case 'equipment':
      return `${aircraft}/equipment`;
    case 'papers':
      return `${history}/papers`;
    case 'requirements':
      return `${history}/last-done`;
    case 'directives':
      return `${history}/directives`;
    case 'mel':
      return `${history}/mel`;
    case 'write-ups':
    case 'work':
      return `/bench/aircraft/${of.aircraftId}`;
  }
}
