import { randomBytes } from 'node:crypto';
import { chmod, mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { DATA } from './places.mjs';
import { Trouble } from './say.mjs';

const FILE = path.join(DATA, 'secrets.json');

/**
 * A secret that is made once and kept in `.data/secrets.json`, readable by this account only.
 * `name` says what it is for; the answer is 43 characters of base64url (32 random bytes).
 */
export async function keptSecret(name: string): Promise<string> {
  const secrets = await readSecrets();
  const found = secrets[name];
  if (found !== undefined) {
    return found;
  }
  const made = newSecret();
  await mkdir(DATA, { recursive: true });
  const beside = `${FILE}.${process.pid}`;
  await writeFile(beside, `${JSON.stringify({ ...secrets, [name]: made }, null, 2)}\n`, { mode: 0o600 });
  await chmod(beside, 0o600);
  await rename(beside, FILE);
  return made;
}

/** 32 random bytes as base64url. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

async function readSecrets(): Promise<Record<string, string>> {
  let text: string;
  try {
    text = await readFile(FILE, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') {
      return {};
    }
    throw error;
  }
  try {
    return JSON.parse(text) as Record<string, string>;
  } catch (error) {
    throw new Trouble(
      `${FILE} is damaged and cannot be read. Delete it, then run: npm run demo -- --fresh (the demo's data is made anew).`,
      { cause: error },
    );
  }
}
