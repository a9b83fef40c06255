import { noteSignIn } from './last-signed-in';

/**
 * The browser's side of next-auth, two calls. next-auth's own client leaves the page when the network fails, and the
 * typed address with it; these only report.
 */
export type KnockAnswer = 'in' | 'second-factor' | 'refused' | 'held-up' | 'try-again' | 'no-connection';

/** What a 401 says, by the error in its address: next-auth's own when the pair was not right, and ours (auth.ts). */
const OF_401: Readonly<Record<string, KnockAnswer>> = {
  second_factor: 'second-factor',
  held_up: 'held-up',
  CredentialsSignin: 'refused',
};

/** What is shown beside the password: a code, or the answer of a passkey. */
export type Shown = { readonly code: string } | { readonly passkey: unknown };

/** Signs in with address and password, in the second step with what is shown beside them. */
export async function knock(email: string, password: string, shown?: Shown): Promise<KnockAnswer> {
  try {
    const proof: Record<string, string> = shown ? { proof: JSON.stringify(shown) } : {};
    const response = await post('/api/auth/callback/credentials', { email, password, ...proof });
    if (response.ok) {
      noteSignIn(email);
      return 'in';
    }
    const { url } = (await response.json()) as { url?: string };
    const told = Object.entries(OF_401).find(([error]) => url?.includes(`error=${error}`));
    // Everything but 401 is no judgement on the pair.
    return response.status === 401 && told ? told[1] : 'try-again';
  } catch (error) {
    return error instanceof SyntaxError ? 'try-again' : 'no-connection';
  }
}

/** Signs out. False when the server could not be reached: the session is then still there. */
export async function knockOut(): Promise<boolean> {
  try {
    return (await post('/api/auth/signout', {})).ok;
  } catch {
    return false;
  }
}

async function post(path: string, values: Record<string, string>): Promise<Response> {
  const { csrfToken } = (await (await fetch('/api/auth/csrf', { cache: 'no-store' })).json()) as {
    csrfToken: string;
  };
  return fetch(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ ...values, csrfToken, json: 'true' }),
  });
}
