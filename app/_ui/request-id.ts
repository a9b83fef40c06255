/**
 * A random UUID (version 4) that names one write. `crypto.randomUUID` is missing where the page came over plain http
 * from another machine, which is how a ramp phone may reach a server in the office; getRandomValues is always there.
 */
export function newRequestId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  // RFC 9562 section 5.4: version 4 in the high half of byte 6, variant 10 in the top bits of byte 8.
  const hex = Array.from(bytes, (byte, index) => {
    const marked = index === 6 ? (byte & 0x0f) | 0x40 : index === 8 ? (byte & 0x3f) | 0x80 : byte;
    return marked.toString(16).padStart(2, '0');
  }).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
