export function ensureClient(): Promise<void>;
