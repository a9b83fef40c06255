/**
 * Which addresses the on-the-phone app draws. `always`: only it does, from what the phone keeps. `when-cut-off`: the server
 * does while it answers, since it knows today's answer. `never`: it can only say that the page needs a connection.
 */
export type ShellDraws = 'always' | 'when-cut-off' | 'never';

/** The page that is the app; the others are rewritten to it (next.config.ts). */
export const SHELL_PAGE = '/ramp/out';

/** How an aircraft's number looks in an address; without a border at its end, for use within a longer pattern. */
export const AIRCRAFT_ID = '[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}';

/** Screens of one aircraft that only the app draws. */
export const SHELL_SCREENS = ['walk', 'finding', 'meters'] as const;

const ALWAYS = new RegExp(`^/ramp/(out|${AIRCRAFT_ID}/(${SHELL_SCREENS.join('|')}))/?$`);
const WHEN_CUT_OFF = new RegExp(`^/ramp(/${AIRCRAFT_ID})?/?$`);

/** Reads a path like `/ramp/{id}/walk`. */
export function shellDraws(path: string): ShellDraws {
  if (ALWAYS.test(path)) return 'always';
  return WHEN_CUT_OFF.test(path) ? 'when-cut-off' : 'never';
}
