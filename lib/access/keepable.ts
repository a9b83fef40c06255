/**
 * U+0000, which PostgreSQL keeps in no text, and half a surrogate pair, which is no character: UTF-8 has none for it and
 * another would be stored than was signed. Neither can be typed; a program or a broken clipboard sends them.
 */
const NOT_KEPT = /[\0\p{Surrogate}]/u;

/**
 * The first field of a message that holds what no table can keep, as `words` or `measurements.depth`; null when all can be
 * kept. Goes through arrays and plain objects without calling itself: a message may be thousands of levels deep.
 */
export function unkeepable(message: unknown): string | null {
  const waiting: { readonly value: unknown; readonly field: string }[] = [{ value: message, field: '' }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { value, field } = next;
    if (typeof value === 'string') {
      if (NOT_KEPT.test(value)) return field;
      continue;
    }
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) continue;
    for (const [name, one] of Object.entries(value)) {
      if (NOT_KEPT.test(name)) return field;
      waiting.push({ value: one, field: field === '' ? name : `${field}.${name}` });
    }
  }
  return null;
}
