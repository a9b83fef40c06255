/**
 * The whole body of a request. `too-long` as soon as it is longer than `most` bytes, whatever its header says; `cut-off` when
 * the sender went away in the middle.
 */
export async function readUpTo(
  request: Request,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | 'too-long' | 'cut-off'> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return 'too-long';
  const reader = request.body?.getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  try {
    for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
      length += read.value.byteLength;
      if (length > most) {
        await reader?.cancel();
        return 'too-long';
      }
      parts.push(read.value);
    }
  } catch {
    return 'cut-off';
  }
  return Buffer.concat(parts);
}
