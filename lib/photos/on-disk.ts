import { randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { requireKey, type PhotoStore } from './store';

/**
 * Photos in a folder of this machine, readable by this account only. A file appears whole or not at all: it is written
 * beside its place, brought to the disk, and then renamed.
 */
export function onDisk(folder: string): PhotoStore {
  const root = path.resolve(/* turbopackIgnore: true */ folder);
  return {
    async put(key, bytes) {
      const file = placeOf(root, key);
      await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
      const beside = path.join(path.dirname(file), `.${randomUUID()}.part`);
      try {
        await writeThrough(beside, bytes);
        await rename(beside, file);
      } catch (error) {
        await rm(beside, { force: true });
        throw error;
      }
      await syncFolder(path.dirname(file));
    },
    async get(key) {
      try {
        return Uint8Array.from(await readFile(placeOf(root, key)));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
        throw error;
      }
    },
    remove: (key) => rm(placeOf(root, key), { force: true }),
  };
}

/** Makes the folder if need be, and throws when nothing can be written there. */
export async function requireFolder(folder: string): Promise<void> {
  const root = path.resolve(/* turbopackIgnore: true */ folder);
  const probe = path.join(root, `.${randomUUID()}.part`);
  try {
    await mkdir(root, { recursive: true, mode: 0o700 });
    await writeThrough(probe, new Uint8Array());
    await rm(probe);
  } catch (error) {
    throw new Error(
      `Photos cannot be kept in ${root} (${(error as NodeJS.ErrnoException).code ?? String(error)}). ` +
        'Let this account write there, or name another folder in PHOTO_DIR.',
      { cause: error },
    );
  }
}

function placeOf(root: string, key: string): string {
  requireKey(key);
  const file = path.join(/* turbopackIgnore: true */ root, ...key.split('/'));
  if (!file.startsWith(root + path.sep)) throw new RangeError('This is no key of a photo.');
  return file;
}

async function writeThrough(file: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The new name is in the folder's own block, which has to reach the disk too. Some systems open no folders. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  try {
    await handle?.sync();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EPERM' && code !== 'EINVAL') throw error;
  } finally {
    await handle?.close();
  }
}
