/**
 * What the rules of the house add to an answer. They are asked after the law, with the same facts and the law's own lines,
 * and their lines are added to those: no line of the law is taken away or changed, a special flight permit lifts none of
 * theirs, and all they can add bars or limits. So the outcome can only be the same or worse
 * (`tests/properties/house-rules.test.ts`).
 */
import type { AircraftFacts } from '../aircraft';
import type { UseOfAircraft } from '../operations';
import { joinLines, type Answer, type Line } from '../verdict';
import { barsEachDeferral, deferralNoOlder, mostDeferrals } from './deferrals';
import {
  limitInOwnWords,
  mechanicLooksAt,
  noStudentsAtNight,
  reserveBeforeInspection,
  soloNeverWithLimits,
} from './flights';
import type { HouseFinding, HouseMark, HouseRule } from './house-rule';
import { oilMinimum, walkaroundBeforeFlight } from './readings';

/** A line of the house; the type alone says that it cannot speak for a flight. */
export type HouseLine = Line & {
  readonly effect: 'bars' | 'limits';
  readonly cite: 'house-rule';
  readonly house: HouseMark;
};

/** The answer of the law with what the house adds. Where the law was silent it stays no go. */
export const withHouseRules = (law: readonly Line[], aircraft: AircraftFacts, use: UseOfAircraft): Answer =>
  law.length === 0 ? joinLines(law) : joinLines([...law, ...houseLines(law, aircraft, use)]);

/**
 * The lines of the house for one use. Rules that look at limits are asked last, with those of all others: the order in which
 * rules are listed decides nothing.
 */
export function houseLines(law: readonly Line[], aircraft: AircraftFacts, use: UseOfAircraft): HouseLine[] {
  const rules = [...aircraft.houseRules].sort((a, b) =>
    a.ruleId < b.ruleId ? -1 : a.ruleId > b.ruleId ? 1 : 0,
  );
  const first = rules.flatMap((rule) => marked(rule, findingsOf(rule, aircraft, use)));
  const limits = [...law, ...first].filter(({ effect }) => effect === 'limits');
  const last = rules
    .filter(({ setting }) => setting.kind === 'solo-never-with-limits')
    .flatMap((rule) => marked(rule, soloNeverWithLimits(aircraft, use, limits)));
  return [...first, ...last];
}

function findingsOf({ setting }: HouseRule, aircraft: AircraftFacts, use: UseOfAircraft): HouseFinding[] {
  switch (setting.kind) {
    case 'no-night-with-deferral':
      return use.light === 'night' ? barsEachDeferral(aircraft, 'No night flight with a deferral') : [];
    case 'no-ifr-with-deferral':
      return use.rules === 'IFR' ? barsEachDeferral(aircraft, 'No IFR flight with a deferral') : [];
    case 'no-students-at-night':
      return noStudentsAtNight(aircraft, setting, use);
    case 'oil-minimum':
      return oilMinimum(aircraft, setting, use);
    case 'walkaround-before-flight':
      return walkaroundBeforeFlight(aircraft, setting.oldestHours, use);
    case 'mechanic-looks-at':
      return mechanicLooksAt(aircraft, setting);
    case 'reserve-before-inspection':
      return reserveBeforeInspection(aircraft, setting, use);
    case 'most-deferrals':
      return mostDeferrals(aircraft, setting.most);
    case 'deferral-no-older':
      return deferralNoOlder(aircraft, setting.days, use);
    case 'limit-in-own-words':
      return limitInOwnWords(aircraft, setting, use);
    // Asked last, see houseLines.
    case 'solo-never-with-limits':
      return [];
    case 'unreadable':
      return [unreadable(aircraft, setting.storedKind)];
  }
}

/** What a rule asks that this program cannot read is not known, and unknown is never go. */
function unreadable({ id, registration }: AircraftFacts, storedKind: string): HouseFinding {
  const missing = `what the rule of the house of kind ${storedKind} asks`;
  const about = { kind: 'aircraft', id, label: registration } as const;
  return { effect: 'bars', because: `Not known: ${missing}. This program cannot read it.`, missing, about };
}

const marked = ({ setting: _, ...house }: HouseRule, findings: readonly HouseFinding[]): HouseLine[] =>
  findings.map(({ effect, because, missing, about }) => ({
    effect,
    cite: 'house-rule',
    because,
    ...(missing === undefined ? {} : { missing }),
    ...(about === undefined ? {} : { about }),
    house,
  }));
