/** Which database and which photos the commands work on. */
import path from 'node:path';
import { OWN_APP_PASSWORD, OWN_DATA, hasOwnDatabase, withOwnDatabase } from '../own-database';
import { appPasswordName } from '../migrate';
import { photosIn } from '../photos-in';
import { readSettingsFromFiles } from '../production/settings-from-files.mjs';
import { Trouble } from '../say.mjs';

type Environment = Readonly<Record<string, string | undefined>>;

export interface Place {
  readonly ownerUrl: string;
  readonly photos: Environment;
  /** The name under which the web account's password is kept on this machine. */
  readonly passwordName: string;
}

/**
 * DATABASE_URL (the owner's) and the settings of photos, or what `npm start` keeps under `.data/own`, whether it runs now or
 * not. `mayBeNew`: a restore may make the latter.
 */
export async function withPlace<T>(mayBeNew: boolean, work: (place: Place) => Promise<T>): Promise<T> {
  readSettingsFromFiles(['DATABASE_URL', 'APP_DATABASE_URL', 'PHOTO_S3_SECRET']);
  const given = process.env['DATABASE_URL'];
  if (given) return work({ ownerUrl: given, photos: process.env, passwordName: appPasswordName(given) });
  if (!mayBeNew && !hasOwnDatabase()) {
    throw new Trouble(
      "There is no database here: `npm start` never ran. For another one set DATABASE_URL to the owner's address.",
    );
  }
  const named = process.env['PHOTO_DIR'] || process.env['PHOTO_S3_BUCKET'];
  const photos = named ? process.env : { ...process.env, ...photosIn(path.join(OWN_DATA, 'photos')) };
  return withOwnDatabase((ownerUrl) => work({ ownerUrl, photos, passwordName: OWN_APP_PASSWORD }));
}
