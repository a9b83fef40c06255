import { said } from '@/lib/words/said';

/** What hinders a screen from being drawn anew. */
export type Trouble = 'none' | 'no-contact' | 'signed-out' | 'server';

export const TROUBLE_WORDS: Record<Trouble, string> = {
  none: said('Asking the server.'),
  'no-contact': said('No contact with the server.'),
  'signed-out': said('You are signed out.'),
  server: said('The server cannot answer just now.'),
};

const PATIENCE_MS = 10_000;

/** Whether the server, its database and the session still answer. */
export async function knockOnServer(): Promise<Trouble> {
  try {
    const answer = await fetch('/desk/contact', {
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (answer.ok) return 'none';
    return answer.status === 401 ? 'signed-out' : 'server';
  } catch {
    return 'no-contact';
  }
}
