import type { Verb } from './policy';

/**
 * Who may ask what of each route of `app/` (`route.ts`): a verb of the policy, or one of several, by what the message says.
 * `anybody`: it holds nobody's data. `key`: another program's key decides, and a session opens nothing (lib/feeds). Pages
 * are not here: each calls `requireActor`, and what it shows comes through a verb. This opens and shuts nothing by itself; it
 * is what tests/access/routes.test.ts holds every route against, and a route without a row here fails there.
 */
export type RouteAccess = Verb | readonly Verb[] | 'anybody' | 'key';

export type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

export const ROUTES: Readonly<Record<string, Readonly<Partial<Record<Method, RouteAccess>>>>> = {
  // The way in and out; next-auth asks for its own token against other sites.
  '/api/auth/[...nextauth]': { GET: 'anybody', POST: 'anybody' },
  '/api/health/live': { GET: 'anybody' },
  '/api/health/ready': { GET: 'anybody' },
  // The service worker, the same for everybody.
  '/serwist/[path]': { GET: 'anybody' },
  '/api/templates/equipment': { GET: 'anybody' },
  '/api/templates/history': { GET: 'anybody' },
  '/desk/plans/import/template': { GET: 'anybody' },

  // Other programs. A browser's session is no key.
  '/api/v1/[...path]': { GET: 'key', POST: 'key', PUT: 'key', PATCH: 'key', DELETE: 'key' },
  '/api/calendar/[key]/maintenance-due.ics': { GET: 'key' },

  // What screens ask while they are open
  '/api/live': { GET: 'fleet.read' },
  '/desk/contact': { GET: 'fleet.read' },
  '/desk/alarms': { GET: 'release.read' },
  '/api/ramp/pack': { GET: 'aircraft.read' },

  // Files
  '/api/export/[file]': { GET: 'export.read' },
  '/api/insight/[figure]': { GET: 'insight.read' },
  '/api/papers/deferrals': { GET: 'paper.read' },
  '/api/papers/entry': { GET: 'paper.read' },
  '/api/papers/inspection': { GET: 'paper.read' },
  '/api/papers/list': { GET: 'paper.read' },
  '/api/papers/malfunction': { GET: 'paper.read' },
  '/api/papers/placards': { GET: 'paper.read' },
  '/api/personal-data': { GET: 'personal-data.export' },
  '/api/photos/[id]': { GET: 'photo.read' },
  '/api/proofs': { POST: 'proof.add' },
  '/api/proofs/[id]': { GET: 'proof.read' },

  // The phone's outbox
  '/api/sync/findings': { POST: 'finding.report' },
  '/api/sync/meters': { POST: ['meters.read-out', 'meters.read-in'] },
  '/api/sync/observations': { POST: 'observation.add' },
  '/api/sync/photos': { POST: 'photo.add' },
  '/api/sync/walkarounds': { POST: 'walkaround.start' },
  '/api/sync/walkarounds/finish': { POST: 'walkaround.finish' },
};
