import { HoursText, Moment } from '@/app/_ui/moment';
import { type ReleaseFile } from '@/lib/releases/read-desk';
import { PURPOSE_WORDS } from '../../words';

/** The flight as it was answered for, what was not said included. */
export function flightFacts({ flight, pilot }: ReleaseFile) {
  const said = (fact: { known: true; value: boolean } | { known: false }) =>
    fact.known ? (fact.value ? 'Yes' : 'No') : 'Not said';
  return [
    { name: 'Pilot in command', value: pilot ?? 'Not named' },
    { name: 'From, to', value: `${flight.from.ident} to ${flight.to.ident}` },
    { name: 'Departs', value: <Moment at={flight.departAt} zone={flight.from.zone} /> },
    { name: 'Arrives', value: <Moment at={flight.arriveAt} zone={flight.to.zone} /> },
    { name: 'Rules and purpose', value: `${flight.rules}, ${PURPOSE_WORDS[flight.purpose].toLowerCase()}` },
    { name: 'Planned time in service', value: <HoursText tenths={flight.plannedTenths} /> },
    { name: 'Transponder airspace', value: said(flight.transponderAirspace) },
    { name: 'ADS-B airspace', value: said(flight.adsbAirspace) },
    { name: 'Controlled airspace', value: said(flight.controlledAirspace) },
    { name: 'By VOR', value: said(flight.usesVor) },
    { name: 'Over water beyond glide', value: said(flight.overWaterBeyondGlide) },
    { name: 'Training within 50 NM', value: said(flight.trainingWithin50Nm) },
    { name: 'Only crew aboard', value: said(flight.crewOnly) },
    { name: 'Special flight permit', value: flight.specialFlightPermit?.reference ?? 'None' },
    {
      name: 'Highest altitude',
      value: flight.highestAltitudeFtMsl.known ? `${flight.highestAltitudeFtMsl.value} ft MSL` : 'Not said',
    },
  ];
}
