import { type KeptPhoto } from '../_phone/shapes';

/**
 * Addresses under which the browser shows kept photos. One for each photo until the page goes: what is kept is read anew
 * now and then and is another object each time, and a picture whose address changes flickers.
 */
const urls = new Map<string, string>();

export function pictureUrl({ id, picture }: Pick<KeptPhoto, 'id' | 'picture'>): string {
  const there = urls.get(id);
  if (there !== undefined) return there;
  const made = URL.createObjectURL(picture);
  urls.set(id, made);
  return made;
}

/** After a photo was left out: its bytes are free again. */
export function forgetPictureUrl(id: string): void {
  const there = urls.get(id);
  if (there !== undefined) URL.revokeObjectURL(there);
  urls.delete(id);
}
