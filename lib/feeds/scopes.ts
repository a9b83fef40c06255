import { said } from '../words/said';

/** What a key may open. Each is named by what stands behind it; a key has one or several, and never more than its person. */
export const SCOPES = {
  'fleet:read': said('Board, aircraft and their answers'),
  'write-ups:read': said('Write-ups'),
  'flights:read': said('Planned flights and releases'),
  'flights:plan': said('Plan flights'),
  'due:read': said('What falls due'),
  'records:read': said('Signed records of an aircraft'),
  'everything:read': said('Every table as CSV or JSON'),
  'calendar:read': said('The calendar of what falls due'),
} as const;

export type Scope = keyof typeof SCOPES;

export const SCOPE_NAMES = Object.keys(SCOPES) as readonly Scope[];

export const isScope = (text: string): text is Scope => Object.hasOwn(SCOPES, text);

/** A calendar program sends no headers, so its key stands in an address; such a key opens the calendar and nothing else. */
export const IN_ADDRESS: Scope = 'calendar:read';
