import {
  KEY_OF,
  SHELVES,
  type AtTheShelves,
  type KeptStore,
  type ShelfName,
  type Shelves,
} from './kept-store';

/** Everything of each shelf, to begin with. */
export type Contents = { readonly [S in ShelfName]?: readonly Shelves[S][] };

/** Keeps things in this page only, where the phone refuses to: sending still works while the page is open. */
export function memoryStore(contents: Contents = {}): KeptStore {
  let kept = new Map<ShelfName, Map<string, unknown>>(
    SHELVES.map((shelf) => [shelf, new Map(entriesOf(shelf, contents))]),
  );
  let last: Promise<unknown> = Promise.resolve();

  async function run<T>(work: (at: AtTheShelves) => Promise<T>): Promise<T> {
    const draft = new Map([...kept].map(([shelf, values]) => [shelf, new Map(values)]));
    const done = await work(shelvesIn(draft));
    kept = draft;
    return done;
  }

  return {
    inOne(_shelves, _mode, work) {
      // One after the other, as a database would.
      const mine = last.then(
        () => run(work),
        () => run(work),
      );
      last = mine.catch(() => undefined);
      return mine;
    },
  };
}

const entriesOf = <S extends ShelfName>(shelf: S, contents: Contents): [string, unknown][] =>
  ((contents[shelf] ?? []) as readonly Shelves[S][]).map((value) => [KEY_OF[shelf](value), value]);

function shelvesIn(kept: Map<ShelfName, Map<string, unknown>>): AtTheShelves {
  const on = <S extends ShelfName>(shelf: S): Map<string, Shelves[S]> =>
    (kept.get(shelf) ?? new Map<string, unknown>()) as Map<string, Shelves[S]>;
  return {
    get: (shelf, key) => Promise.resolve(on(shelf).get(key)),
    all: (shelf) => Promise.resolve([...on(shelf).values()]),
    photosOf: (bundle) => Promise.resolve([...on('photos').values()].filter((one) => one.bundle === bundle)),
    put: (shelf, value) => {
      on(shelf).set(KEY_OF[shelf](value), value);
      return Promise.resolve();
    },
    drop: (shelf, key) => {
      on(shelf).delete(key);
      return Promise.resolve();
    },
  };
}
