import { type KeptDraft, type KeptPack, type KeptPhoto, type KeptWalk, type Outgoing } from './shapes';

/** One tab's turn at sending, where the browser has no locks of its own. */
export interface Turn {
  readonly name: 'sending';
  readonly holder: string;
  /** After that moment it counts as given up. */
  readonly until: string;
}

/** What each shelf holds. Every value knows its own key. */
export interface Shelves {
  outbox: Outgoing;
  photos: KeptPhoto;
  walks: KeptWalk;
  drafts: KeptDraft;
  packs: KeptPack;
  turns: Turn;
}
export type ShelfName = keyof Shelves;

export const SHELVES: readonly ShelfName[] = ['outbox', 'photos', 'walks', 'drafts', 'packs', 'turns'];

/** A walk's key: one under way per person and aircraft. */
export const walkKey = (personId: string, aircraftId: string): string => `${personId}/${aircraftId}`;

/** The key a value is kept under. */
export const KEY_OF: { readonly [S in ShelfName]: (value: Shelves[S]) => string } = {
  outbox: (message) => message.id,
  photos: (photo) => photo.id,
  walks: (walk) => walkKey(walk.personId, walk.aircraftId),
  drafts: (draft) => draft.key,
  packs: ({ pack }) => pack.person.id,
  turns: (turn) => turn.name,
};

/** Reading and writing within one transaction. Only these may be awaited in it: it ends when nothing is asked any more. */
export interface AtTheShelves {
  get<S extends ShelfName>(shelf: S, key: string): Promise<Shelves[S] | undefined>;
  all<S extends ShelfName>(shelf: S): Promise<readonly Shelves[S][]>;
  photosOf(bundle: string): Promise<readonly KeptPhoto[]>;
  put<S extends ShelfName>(shelf: S, value: Shelves[S]): Promise<void>;
  drop(shelf: ShelfName, key: string): Promise<void>;
}

/** Where things are kept: all of a piece of work happens, or none of it. */
export interface KeptStore {
  inOne<T>(
    shelves: readonly ShelfName[],
    mode: 'readonly' | 'readwrite',
    work: (at: AtTheShelves) => Promise<T>,
  ): Promise<T>;
}
