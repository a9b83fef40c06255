const HERE = 'http://here.invalid';

/**
 * A path of this site to go on to, from an address anybody can write: `/ramp?x=1` stays, everything that could lead
 * elsewhere (`//other`, `/\other`, `https:...`, control characters) becomes the start page.
 */
export function sameOriginPath(asked: unknown): string {
  if (typeof asked !== 'string' || !/^\/(?![/\\])[^\\\p{Cc}]*$/u.test(asked)) return '/';
  const url = URL.canParse(asked, HERE) ? new URL(asked, HERE) : null;
  // Dot segments can make an innocent path start with two slashes.
  if (!url || url.origin !== HERE || url.pathname.startsWith('//')) return '/';
  return `${url.pathname}${url.search}${url.hash}`;
}
