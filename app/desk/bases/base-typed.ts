import { type BaseView } from '@/lib/bases/read-bases';

/** The base form as typed. `ident` and `airportIdent` only when one is added. */
export const EMPTY_BASE = {
  ident: '',
  airportIdent: '',
  name: '',
  latitudeDeg: '',
  longitudeDeg: '',
  zone: '',
  zoneConfirmed: false,
  repairAvailable: '',
  transponderAirspace: '',
  adsbAirspace: '',
  controlledAirspace: '',
};
export type BaseAsTyped = typeof EMPTY_BASE;

const said = (fact: boolean | null): string => (fact === null ? 'not-said' : fact ? 'yes' : 'no');

/** A base as the form shows it. */
export const asTyped = (base: BaseView): BaseAsTyped => ({
  ident: base.ident,
  airportIdent: '',
  name: base.name,
  latitudeDeg: String(base.latitudeDeg),
  longitudeDeg: String(base.longitudeDeg),
  zone: base.zone,
  zoneConfirmed: false,
  repairAvailable: said(base.repairAvailable),
  transponderAirspace: said(base.transponderAirspace),
  adsbAirspace: said(base.adsbAirspace),
  controlledAirspace: said(base.controlledAirspace),
});
