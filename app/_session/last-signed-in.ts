/**
 * Who signed in last on this phone, as far as its pages have to know: when another person than before came in. What the
 * phone kept for the earlier one is not shown from then on (app/ramp/_phone/pack.ts).
 */
const WHO = 'wheelchock/signed-in';
const CHANGED = 'wheelchock/person-changed-at';

/** Notes a sign-in. The address is kept only as long as nobody signs out. */
export function noteSignIn(email: string): void {
  try {
    const who = email.trim().toLowerCase();
    if (localStorage.getItem(WHO) === who) return;
    localStorage.setItem(WHO, who);
    localStorage.setItem(CHANGED, new Date().toISOString());
  } catch {
    // A phone that keeps nothing has nothing of anybody else's to show.
  }
}

/** Notes a sign-out. */
export function noteSignOut(): void {
  try {
    localStorage.removeItem(WHO);
    localStorage.setItem(CHANGED, new Date().toISOString());
  } catch {
    // As above.
  }
}

/** ISO instant of the phone's clock when the person changed last; empty when it never did. */
export function lastPersonChange(): string {
  try {
    return localStorage.getItem(CHANGED) ?? '';
  } catch {
    return '';
  }
}
