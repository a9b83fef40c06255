import { BRACKENS } from './aircraft-bracken';
import { FOXGLOVE } from './aircraft-foxglove';
import { SEDGES } from './aircraft-sedge';
import { PEOPLE } from './people';
import type { OperatorPlan } from './shapes';
import { TYPES } from './types';

/** The demo's school: invented, like everybody and everything in it. */
export const QUILLBACK: OperatorPlan = {
  key: 'quillback',
  name: 'Quillback River Flyers',
  part141: false,
  bases: [
    {
      key: 'qb',
      ident: 'ZZQB',
      name: 'Quillback Field',
      latitudeDeg: 43.31,
      longitudeDeg: -91.79,
      zone: 'America/Chicago',
      repairAvailable: true,
      transponderAirspace: false,
      adsbAirspace: false,
      controlledAirspace: true,
    },
    {
      key: 'tm',
      ident: 'ZZTM',
      name: 'Tamarack Shore',
      latitudeDeg: 46.5,
      longitudeDeg: -87.4,
      zone: 'America/Detroit',
      repairAvailable: false,
      transponderAirspace: true,
      adsbAirspace: true,
      controlledAirspace: true,
    },
  ],
  people: PEOPLE,
  types: TYPES,
  aircraft: [...SEDGES, ...BRACKENS, FOXGLOVE],
  enteredBy: 'gil',
  vorChecker: 'ines',
  inspector: 'Moira Stobwell, inspection authorization DEMO-I-2102',
  station: 'Wen Corriedale for repair station DEMO-R-310',
};
