import { type Translate } from '@/lib/words/translate';
import { HoursText, Moment } from '@/app/_ui/moment';
import { type ReleaseFile } from '@/lib/releases/read-desk';
import { PURPOSE_WORDS } from '../../words';

/** The flight as it was answered for, what was not said included. */
export function flightFacts(t: Translate, { flight, pilot }: ReleaseFile) {
  const said = (fact: { known: true; value: boolean } | { known: false }) =>
    fact.known ? (fact.value ? t('Yes') : t('No')) : t('Not said');
  return [
    { name: t('Pilot in command'), value: pilot ?? t('Not named') },
    {
      name: t('From, to'),
      value: t('{ident} to {ident2}', { ident: flight.from.ident, ident2: flight.to.ident }),
    },
    { name: t('Departs'), value: <Moment at={flight.departAt} zone={flight.from.zone} /> },
    { name: t('Arrives'), value: <Moment at={flight.arriveAt} zone={flight.to.zone} /> },
    {
      name: t('Rules and purpose'),
      value: `${flight.rules}, ${PURPOSE_WORDS[flight.purpose].toLowerCase()}`,
    },
    { name: t('Planned time in service'), value: <HoursText tenths={flight.plannedTenths} /> },
    { name: t('Transponder airspace'), value: said(flight.transponderAirspace) },
    { name: 'ADS-B airspace', value: said(flight.adsbAirspace) },
    { name: t('Controlled airspace'), value: said(flight.controlledAirspace) },
    { name: t('By VOR'), value: said(flight.usesVor) },
    { name: t('Over water beyond glide'), value: said(flight.overWaterBeyondGlide) },
    { name: t('Training within 50 NM'), value: said(flight.trainingWithin50Nm) },
    { name: t('Only crew aboard'), value: said(flight.crewOnly) },
    { name: t('Special flight permit'), value: flight.specialFlightPermit?.reference ?? t('None') },
    {
      name: t('Highest altitude'),
      value: flight.highestAltitudeFtMsl.known
        ? t('{value} ft MSL', { value: flight.highestAltitudeFtMsl.value })
        : t('Not said'),
    },
  ];
}
