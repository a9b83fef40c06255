import { createHash } from 'node:crypto';

/** Whole script elements: attributes, then text. Next writes no `</script` inside one. */
const SCRIPT = /<script\b([^>]*)>([\s\S]*?)<\/script>/gi;

/** SHA-256 in base64 of the text of each inline script of a page, each once, as a policy names them (CSP3, 2.3.1). */
export function inlineScriptSums(html: string): string[] {
  const sums = new Set<string>();
  for (const [, attributes = '', text = ''] of html.matchAll(SCRIPT)) {
    if (/\ssrc\s*=/i.test(attributes)) continue;
    sums.add(createHash('sha256').update(text).digest('base64'));
  }
  return [...sums];
}
