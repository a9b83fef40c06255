/** What a signed-in browser sends, without the browser: cookies kept, every answer read to its end, and timed. */
import { readFile } from 'node:fs/promises';
import { inRepository } from '@/lib/operate/places.mjs';

export class Visitor {
  readonly #cookies = new Map<string, string>();

  constructor(readonly address: string) {}

  /** Asks once. Gives the milliseconds until the last byte; throws when it is not answered as it should be. */
  async ask(path: string, init: RequestInit = {}, expect?: RegExp): Promise<{ ms: number; text: string }> {
    const began = performance.now();
    const answer = await fetch(`${this.address}${path}`, {
      ...init,
      redirect: 'manual',
      headers: { origin: this.address, cookie: this.#header(), ...init.headers },
    });
    const text = await answer.text();
    const ms = performance.now() - began;
    this.#keep(answer);
    if (answer.status !== 200 || (expect && !expect.test(text))) {
      throw new Error(`${init.method ?? 'GET'} ${path} was answered ${answer.status}: ${text.slice(0, 400)}`);
    }
    return { ms, text };
  }

  /** Only how it is answered; nothing is followed. */
  async status(path: string): Promise<number> {
    const answer = await fetch(`${this.address}${path}`, {
      redirect: 'manual',
      headers: { cookie: this.#header() },
    });
    await answer.body?.cancel();
    return answer.status;
  }

  /** A stream, open until `signal`. */
  async open(path: string, signal: AbortSignal): Promise<ReadableStream<Uint8Array>> {
    const { body, status } = await fetch(`${this.address}${path}`, {
      signal,
      headers: { cookie: this.#header() },
    });
    if (status !== 200 || !body) throw new Error(`${path} was answered ${status}.`);
    return body;
  }

  async signIn(email: string, password: string): Promise<void> {
    const { text } = await this.ask('/api/auth/csrf');
    const { csrfToken } = JSON.parse(text) as { csrfToken: string };
    const body = new URLSearchParams({ email, password, csrfToken, json: 'true' });
    await this.ask('/api/auth/callback/credentials', { method: 'POST', body });
    if (!this.isSignedIn) throw new Error(`${email} was not let in.`);
  }

  get isSignedIn(): boolean {
    return this.#cookies.has('next-auth.session-token');
  }

  async signOut(): Promise<void> {
    const { text } = await this.ask('/api/auth/csrf');
    const { csrfToken } = JSON.parse(text) as { csrfToken: string };
    await this.ask('/api/auth/signout', {
      method: 'POST',
      body: new URLSearchParams({ csrfToken, json: 'true' }),
    });
  }

  /** The same cookies, at another address. */
  at(address: string): Visitor {
    const other = new Visitor(address);
    for (const [name, value] of this.#cookies) other.#cookies.set(name, value);
    return other;
  }

  get #pairs(): string[] {
    return [...this.#cookies].map(([name, value]) => `${name}=${value}`);
  }

  #header(): string {
    return this.#pairs.join('; ');
  }

  #keep(answer: Response): void {
    for (const line of answer.headers.getSetCookie()) {
      const [pair = ''] = line.split(';');
      const at = pair.indexOf('=');
      const [name, value] = [pair.slice(0, at), pair.slice(at + 1)];
      if (value === '' || /max-age=0|expires=thu, 01 jan 1970/i.test(line)) this.#cookies.delete(name);
      else this.#cookies.set(name, value);
    }
  }
}

interface Manifest {
  readonly node: Readonly<Record<string, { readonly exportedName?: string; readonly filename?: string }>>;
}

/** The number a built page gives a server action: the answer of a flight is asked for by one. */
export async function actionNumber(file: string, name: string): Promise<string> {
  const text = await readFile(inRepository('.next', 'server', 'server-reference-manifest.json'), 'utf8');
  const { node } = JSON.parse(text) as Manifest;
  const found = Object.entries(node).find(([, one]) => one.exportedName === name && one.filename === file);
  if (!found) throw new Error(`The build knows no action ${name} of ${file}.`);
  return found[0];
}
