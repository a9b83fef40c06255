/** Rules of the house as rules of the library: one or a few for each setting, compiled once for a list of settings. */
import type { RuleProperties } from 'json-rules-engine';
import type { HouseRule } from '@/lib/rules/house/house-rule';
import { PRIORITY, any, eq, flagged, is, rule, type Condition } from './conditions';

const HOUR_MS = 3_600_000;
const CITE = 'house-rule';
const bars = (...conditions: Condition[]): RuleProperties => rule('bars', CITE, conditions);
const someDeferral = is('deferrals', 'greaterThan', 0);
const night = eq('light', 'night');

/** A reading that nobody made, or that is too old at departure. */
const stale = (age: string, oldestHours: number): Condition =>
  any(eq(age, null), is(age, 'greaterThan', oldestHours * HOUR_MS));

function rulesOf({ setting }: HouseRule): readonly RuleProperties[] {
  switch (setting.kind) {
    case 'no-night-with-deferral':
      return [bars(night, someDeferral)];
    case 'no-ifr-with-deferral':
      return [bars(eq('rules', 'IFR'), someDeferral)];
    case 'no-students-at-night':
      return [
        bars(
          night,
          is(
            'purpose',
            'in',
            setting.flights === 'solo' ? ['student-solo'] : ['student-solo', 'instruction-for-hire'],
          ),
        ),
      ];
    case 'oil-minimum':
      return [
        bars(
          any(stale('oil.age', setting.oldestHours), is('oil.tenths', 'lessThan', setting.leastTenthsQuart)),
        ),
      ];
    case 'walkaround-before-flight':
      return [bars(stale('walk.age', setting.oldestHours))];
    case 'mechanic-looks-at':
      return looksAt(setting.chapters, setting.areas);
    case 'reserve-before-inspection': {
      const left = setting.counts === 'hundred-hour' ? 'left.hundred' : 'left.all';
      const tooLittle = any(
        is(left, 'someFact:equal', null),
        is(left, 'someFact:lessThan', setting.reserveTenths),
      );
      return [bars(is('purpose', 'notEqual', 'to-inspection'), tooLittle)];
    }
    case 'most-deferrals':
      return [bars(is('deferrals', 'greaterThan', setting.most))];
    case 'deferral-no-older':
      return [bars(is('deferral.days', 'someFact:greaterThan', setting.days))];
    case 'limit-in-own-words':
      return [rule('limits', CITE, [is('purpose', 'in', setting.purposes)], { flag: 'house-limits' })];
    case 'solo-never-with-limits':
      return [
        rule(
          'bars',
          CITE,
          [eq('purpose', 'student-solo'), any(eq('limited', true), flagged('house-limits'))],
          { priority: PRIORITY.last },
        ),
      ];
    case 'unreadable':
      return [bars()];
  }
}

/** Of write-ups that no mechanic judged: by chapter, by place, and where the place is not known, by what it may be. */
function looksAt(chapters: readonly string[], areas: readonly string[]): readonly RuleProperties[] {
  const some = (of: string, operator: string, value: unknown) => is(of, `someFact:${operator}`, value);
  const looked: Condition[] = [
    some('unjudged.stations', 'in', areas),
    some('unjudged.chapters', 'in', chapters),
  ];
  if (chapters.length > 0) looked.push(some('unjudged.chapters', 'equal', ''));
  if (areas.length > 0) looked.push(some('unjudged.unplaced', 'notEqual', '61'));
  if (areas.includes('propeller')) looked.push(some('unjudged.unplaced', 'equal', '61'));
  return [bars(any(...looked))];
}

export const houseRulesOf = (rules: readonly HouseRule[]): readonly RuleProperties[] =>
  rules.flatMap(rulesOf);
