import { type KeptPhoto } from './shapes';

/** Longest edge of what is kept and sent, pixels; the server keeps no more. */
const LONGEST_EDGE = 1600;
const JPEG_QUALITY = 0.85;

/**
 * A photo as a JPEG of at most 1600 pixels, upright: a ramp's signal is thin and a phone's room is short. What only some
 * browsers read (HEIC) is read where this one can. Null where it cannot: a file nobody here can look at is not taken along
 * as if it were a photo.
 */
export async function readablePhoto(
  file: Blob,
): Promise<Pick<KeptPhoto, 'picture' | 'width' | 'height'> | null> {
  const source = (await asBitmap(file)) ?? (await asImage(file));
  if (!source) return null;
  const scale = Math.min(1, LONGEST_EDGE / Math.max(source.width, source.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(source.width * scale));
  canvas.height = Math.max(1, Math.round(source.height * scale));
  canvas.getContext('2d')?.drawImage(source, 0, 0, canvas.width, canvas.height);
  if ('close' in source) source.close();
  const picture = await new Promise<Blob | null>((resolve) =>
    canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY),
  );
  return picture && { picture, width: canvas.width, height: canvas.height };
}

async function asBitmap(file: Blob): Promise<ImageBitmap | null> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return null;
  }
}

/** Some browsers read more as an image than as a bitmap. */
async function asImage(file: Blob): Promise<HTMLImageElement | null> {
  const url = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return image.width > 0 ? image : null;
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(url);
  }
}
