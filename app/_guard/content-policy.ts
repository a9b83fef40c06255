/**
 * What a page may load and run (Content Security Policy Level 3). Every script needs leave of its own: a nonce that is made
 * for one answer, or, on the one page that is the same for everybody, the hash of its text. Nothing inline runs otherwise,
 * and nothing is ever made of a string (`eval`).
 */
export interface PolicyOptions {
  /** React tells more with `eval`, and the bundler puts its styles into the page. */
  readonly developing?: boolean;
  /** Reached over https: what the page loads is asked for that way too. */
  readonly overHttps?: boolean;
}

/** For a page made for one answer. Scripts that a trusted script loads are trusted: that is how parts come later. */
export const nonceOnly = (nonce: string, options: PolicyOptions = {}): string =>
  policy(`'nonce-${nonce}' 'strict-dynamic'`, options);

/**
 * For a page that was made with the build and that phones keep: its inline scripts by their SHA-256, its files by coming from
 * here. `strict-dynamic` would shut those files out, as they stand in the page without a hash.
 */
export const hashesOnly = (sha256s: readonly string[], options: PolicyOptions = {}): string =>
  policy(["'self'", ...sha256s.map((sum) => `'sha256-${sum}'`)].join(' '), options);

/** While developing, a page that is otherwise made with the build is drawn each time, with other scripts. */
export const whileDeveloping = (): string => policy("'self' 'unsafe-inline'", { developing: true });

function policy(scripts: string, { developing = false, overHttps = false }: PolicyOptions): string {
  return [
    "default-src 'self'",
    `script-src ${scripts}${developing ? " 'unsafe-eval'" : ''}`,
    // Attributes hold places and sizes that are worked out (a lane of the day, a mark on a photo); no style element is taken.
    `style-src 'self'${developing ? " 'unsafe-inline'" : ''}`,
    "style-src-attr 'unsafe-inline'",
    // Photos that are not sent yet are shown from memory.
    "img-src 'self' blob: data:",
    "font-src 'self'",
    `connect-src 'self'${developing ? ' ws: wss:' : ''}`,
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "frame-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
    ...(overHttps ? ['upgrade-insecure-requests'] : []),
  ].join('; ');
}
