/**
 * 14 CFR 91.213: inoperative instruments and equipment. In order:
 *
 * (a) No takeoff with inoperative installed instruments or equipment, except under an approved minimum equipment list
 *   with its letter: `91-213-a-with-mel.ts`.
 * (b) What may not be in a list: same file.
 * (c) A list held under part 91K, 121, 125 or 135 is used for part 91 flights too. Not coded: such operators are outside
 *   this tool.
 * (d) Without a list: `91-213-d-without-mel.ts`, limits `91-213-edges.ts`, steps `91-213-steps.ts`.
 * (e) A special flight permit goes before all of this: `../special-flight-permit.ts`.
 *
 * Damage, wear, leaks, contamination and loose fasteners are not inoperative equipment: they are repaired (91.405(a)).
 */
import type { AircraftFacts, DiscrepancyFacts, FindingKind } from '../aircraft';
import type { UseOfAircraft } from '../operations';
import { barsForMissing, type Line } from '../verdict';
import { judgeWithMel, melStanding } from './91-213-a-with-mel';
import { kindOfAircraft, paragraphD2 } from './91-213-d-without-mel';
import { limitsOfEdges } from './91-213-edges';
import { aboutDiscrepancy, inoperativeItem, type InoperativeItem } from './91-213-item';

const NOT_EQUIPMENT: Record<Exclude<FindingKind, 'inoperative'>, string> = {
  damage: 'Damage',
  wear: 'Wear',
  leak: 'A leak',
  contamination: 'Contamination',
  fastener: 'A loose or missing fastener',
  servicing: 'Servicing owed',
  document: 'A paper, marking or placard',
  cosmetic: 'A cosmetic finding',
};

/** (a): whether 91.213 speaks of this discrepancy at all, and the line that says so. */
export function isInoperativeEquipment(d: DiscrepancyFacts): {
  readonly is: boolean;
  readonly lines: readonly Line[];
} {
  const about = aboutDiscrepancy(d);
  const cite = '14cfr91.213(a)';
  if (d.kind !== 'inoperative') {
    const because = `${NOT_EQUIPMENT[d.kind]} is not inoperative equipment: it can never be deferred under 91.213.`;
    return { is: false, lines: [{ effect: 'bars', cite, because, about }] };
  }
  if (d.equipmentId === null) {
    const missing = 'which installed item of equipment does not work';
    return { is: false, lines: [barsForMissing(cite, missing, about)] };
  }
  return {
    is: true,
    lines: [{ effect: 'supports', cite, because: 'An installed item of equipment does not work.', about }],
  };
}

/**
 * Whether the item may be out for this one use: the list where one is in force, else (d)(1) and (d)(2) with the limits
 * that keep the use where the item is not required. The steps of a deferral are not looked at here.
 */
export function judgeInoperative(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
): readonly Line[] {
  const equipment = isInoperativeEquipment(d);
  if (!equipment.is) return equipment.lines;
  const found = inoperativeItem(aircraft, d);
  if (!found.ok) return found.lines;
  const lines = judgeItem(found.inoperative, use);
  // Limits that keep the use out of what bars are of no use to a flight that is barred already.
  if (lines.some((line) => line.effect === 'bars')) return lines;
  return [...lines, ...limitsOfEdges(found.inoperative, use)];
}

/** The same for an item already found, without the limits of the edges: enough to say which kinds are barred. */
export function judgeItem(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const { aircraft, discrepancy } = inoperative;
  const about = aboutDiscrepancy(discrepancy);
  const standing = melStanding(aircraft, about);
  switch (standing.path) {
    case 'closed':
      return standing.lines;
    case 'mel':
      return [...standing.lines, ...judgeWithMel(standing.mel, inoperative, use)];
    case 'paragraph-d':
      return [...standing.lines, ...kindOfAircraft(aircraft, about), ...paragraphD2(inoperative, use)];
  }
}
