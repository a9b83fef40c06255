/**
 * Required equipment, all sections of part 91 together: what a use of the aircraft demands, and whether enough of it
 * is installed and works. 91.213(d)(2)(iii) reads the same demands.
 */
import type { AircraftFacts, EquipmentFacts, RequiredCounts } from './aircraft';
import type { Demand } from './demand';
import { operativeCount, type OperativeCount } from './equipment-count';
import { EQUIPMENT_NAMES } from './equipment-names';
import { known, type Fact } from './facts';
import type { CiteId } from './law';
import type { UseOfAircraft } from './operations';
import { demandsOf91205, standardCategoryOnly } from './part-91/91-205-required-instruments';
import { demandsOf91207 } from './part-91/91-207-emergency-locator-transmitter';
import { checkAnticollisionLit, demandsOf91209 } from './part-91/91-209-aircraft-lights';
import { demandsOf91215 } from './part-91/91-215-transponder';
import { demandsOf91225 } from './part-91/91-225-ads-b-out';
import { barsForMissing, type Line, type Subject } from './verdict';

export { operativeCount, type OperativeCount } from './equipment-count';

/** What a section says in one line when everything it demands is there and works. */
interface Section {
  readonly cite: CiteId;
  /** Its demands are those whose cite begins so. */
  readonly begins: readonly string[];
  readonly inOrder: string;
}

const SECTIONS: readonly Section[] = [
  {
    cite: '14cfr91.205(b)',
    begins: ['14cfr91.205(b)'],
    inOrder: 'All equipment 91.205(b) asks for on any flight is installed and working.',
  },
  {
    cite: '14cfr91.205(c)',
    begins: ['14cfr91.205(c)'],
    inOrder: 'All equipment 91.205(c) asks for at night is installed and working.',
  },
  {
    cite: '14cfr91.205(d)',
    begins: ['14cfr91.205(d)', '14cfr91.205(e)'],
    inOrder: 'All equipment 91.205(d) and (e) ask for under IFR is installed and working.',
  },
  {
    cite: '14cfr91.207(a)(2)',
    begins: ['14cfr91.207'],
    inOrder: 'The emergency locator transmitter is installed and working.',
  },
  {
    cite: '14cfr91.209(a)(1)',
    begins: ['14cfr91.209'],
    inOrder: 'The position lights needed between sunset and sunrise are installed and working.',
  },
  {
    cite: '14cfr91.215(b)',
    begins: ['14cfr91.215'],
    inOrder: 'Transponder and altitude reporting are installed and working.',
  },
  { cite: '14cfr91.225', begins: ['14cfr91.225'], inOrder: 'ADS-B Out is installed and working.' },
];

/** Every write-up of an answer asks the same of the same facts. */
const DEMANDS = new WeakMap<AircraftFacts, WeakMap<UseOfAircraft, readonly Demand[]>>();

/**
 * Everything part 91 demands of this use. 91.205(b)(15) only repeats 91.207, which stands here itself, so that a
 * transmitter is asked for once.
 */
export function demandsOn(aircraft: AircraftFacts, use: UseOfAircraft): readonly Demand[] {
  const ofAircraft = DEMANDS.get(aircraft) ?? new WeakMap<UseOfAircraft, readonly Demand[]>();
  const demands = ofAircraft.get(use) ?? workOutDemands(aircraft, use);
  DEMANDS.set(aircraft, ofAircraft.set(use, demands));
  return demands;
}

const workOutDemands = (aircraft: AircraftFacts, use: UseOfAircraft): readonly Demand[] => [
  ...demandsOf91205(aircraft, use).filter((demand) => demand.cite !== '14cfr91.205(b)(15)'),
  ...demandsOf91207(aircraft, use),
  ...demandsOf91209(aircraft, use),
  ...demandsOf91215(aircraft, use),
  ...demandsOf91225(aircraft, use),
];

/**
 * Judges every demand against the equipment list and the open discrepancies. An unmet demand bars under its own
 * paragraph, or limits where the use meets a relief; a demand that hangs on a missing fact bars and names the fact,
 * whatever is installed. A section whose demands are all met gives one supporting line. Type design, equipment list,
 * directives and the deferral itself are judged with the discrepancy, and a special flight permit by the caller.
 */
export function checkRequiredEquipment(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const demands = demandsOn(aircraft, use);
  return [
    ...standardCategoryOnly(aircraft),
    ...SECTIONS.flatMap((section) => checkSection(aircraft, section, demands)),
    ...checkAnticollisionLit(aircraft),
  ];
}

/**
 * How many of an item the equipment list or kinds-of-operation list asks for on this use: 91.213(d)(2)(ii). Night
 * needs what day needs too, and IFR what VFR needs, so the largest of the columns counts.
 */
export function listDemand(equipment: EquipmentFacts, use: UseOfAircraft): Fact<number> {
  const counts = equipment.requiredByList;
  if (!counts.known) return counts;
  const columns = columnsFor(use);
  return known(Math.max(...columns.map((column) => counts.value[column])));
}

function columnsFor({ light, rules }: UseOfAircraft): readonly (keyof RequiredCounts)[] {
  const day: readonly (keyof RequiredCounts)[] = rules === 'IFR' ? ['dayVfr', 'dayIfr'] : ['dayVfr'];
  if (light === 'day') return day;
  return rules === 'IFR' ? [...day, 'nightVfr', 'nightIfr'] : [...day, 'nightVfr'];
}

function checkSection(aircraft: AircraftFacts, section: Section, demands: readonly Demand[]): Line[] {
  const own = demands.filter(({ cite }) => section.begins.some((start) => cite.startsWith(start)));
  if (own.length === 0) return [];
  const lines = withoutRepeats(own.flatMap((demand) => unmetLine(aircraft, demand) ?? []));
  return lines.length > 0 ? lines : [{ effect: 'supports', cite: section.cite, because: section.inOrder }];
}

/** Null when the demand is known to apply and enough of the equipment works. */
function unmetLine(aircraft: AircraftFacts, demand: Demand): Line | null {
  const { applies, count, cite, because, relief, strictReading } = demand;
  const counted = operativeCount(aircraft, demand.function);
  const about = aboutEquipment(counted);
  if (!applies.known) return { ...barsForMissing(cite, applies.missing, about), strictReading };
  if (!counted.operative.known) return barsForMissing(cite, counted.operative.missing, about);
  if (counted.operative.value >= count) return null;
  const { unconfirmed } = counted;
  if (unconfirmed && !unconfirmed.confirmed.known) {
    return barsForMissing(cite, unconfirmed.confirmed.missing, {
      kind: 'equipment',
      id: unconfirmed.id,
      label: unconfirmed.name,
    });
  }
  if (relief) return { effect: 'limits', cite: relief.cite, because: relief.limit, about, strictReading };
  if (counted.installed === 0) return about ? noneInstalled(demand, about) : notListed(demand);
  const working = `Working: ${counted.operative.value} of ${counted.installed} installed; needed: ${count}.`;
  return { effect: 'bars', cite, because: `${because} ${working}`, about, strictReading };
}

/** The list names it and says that none is there: nothing is missing from the records, the item is missing from the aircraft. */
function noneInstalled({ function: fn, cite, because, strictReading }: Demand, about: Subject): Line {
  const words = `${because} The equipment list says that no ${EQUIPMENT_NAMES[fn]} is installed.`;
  return { effect: 'bars', cite, because: words, about, strictReading };
}

function notListed({ function: fn, cite, because, strictReading }: Demand): Line {
  const name = EQUIPMENT_NAMES[fn];
  return {
    effect: 'bars',
    cite,
    because: `${because} The equipment list names no ${name}.`,
    missing: `the ${name} on the equipment list`,
    strictReading,
  };
}

function aboutEquipment({ rows }: OperativeCount): Subject | undefined {
  const [row] = rows;
  return row && { kind: 'equipment', id: row.id, label: row.name };
}

/** One missing fact can leave several demands of a paragraph open; it is named once. */
const withoutRepeats = (lines: readonly Line[]): Line[] =>
  lines.filter(
    (line, index) =>
      lines.findIndex((other) => other.cite === line.cite && other.because === line.because) === index,
  );
