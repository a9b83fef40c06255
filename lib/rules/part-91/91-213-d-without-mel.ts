/**
 * 14 CFR 91.213(d): takeoff with an inoperative item on an aircraft that has no minimum equipment list. All four:
 *
 * (d)(1) The aircraft is (i) a rotorcraft, nonturbine airplane, glider, lighter-than-air aircraft, powered parachute
 *   or weight-shift aircraft with no published master list; or (ii) a small rotorcraft, nonturbine small airplane,
 *   glider or lighter-than-air aircraft with one. Small: not more than 12,500 lb maximum takeoff weight (1.1).
 * (d)(2) The item is not
 *   (i) part of the VFR-day instruments and equipment the type was certificated with;
 *   (ii) required by the equipment list or the kinds-of-operations list for the kind of flight;
 *   (iii) required by 91.205 or any other rule of part 91 for the specific kind of flight;
 *   (iv) required to be operational by an airworthiness directive.
 * (d)(3) The item is (i) removed, its cockpit control placarded and the work recorded under 43.9; or (ii) deactivated
 *   and placarded "Inoperative", recorded under part 43 where deactivating is maintenance.
 * (d)(4) A pilot certificated and appropriately rated, or a person certificated and rated to maintain the aircraft,
 *   determines that the item is no hazard to the aircraft.
 *
 * (d)(1) and (d)(2) are judged for one use of the aircraft; (d)(3) and (d)(4) are steps somebody takes, in
 * `91-213-steps.ts`. Counts are of what still works with every open inoperative discrepancy counted.
 */
import type { AircraftFacts, AircraftTypeFacts } from '../aircraft';
import type { Demand } from '../demand';
import { allHold, holds, isSmall } from '../demand-conditions';
import { demandsOn, listDemand } from '../equipment-check';
import { operativeCount } from '../equipment-count';
import { known, type Fact } from '../facts';
import type { CiteId } from '../law';
import { operationName, type UseOfAircraft } from '../operations';
import { barsForMissing, type Line, type Subject } from '../verdict';
import { aboutDiscrepancy, remainingOfItem, type InoperativeItem } from './91-213-item';

/** (d)(1): the aircraft is of a kind for which (d) is open. */
export function kindOfAircraft({ type }: AircraftFacts, about: Subject): readonly Line[] {
  const withoutList = openWithoutMasterList(type);
  const withList = openWithMasterList(type);
  // Where both paragraphs give the same answer, nobody needs to know whether a master list is published.
  if (withoutList.known && withList.known && withoutList.value && withList.value) {
    return [
      {
        effect: 'supports',
        cite: '14cfr91.213(d)(1)',
        because: `Paragraph (d) is open to this aircraft: ${inWords(type)}, not more than 12,500 lb where weight counts.`,
        about,
      },
    ];
  }
  if (withoutList.known && withList.known && !withoutList.value && !withList.value) {
    return [closedTo(type, '14cfr91.213(d)(1)', about)];
  }
  if (!type.mmelPublished.known)
    return [barsForMissing('14cfr91.213(d)(1)', type.mmelPublished.missing, about)];
  const cite = type.mmelPublished.value ? '14cfr91.213(d)(1)(ii)' : '14cfr91.213(d)(1)(i)';
  const test = type.mmelPublished.value ? withList : withoutList;
  if (!test.known) return [barsForMissing(cite, test.missing, about)];
  if (!test.value) return [closedTo(type, cite, about)];
  const list = type.mmelPublished.value ? 'with' : 'without';
  const because = `Paragraph (d) is open to this aircraft: ${inWords(type)}, ${list} a published master list.`;
  return [{ effect: 'supports', cite, because, about }];
}

/** (d)(1)(i): kinds open while no master list is published. */
function openWithoutMasterList(type: AircraftTypeFacts): Fact<boolean> {
  return type.category === 'airplane' ? isNonturbine(type) : known(true);
}

/** (d)(1)(ii): kinds open although a master list is published. */
function openWithMasterList(type: AircraftTypeFacts): Fact<boolean> {
  switch (type.category) {
    case 'glider':
    case 'lighter-than-air':
      return known(true);
    case 'rotorcraft':
      return isSmall(type);
    case 'airplane':
      return allHold(isNonturbine(type), isSmall(type));
    case 'powered-parachute':
    case 'weight-shift-control':
      return known(false);
  }
}

const isNonturbine = ({ turbine }: AircraftTypeFacts): Fact<boolean> => holds(turbine, (value) => !value);

function closedTo(type: AircraftTypeFacts, cite: Line['cite'], about: Subject): Line {
  const because = `Paragraph (d) is closed to this aircraft: ${inWords(type)} of this weight, power and master list is not among those it names.`;
  return { effect: 'bars', cite, because, about };
}

function inWords(type: AircraftTypeFacts): string {
  if (type.category !== 'airplane') return type.category.replaceAll('-', ' ');
  return type.turbine.known && type.turbine.value ? 'a turbine airplane' : 'a nonturbine airplane';
}

/** (d)(2)(i): not part of the VFR-day equipment of the type's certification. */
export function typeDesign({ discrepancy, item }: InoperativeItem): readonly Line[] {
  const cite = '14cfr91.213(d)(2)(i)';
  const about = aboutDiscrepancy(discrepancy);
  if (!item.vfrDayTypeDesign.known) return [barsForMissing(cite, item.vfrDayTypeDesign.missing, about)];
  return item.vfrDayTypeDesign.value
    ? [
        {
          effect: 'bars',
          cite,
          because: `${item.name}: part of the VFR-day equipment the type was certificated with, so it cannot be deferred.`,
          about,
        },
      ]
    : [
        {
          effect: 'supports',
          cite,
          because: `${item.name}: not part of the VFR-day equipment the type was certificated with.`,
          about,
        },
      ];
}

/** (d)(2)(ii): what still works is not fewer than the equipment list asks for this kind of flight. */
export function equipmentList(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const cite = '14cfr91.213(d)(2)(ii)';
  const { discrepancy, item } = inoperative;
  const about = aboutDiscrepancy(discrepancy);
  const demand = listDemand(item, use);
  if (!demand.known) return [barsForMissing(cite, demand.missing, about)];
  const remaining = remainingOfItem(inoperative);
  if (!remaining.known) return [barsForMissing(cite, remaining.missing, about)];
  const counts = `the equipment list asks for ${demand.value} for ${kindOf(use)}, ${remaining.value} of ${item.installed} would work`;
  return remaining.value < demand.value
    ? [{ effect: 'bars', cite, because: `${item.name}: ${counts}.`, about }]
    : [{ effect: 'supports', cite, because: `${item.name}: ${counts}.`, about }];
}

/**
 * (d)(2)(iii): no rule of part 91 asks, for this kind of flight, for more than what still works. Each unmet demand
 * gives a line under its own paragraph; a relief that the paragraph itself gives turns the bar into a limit.
 */
export function requiredByPart91(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const { aircraft, discrepancy, item } = inoperative;
  const about = aboutDiscrepancy(discrepancy);
  const asked = demandsOn(aircraft, use).filter((demand) => demand.function === item.function);
  const unmet = unmetOf(asked, inoperative);
  if (!unmet.known) return [barsForMissing('14cfr91.213(d)(2)(iii)', unmet.missing, about)];
  if (unmet.value.length > 0) return unmet.value.map((demand) => lineOfDemand(demand, about));
  const because =
    asked.length > 0
      ? `${item.name}: enough still work for what part 91 asks for ${kindOf(use)}.`
      : `${item.name}: part 91 does not ask for it for ${kindOf(use)}.`;
  return [{ effect: 'supports', cite: '14cfr91.213(d)(2)(iii)', because, about }];
}

/** The demands of part 91 on the function of the item that what still works does not meet on this use. */
export const unmetDemands = (inoperative: InoperativeItem, use: UseOfAircraft): Fact<readonly Demand[]> =>
  unmetOf(
    demandsOn(inoperative.aircraft, use).filter(({ function: fn }) => fn === inoperative.item.function),
    inoperative,
  );

/** Of the demands on the function of the item, those that what still works does not meet. */
function unmetOf(demands: readonly Demand[], { aircraft, item }: InoperativeItem): Fact<readonly Demand[]> {
  if (demands.length === 0) return known([]);
  const { operative } = operativeCount(aircraft, item.function);
  return operative.known ? known(demands.filter((demand) => operative.value < demand.count)) : operative;
}

function lineOfDemand(demand: Demand, about: Subject): Line {
  const { cite, because, strictReading } = demand;
  if (!demand.applies.known) return { ...barsForMissing(cite, demand.applies.missing, about), strictReading };
  if (demand.relief !== null) {
    return { effect: 'limits', cite: demand.relief.cite, because: demand.relief.limit, about, strictReading };
  }
  return {
    effect: 'bars',
    cite,
    because: `${because} It is required for this kind of flight, so it cannot be deferred for it.`,
    about,
    strictReading,
  };
}

/** (d)(2)(iv): no airworthiness directive requires the item to be operational. */
export function requiredByDirective({ aircraft, discrepancy, item }: InoperativeItem): readonly Line[] {
  const cite = '14cfr91.213(d)(2)(iv)';
  const about = aboutDiscrepancy(discrepancy);
  if (!aircraft.directives.known) return [barsForMissing(cite, aircraft.directives.missing, about)];
  // One that asks for something to work and names nothing on the list may mean this item.
  const open = aircraft.directives.value.find(
    (directive) => directive.requiresOperable && directive.equipmentId === null,
  );
  if (open !== undefined) {
    const missing = `which equipment airworthiness directive ${open.number} (${open.title}) requires to work`;
    return [barsForMissing(cite, missing, about)];
  }
  const naming = aircraft.directives.value.filter(
    (directive) => directive.equipmentId === item.id && directive.requiresOperable,
  );
  if (naming.length === 0) {
    const because = `${item.name}: no airworthiness directive on this aircraft requires it to work.`;
    return [{ effect: 'supports', cite, because, about }];
  }
  return naming.map((directive) => ({
    effect: 'bars',
    cite,
    because: `${item.name}: airworthiness directive ${directive.number} (${directive.title}) requires it to work.`,
    about,
  }));
}

/**
 * The four tests of (d)(2), in order, for one use. A failed anticollision light that 91.205(b)(11) or (c)(3) lets go on
 * to a place of repair is not held back by (i) and (ii): the systems of which those speak are always in the type's
 * equipment, and the relief would never apply. (iv) and the steps still do.
 */
export function paragraphD2(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const part91 = requiredByPart91(inoperative, use);
  const continues = part91.some((line) => line.effect === 'limits' && CONTINUE_TO_REPAIR.includes(line.cite));
  const ownEquipment = [...typeDesign(inoperative), ...equipmentList(inoperative, use)];
  return [
    ...(continues ? ownEquipment.map(setAside) : ownEquipment),
    ...part91,
    ...requiredByDirective(inoperative),
  ];
}

const CONTINUE_TO_REPAIR: readonly CiteId[] = ['14cfr91.205(b)(11)', '14cfr91.205(c)(3)'];

const setAside = (line: Line): Line =>
  line.effect === 'bars' && line.missing === undefined
    ? {
        ...line,
        effect: 'limits',
        because: `${line.because} Set aside only to go on to the place of repair.`,
      }
    : line;

const kindOf = (use: UseOfAircraft): string =>
  operationName(use).toLowerCase().replace('vfr', 'VFR').replace('ifr', 'IFR');
