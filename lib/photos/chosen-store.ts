import { inS3, type S3Settings } from './in-s3';
import { onDisk, requireFolder } from './on-disk';
import type { PhotoStore } from './store';

type Environment = Readonly<Record<string, string | undefined>>;

type PhotoSettings =
  { readonly kind: 'disk'; readonly folder: string } | ({ readonly kind: 's3' } & S3Settings);

/** Seen from the folder the server runs in. */
const DEFAULT_FOLDER = '.data/photos';

const S3_NAMES = [
  'PHOTO_S3_ENDPOINT',
  'PHOTO_S3_BUCKET',
  'PHOTO_S3_REGION',
  'PHOTO_S3_KEY_ID',
  'PHOTO_S3_SECRET',
] as const;

/**
 * Where photos are kept, by the settings: all five of PHOTO_S3_… for a bucket, otherwise the folder PHOTO_DIR. Refuses
 * half a set of them, both at once, and what is no address or no bucket's name: photos must never lie by mistake where
 * nobody looks for them.
 */
export function photoSettings(env: Environment = process.env): PhotoSettings {
  const given = S3_NAMES.filter((name) => env[name]?.trim());
  const folder = env['PHOTO_DIR']?.trim() ?? '';
  if (given.length === 0) return { kind: 'disk', folder: folder === '' ? DEFAULT_FOLDER : folder };
  const missing = S3_NAMES.filter((name) => !given.includes(name));
  if (missing.length > 0) {
    throw new Error(
      `The settings of the photo store are half there: ${given.join(', ')} given, ${missing.join(', ')} missing. ` +
        'Give all five, or none to keep photos in the folder PHOTO_DIR.',
    );
  }
  if (folder !== '') {
    throw new Error('PHOTO_DIR and PHOTO_S3_… are both set. Photos lie in one place: take one of them away.');
  }
  const of = (name: (typeof S3_NAMES)[number]) => env[name]?.trim() ?? '';
  return {
    kind: 's3',
    endpoint: requireAddress(of('PHOTO_S3_ENDPOINT')),
    bucket: requireBucket(of('PHOTO_S3_BUCKET')),
    region: of('PHOTO_S3_REGION'),
    keyId: of('PHOTO_S3_KEY_ID'),
    secret: of('PHOTO_S3_SECRET'),
  };
}

/** The store these settings name. */
export function photoStore(env: Environment = process.env): PhotoStore {
  const settings = photoSettings(env);
  return settings.kind === 's3' ? inS3(settings) : onDisk(settings.folder);
}

/**
 * Asked once before the server takes requests: throws, in words for whoever runs it, when the settings cannot be right
 * or the folder cannot be written. A bucket that is away for a moment does not keep the server from starting.
 */
export async function requirePhotoStore(env: Environment = process.env): Promise<void> {
  const settings = photoSettings(env);
  if (settings.kind === 'disk') await requireFolder(settings.folder);
}

/**
 * Whether photos could be kept at this moment: a folder is written to; a bucket is only asked for something it does not
 * have, since writing there costs. Throws when not.
 */
export async function probePhotoStore(env: Environment = process.env): Promise<void> {
  const settings = photoSettings(env);
  if (settings.kind === 'disk') await requireFolder(settings.folder);
  else await inS3(settings, { attempts: 1, timeoutMs: 2500, pauseMs: 0 }).get('health/ready/probe.jpg');
}

function requireAddress(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : null;
  const isPlain =
    url !== null &&
    ['https:', 'http:'].includes(url.protocol) &&
    url.username + url.password + url.search + url.hash === '';
  if (!isPlain) {
    throw new Error('PHOTO_S3_ENDPOINT is no address of a store; it looks like https://s3.example.org.');
  }
  return url.href;
}

/** Bucket names, as the S3 user guide gives them: 3 to 63 small letters, digits, dots and dashes. */
function requireBucket(name: string): string {
  if (!/^[a-z0-9][a-z0-9.-]{1,61}[a-z0-9]$/.test(name) || name.includes('..')) {
    throw new Error(
      `PHOTO_S3_BUCKET=${name} is no name of a bucket: 3 to 63 small letters, digits and dashes.`,
    );
  }
  return name;
}
