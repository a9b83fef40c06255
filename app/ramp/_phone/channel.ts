import { type SyncState } from './shapes';

/** What changed, told to every part of this page, to other tabs and to the service worker. */
export type Told =
  | { readonly topic: 'outbox' | 'photos' | 'walks' | 'packs' }
  /** How sending stands in the tab that sends; without a state only that it has to be looked at again. */
  | { readonly topic: 'sync'; readonly state?: Trying };

/** The part of the state that only the tab that sends knows. */
export type Trying = Pick<SyncState, 'isSending' | 'stuck' | 'lastTriedAt'>;

type Listener = (told: Told) => void;

const listeners = new Set<Listener>();
let channel: BroadcastChannel | null = null;

/** Tells everybody, this page included. */
export function tell(told: Told): void {
  [...listeners].forEach((listener) => listener(told));
  line()?.postMessage(told);
}

/** Hears what is told, here and in other tabs. Returns how to stop. */
export function hear(listener: Listener): () => void {
  line();
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function line(): BroadcastChannel | null {
  if (channel || typeof BroadcastChannel === 'undefined' || typeof self === 'undefined') return channel;
  channel = new BroadcastChannel('wheelchock');
  channel.onmessage = ({ data }: MessageEvent<Told>) => [...listeners].forEach((listener) => listener(data));
  return channel;
}
