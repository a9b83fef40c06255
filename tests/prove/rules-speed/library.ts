/**
 * The answer for a use of an aircraft as a general-purpose rules library gives it. The rules decide; this file runs the engines in
 * their order (aircraft, then each write-up, row, paper and piece of work, then the house) and joins what held, as any user of the
 * library would have to: it knows no loops over things and no outcome.
 *
 * Declared class: no minimum equipment list in force (none, or nobody knows), no special flight permit, at most one record of each kind
 * whose interval a regulation sets. It says the outcome and which paragraphs bar, limit, note or support; not why, and not about what.
 */
import type { Engine } from 'json-rules-engine';
import type { AircraftFacts, EquipmentFunction, PaperKind } from '@/lib/rules/aircraft';
import type { HouseRule } from '@/lib/rules/house/house-rule';
import type { UseOfAircraft } from '@/lib/rules/operations';
import type { Outcome } from '@/lib/rules/verdict';
import { engineOf, run, saidBy, type Given, type Happened, type Said } from './conditions';
import { countEquipment, type Counts } from './counts';
import { aircraftFacts, flightFacts } from './facts-of-flight';
import {
  commonFacts,
  findingFacts,
  houseFacts,
  paperFacts,
  rowFacts,
  workFacts,
  type ForFindings,
} from './facts-of-parts';
import { DEMANDS, type Demand } from './demands';
import { EQUIPMENT_RULES, UNMET_RULES } from './rules-of-equipment';
import { FINDING_RULES } from './rules-of-findings';
import { houseRulesOf } from './rules-of-house';
import { INSPECTION_RULES, ROW_RULES } from './rules-of-inspections';
import { KIND_RULES, NO_PAPER_RULES, PAPER_CITES, PAPER_RULES, WORK_RULES } from './rules-of-papers-and-work';

export interface LibraryAnswer {
  readonly outcome: Outcome;
  /** `effect paragraph`, each once, in order. */
  readonly said: readonly string[];
}

const flightEngine = engineOf([...EQUIPMENT_RULES, ...INSPECTION_RULES, ...KIND_RULES, ...NO_PAPER_RULES]);
const unmetEngine = engineOf(UNMET_RULES);
const findingEngine = engineOf(FINDING_RULES);
const rowEngine = engineOf(ROW_RULES);
const paperEngine = engineOf(PAPER_RULES);
const workEngine = engineOf(WORK_RULES);

/** How many rules the engines hold, those of the house not counted. */
export const RULE_COUNT = [
  ...[EQUIPMENT_RULES, INSPECTION_RULES, KIND_RULES, NO_PAPER_RULES, UNMET_RULES],
  ...[FINDING_RULES, ROW_RULES, PAPER_RULES, WORK_RULES],
].reduce((sum, rules) => sum + rules.length, 0);

const DEMAND_OF = new Map(DEMANDS.map((demand) => [demand.id, demand]));
const OWN_KINDS: readonly string[] = ['directive', 'life-limit', 'maker-interval'];

/** Whether a case is of the class that the rules here cover. */
export function inClass({ mel, requirements }: AircraftFacts, use: UseOfAircraft): boolean {
  const kinds = requirements.map(({ kind }) => kind).filter((kind) => !OWN_KINDS.includes(kind));
  const noList = !mel.known || mel.value === null;
  return noList && use.specialFlightPermit === null && new Set(kinds).size === kinds.length;
}

/** Rules of a house are compiled once, which costs the library nothing in the measurement. */
const compiled = new WeakMap<readonly HouseRule[], Engine>();
function houseEngine(rules: readonly HouseRule[]): Engine {
  const engine = compiled.get(rules) ?? engineOf(houseRulesOf(rules));
  compiled.set(rules, engine);
  return engine;
}

export async function libraryAnswer(aircraft: AircraftFacts, use: UseOfAircraft): Promise<LibraryAnswer> {
  const counts = countEquipment(aircraft);
  const whole = aircraftFacts(aircraft, use, counts);
  const events = await run(flightEngine, whole);
  const kind = events.find(({ type }) => type === 'kind')?.params;
  const unmet = await judgeUnmet(events, whole, counts);
  const said: Said[] = [...saidBy(events), ...unmet.said];
  const flight = flightFacts(use);
  const found: ForFindings = { ...unmet, kindOpen: kind?.effect === 'supports' };
  const common = commonFacts(aircraft, flight, counts);
  for (const d of aircraft.discrepancies) {
    const given = findingFacts(aircraft, d, use, common, counts, found);
    const fn = String(given.fn);
    const spelled: Readonly<Record<string, readonly string[]>> = {
      '@kind': [String(kind?.cite)],
      '@part91-bars': found.bars.get(fn) ?? [],
      '@part91-limits': found.limits.get(fn) ?? [],
    };
    for (const { effect, cite } of saidBy(await run(findingEngine, given))) {
      for (const one of spelled[cite] ?? [cite]) said.push({ effect, cite: one });
    }
  }
  for (const row of aircraft.requirements) {
    if (OWN_KINDS.includes(row.kind))
      said.push(...saidBy(await run(rowEngine, rowFacts(aircraft, row, use))));
  }
  for (const work of aircraft.work) {
    said.push(...saidBy(await run(workEngine, workFacts(work, flight, counts))));
  }
  said.push(...(await judgePapers(aircraft, use)));
  if (aircraft.houseRules.length > 0) {
    const limited = said.some(({ effect }) => effect === 'limits');
    said.push(...saidBy(await run(houseEngine(aircraft.houseRules), houseFacts(aircraft, use, limited))));
  }
  return joined(said);
}

/** Each demand that is not met is asked once more, for what it does to the flight and to write-ups on such items. */
async function judgeUnmet(events: readonly Happened[], whole: Given, counts: Counts) {
  const ids = (type: string) =>
    new Set(events.filter((event) => event.type === type).map(({ params }) => String(params?.id)));
  const [unsure, reliefs] = [ids('unsure'), ids('relief')];
  const said: Said[] = [];
  const bars = new Map<string, string[]>();
  const limits = new Map<string, string[]>();
  const unknown = new Set<EquipmentFunction>();
  const add = (to: Map<string, string[]>, fn: string, cite: string) =>
    to.set(fn, [...(to.get(fn) ?? []), cite]);
  for (const id of ids('unmet')) {
    const demand = DEMAND_OF.get(id) as Demand;
    const { working, unconfirmed } = counts.of(demand.fn);
    const relief = demand.reliefs.find((one) => reliefs.has(one));
    const need = whole[demand.need] ?? null;
    const given = {
      sure: !unsure.has(id) && need !== null,
      working,
      need,
      unconfirmed,
      relief: relief !== undefined,
    };
    const cites: Record<string, string> = { '@own': demand.cite, '@relief': `14cfr91.${relief}` };
    const asked = await run(unmetEngine, given);
    said.push(...saidBy(asked).map(({ effect, cite }) => ({ effect, cite: cites[cite] ?? cite })));
    if (working === null) unknown.add(demand.fn);
    if (asked.some(({ type }) => type === 'item-bars')) add(bars, demand.fn, demand.cite);
    if (asked.some(({ type }) => type === 'item-limits')) add(limits, demand.fn, cites['@relief'] ?? '');
  }
  return { said, bars, limits, unknown };
}

/** Of several papers of a kind, one in order is enough. */
async function judgePapers({ papers }: AircraftFacts, use: UseOfAircraft): Promise<Said[]> {
  const ofKind = new Map<PaperKind, Said[]>();
  for (const paper of papers) {
    const { cite, ends } = PAPER_CITES[paper.kind];
    const lines = saidBy(await run(paperEngine, paperFacts(paper, use)));
    const spelled = lines.map((line) => ({
      effect: line.effect,
      cite: line.cite === '@paper' ? cite : ends,
    }));
    ofKind.set(paper.kind, [...(ofKind.get(paper.kind) ?? []), ...spelled]);
  }
  return [...ofKind.values()].flatMap((lines) => {
    const good = lines.filter(({ effect }) => effect === 'supports');
    return good.length > 0 ? good : lines;
  });
}

function joined(said: readonly Said[]): LibraryAnswer {
  const has = (effect: Said['effect']) => said.some((one) => one.effect === effect);
  return {
    outcome: has('bars') ? 'no-go' : has('limits') ? 'go-with-limits' : 'go',
    said: [...new Set(said.map(({ effect, cite }) => `${effect} ${cite}`))].sort(),
  };
}
