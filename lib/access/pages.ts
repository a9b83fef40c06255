import type { Verb } from './policy';

/**
 * Who may see what of each page of `app/`: the verb of the policy that opens it (all of them, where there are several).
 * `anybody`: it shows nobody's data, or a token opens it. `somebody`: whoever is signed in. Like ROUTES this opens and shuts
 * nothing by itself: tests/journeys/pages.spec.ts asks for every page as every role, and one without a row fails there.
 */
export type PageAccess = readonly Verb[] | 'somebody' | 'anybody';

export const PAGES: Readonly<Record<string, PageAccess>> = {
  '/sign-in': 'anybody',
  '/sign-in/done': 'anybody',
  '/sign-in/forgotten': 'anybody',
  '/sign-in/no-role': 'anybody',
  '/set-up': 'anybody',
  '/join': 'anybody',
  '/guide': 'anybody',
  '/guide/[who]': 'anybody',
  '/parts': 'anybody',
  // The frame that phones keep, the same for everybody.
  '/ramp/out': 'anybody',

  '/account': ['own-account.read'],
  '/rules-of-the-house': ['house-rule.read'],
  '/photos/[id]': ['photo.read'],

  '/ramp': ['fleet.read'],
  '/ramp/[aircraftId]': ['aircraft.read'],
  '/ramp/flight/[id]': ['release.read'],
  '/ramp/mine': ['own-findings.read'],
  '/ramp/write-up/[id]': ['write-up.read'],

  '/bench': ['bench.read'],
  '/bench/aircraft/[id]': ['bench.read'],
  '/bench/aircraft/[id]/records': ['records.read'],
  '/bench/aircraft/[id]/trends': ['trends.read'],
  '/bench/due': ['due.read'],
  '/bench/inspection/[id]': ['inspection.read'],
  '/bench/permit/[id]': ['permit.read'],
  '/bench/permit/new': ['permit.read'],
  '/bench/requirement/[id]': ['aircraft.read'],
  '/bench/visit/[id]': ['visit.read'],
  '/bench/visit/new': ['visit.read'],
  '/bench/write-up/[id]': ['write-up.read'],

  '/desk': ['fleet.read'],
  '/desk/aircraft/[id]': ['aircraft.read'],
  '/desk/aircraft/[id]/day': ['day.read'],
  '/desk/bases': ['base.read'],
  '/desk/bases/[id]': ['base.change'],
  '/desk/bases/add': ['base.add'],
  '/desk/feeds': ['feeds.read'],
  '/desk/flight': ['flight.answer'],
  '/desk/insight': ['insight.read'],
  '/desk/plans': ['planned-flights.read'],
  '/desk/plans/import': ['plan.import'],
  '/desk/release/[id]': ['release.read'],
  '/desk/releases': ['release.read'],
  '/desk/walkarounds': ['walkaround-list.read'],
  '/desk/walkarounds/[typeId]': ['walkaround-list.read'],

  '/office': ['set-up.read'],
  '/office/fleet': ['type.read'],
  '/office/fleet/aircraft/[id]': ['type.read'],
  '/office/fleet/aircraft/[id]/equipment': ['equipment.read'],
  '/office/fleet/aircraft/[id]/equipment/[lineId]': ['equipment.read', 'equipment.enter'],
  '/office/fleet/aircraft/[id]/equipment/add': ['equipment.read', 'equipment.enter'],
  '/office/fleet/aircraft/[id]/equipment/confirm': ['equipment.read', 'equipment.confirm'],
  '/office/fleet/aircraft/[id]/equipment/import': ['equipment.read', 'equipment.import'],
  '/office/fleet/aircraft/add': ['aircraft.add'],
  '/office/fleet/types/[id]': ['type.read'],
  '/office/fleet/types/add': ['type.add'],
  '/office/history': ['carry-over.read'],
  '/office/history/[id]': ['carry-over.read'],
  '/office/history/[id]/directives': ['carry-over.read'],
  '/office/history/[id]/last-done': ['carry-over.read'],
  '/office/history/[id]/limits': ['carry-over.read'],
  '/office/history/[id]/mel': ['carry-over.read'],
  '/office/history/[id]/papers': ['carry-over.read'],
  '/office/history/[id]/write-ups': ['carry-over.read'],
  '/office/history/import': ['history.import'],
  '/office/people': ['person.read'],
  '/office/people/[id]': ['person.read'],
  '/office/people/invite': ['person.invite'],
  '/office/rules': ['house-rule.read'],
  '/office/rules/[ruleId]': ['house-rule.set'],
  '/office/rules/set': ['house-rule.set'],
};
