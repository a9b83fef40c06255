import { noteSignIn } from './last-signed-in';

/**
 * The browser's side of next-auth, two calls. next-auth's own client leaves the page when the network fails, and the
 * typed address with it; these only report.
 */
export type KnockAnswer = 'in' | 'second-factor' | 'refused' | 'held-up' | 'try-again' | 'no-connection';

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
    // Only 401 without our own code says that the pair was not right; everything else is no judgement on it.
    const { url } = (await response.json()) as { url?: string };
    if (response.status === 401 && url?.includes('error=second_factor')) return 'second-factor';
    if (response.status === 401 && url?.includes('error=held_up')) return 'held-up';
    return response.status === 401 && url?.includes('error=CredentialsSignin') ? 'refused' : 'try-again';
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
