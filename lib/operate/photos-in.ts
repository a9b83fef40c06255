/** Settings that put photos into this folder and into no bucket, whatever the environment says. */
export function photosIn(folder: string): Record<string, string> {
  const bucket = Object.keys(process.env).filter((name) => name.startsWith('PHOTO_S3_'));
  return { ...Object.fromEntries(bucket.map((name) => [name, ''])), PHOTO_DIR: folder };
}
