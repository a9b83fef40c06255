/**
 * Does a piece of work at what this tab keeps over a reload, and gives what came of it. Null where the tab keeps nothing (a browser
 * that allows no storage, no room), or what it kept cannot be read: whoever asks goes on without.
 */
export function inTab<T>(work: (kept: Storage) => T): T | null {
  try {
    return work(sessionStorage);
  } catch {
    return null;
  }
}
