/**
 * 14 CFR 91.213(d)(2)(iii), read from the other side: an item may be out for this flight because of what the flight does
 * not do. Each such condition becomes a limit ("on the ground by sunset", 91.209(a)(1)), found by asking again what part
 * 91 would demand if the flight did it. So the limits come from the same paragraphs as the bars and cannot drift apart.
 */
import type { Demand } from '../demand';
import { known } from '../facts';
import { clockInWords } from '../in-words';
import type { UseOfAircraft } from '../operations';
import type { Line } from '../verdict';
import { aboutDiscrepancy, type InoperativeItem } from './91-213-item';
import { unmetDemands } from './91-213-d-without-mel';

/** One thing this flight does not do, and the words that keep it so. Null when the flight does it anyway. */
type Edge = (use: UseOfAircraft) => Beyond | null;

interface Beyond {
  readonly beyond: UseOfAircraft;
  readonly stayInside: string;
}

const EDGES: readonly Edge[] = [
  (use) =>
    use.betweenSunsetAndSunrise
      ? null
      : { beyond: { ...use, betweenSunsetAndSunrise: true, sunsetAt: null }, stayInside: bySunset(use) },
  (use) =>
    use.transponderAirspace.known && !use.transponderAirspace.value
      ? {
          beyond: { ...use, transponderAirspace: known(true) },
          stayInside: 'Stay out of airspace that requires a transponder with altitude reporting.',
        }
      : null,
  (use) =>
    use.adsbAirspace.known && !use.adsbAirspace.value
      ? {
          beyond: { ...use, adsbAirspace: known(true) },
          stayInside: 'Stay out of airspace that requires ADS-B Out.',
        }
      : null,
  (use) =>
    use.overWaterBeyondGlide.known && !use.overWaterBeyondGlide.value
      ? {
          beyond: { ...use, overWaterBeyondGlide: known(true) },
          stayInside: 'Stay within gliding distance of shore.',
        }
      : null,
  (use) =>
    use.usesVor.known && !use.usesVor.value
      ? { beyond: { ...use, usesVor: known(true) }, stayInside: 'Do not navigate by VOR under IFR.' }
      : null,
];

/** Every deferral asks about the same ones. */
const EDGES_OF = new WeakMap<UseOfAircraft, readonly Beyond[]>();

function edgesOf(use: UseOfAircraft): readonly Beyond[] {
  const edges = EDGES_OF.get(use) ?? EDGES.flatMap((edge) => edge(use) ?? []);
  EDGES_OF.set(use, edges);
  return edges;
}

/** The limits that keep this use where the item is not required. None for demands already unmet on this use. */
export function limitsOfEdges(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const now = unmetDemands(inoperative, use);
  if (!now.known) return [];
  const about = aboutDiscrepancy(inoperative.discrepancy);
  return edgesOf(use).flatMap((found) => {
    const beyond = unmetDemands(inoperative, found.beyond);
    const first = beyond.known ? beyond.value.find((demand) => isNew(demand, now.value)) : undefined;
    if (first === undefined) return [];
    return [{ effect: 'limits' as const, cite: first.cite, because: found.stayInside, about }];
  });
}

const isNew = (demand: Demand, unmet: readonly Demand[]): boolean =>
  !unmet.some((old) => old.cite === demand.cite && old.applies.known);

function bySunset({ sunsetAt, to }: UseOfAircraft): string {
  return sunsetAt === null
    ? 'On the ground by sunset.'
    : `On the ground by sunset, ${clockInWords(sunsetAt, to.zone)} at ${to.ident}.`;
}
