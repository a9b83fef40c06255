import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { tell } from './channel';
import {
  KEY_OF,
  SHELVES,
  type AtTheShelves,
  type KeptStore,
  type ShelfName,
  type Shelves,
} from './kept-store';
import { memoryStore } from './memory-store';

/**
 * The phone's own database (IndexedDB). A new version of it takes a new step in `STEPS`; a step that was ever released
 * never changes, since some phone has not taken it yet. A step may add shelves and rewrite what lies on them, and must
 * leave everything that is not sent.
 */
const NAME = 'wheelchock';

type Schema = {
  [S in ShelfName]: {
    key: string;
    value: Shelves[S];
    indexes: S extends 'photos' ? { bundle: string } : never;
  };
} & DBSchema;

const STEPS: readonly ((db: IDBPDatabase<Schema>) => void)[] = [
  (db) => {
    for (const shelf of SHELVES.filter((name) => name !== 'photos')) db.createObjectStore(shelf);
    db.createObjectStore('photos').createIndex('bundle', 'bundle');
  },
];

let opening: Promise<IDBPDatabase<Schema>> | null = null;
let fallen: Promise<KeptStore> | null = null;
let isPersistentAsked = false;

/** False once the phone has refused to keep something: then what is typed is lost with the page. */
export const isKept = (): boolean => fallen === null;

/**
 * Does a piece of work at the shelves it names, all of it or none. When the phone refuses (no room, private window) the
 * page goes on with a copy in its memory, and `isKept` says so.
 */
export async function inOne<T>(
  shelves: readonly ShelfName[],
  mode: 'readonly' | 'readwrite',
  work: (at: AtTheShelves) => Promise<T>,
): Promise<T> {
  if (fallen) return (await fallen).inOne(shelves, mode, work);
  try {
    return await inDatabase(shelves, mode, work);
  } catch (error) {
    // What the work itself throws is no failure of the phone.
    if (!(error instanceof DOMException) && error !== NO_DATABASE) throw error;
    fallen ??= copyInMemory();
    tell({ topic: 'sync' });
    return (await fallen).inOne(shelves, mode, work);
  }
}

const NO_DATABASE = new Error('This browser has no database for pages.');

async function inDatabase<T>(
  shelves: readonly ShelfName[],
  mode: 'readonly' | 'readwrite',
  work: (at: AtTheShelves) => Promise<T>,
  isSecondTry = false,
): Promise<T> {
  const db = await open();
  let tx;
  try {
    tx = db.transaction(shelves, mode);
  } catch (error) {
    // Closed for another tab's newer version, or by the phone to save memory: opened again, once.
    opening = null;
    if (isSecondTry) throw error;
    return inDatabase(shelves, mode, work, true);
  }
  if (mode === 'readwrite') askToStay();
  const at = shelvesOf(tx as never);
  let done: T;
  try {
    done = await work(at);
  } catch (error) {
    // Its own end is awaited below all the same, or the abort would be an error nobody catches.
    tx.done.catch(() => undefined);
    try {
      tx.abort();
    } catch {
      // It has ended already.
    }
    throw error;
  }
  await tx.done;
  return done;
}

function open(): Promise<IDBPDatabase<Schema>> {
  if (typeof indexedDB === 'undefined') return Promise.reject(NO_DATABASE);
  opening ??= openDB<Schema>(NAME, STEPS.length, {
    upgrade(db, from) {
      STEPS.slice(from).forEach((step) => step(db));
    },
    blocking(_current, _blocked, event) {
      opening = null;
      (event.target as IDBDatabase).close();
    },
    terminated() {
      opening = null;
    },
  });
  opening.catch(() => {
    opening = null;
  });
  return opening;
}

type AnyTransaction = {
  objectStore(name: string): {
    get(key: string): Promise<unknown>;
    getAll(): Promise<unknown[]>;
    put(value: unknown, key: string): Promise<unknown>;
    delete(key: string): Promise<void>;
    index(name: string): { getAll(key: string): Promise<unknown[]> };
  };
};

function shelvesOf(tx: AnyTransaction): AtTheShelves {
  return {
    get: async <S extends ShelfName>(shelf: S, key: string) =>
      (await tx.objectStore(shelf).get(key)) as Shelves[S] | undefined,
    all: async <S extends ShelfName>(shelf: S) => (await tx.objectStore(shelf).getAll()) as Shelves[S][],
    photosOf: async (bundle) =>
      (await tx.objectStore('photos').index('bundle').getAll(bundle)) as Shelves['photos'][],
    put: async (shelf, value) => {
      await tx.objectStore(shelf).put(value, KEY_OF[shelf](value));
    },
    drop: (shelf, key) => tx.objectStore(shelf).delete(key),
  };
}

/** What the database holds now, as far as it can still be read. */
async function copyInMemory(): Promise<KeptStore> {
  try {
    const all = await inDatabase(SHELVES, 'readonly', async (at) =>
      Promise.all(SHELVES.map(async (shelf) => [shelf, await at.all(shelf)] as const)),
    );
    return memoryStore(Object.fromEntries(all));
  } catch {
    return memoryStore();
  }
}

/** Asks the phone, once, not to throw away what is kept when room gets short. It may say no; nothing changes then. */
function askToStay(): void {
  if (isPersistentAsked || typeof navigator === 'undefined') return;
  isPersistentAsked = true;
  // Absent without https.
  const storage = navigator.storage as StorageManager | undefined;
  void storage?.persist?.().catch(() => false);
}
