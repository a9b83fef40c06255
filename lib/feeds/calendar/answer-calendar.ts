import { type CallOptions } from '../../access/service';
import { readDue } from '../../due/read-due';
import { PROBLEMS, type ProblemCode } from '../../problems';
import { actorOfKey } from '../key-actor';
import { IN_ADDRESS } from '../scopes';
import { maintenanceCalendar } from './maintenance-calendar';

/** The address is the key: it is told to no other site, and nothing in between keeps what it opens. */
const HEADERS = {
  'Cache-Control': 'private, no-cache, no-store',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Robots-Tag': 'noindex',
};

/** The calendar of maintenance due for the holder of a key. Every key that does not open it is as unknown as none. */
export async function answerCalendar(key: string, options: CallOptions = {}): Promise<Response> {
  const actor = await actorOfKey(key, options.now ?? new Date());
  if (!actor || !actor.key.scopes.includes(IN_ADDRESS)) {
    return refused('not_found', 'There is no such calendar. Its key is not known, has ended, or is over.');
  }
  const due = await readDue(actor.ref, {}, options);
  if (!due.ok) return refused(due.problem.code, due.problem.say);
  return new Response(maintenanceCalendar(due.value), {
    headers: {
      ...HEADERS,
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Disposition': 'inline; filename="maintenance-due.ics"',
    },
  });
}

const refused = (code: ProblemCode, say: string): Response =>
  new Response(`${say}\n`, {
    status: PROBLEMS[code].status,
    headers: { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' },
  });
