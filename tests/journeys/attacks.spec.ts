/**
 * What only a browser and a real server can show: that no page breaks its own policy, that a script put into a page does not
 * run, that pages send strangers away, and that a form of another site does nothing. Sources: issue 7 ("strict CSP with nonces",
 * "CSRF", "isolation"); Content Security Policy Level 3; RFC 9110.
 */
import { expect, test, type Page } from '@playwright/test';
import { signIn } from '../fixtures/browser';
import { pathOf, SCREENS } from '../fixtures/every-screen';

declare global {
  interface Window {
    breaches: string[];
  }
}

/** Notes each breach of the policy in the page itself; the browser reports them to the document. */
const noteBreaches = (page: Page) =>
  page.addInitScript(() => {
    window.breaches = [];
    document.addEventListener('securitypolicyviolation', (event) =>
      window.breaches.push(`${event.effectiveDirective} ${event.blockedURI} ${event.sample}`),
    );
  });

for (const who of [null, 'pia', 'moira', 'tess', 'gil'] as const) {
  test(`no page of ${who ?? 'nobody'} breaks its policy, and each has a nonce or hashes`, async ({
    page,
  }) => {
    test.setTimeout(300_000);
    await noteBreaches(page);
    if (who) await signIn(page, who);
    for (const screen of SCREENS.filter((one) => one.who === who)) {
      const path = await pathOf(screen, process.env['DATABASE_URL'] ?? '');
      if (path === null) continue;
      const answer = await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      // From a service worker's own keep the headers are those it was kept with.
      const policy = answer?.headers()['content-security-policy'] ?? '';
      expect
        .soft(policy, screen.route)
        .toMatch(/script-src (?:'nonce-[\w+/=]+' 'strict-dynamic'|'self'(?: 'sha256-[\w+/=]+')+);/);
      expect.soft(policy, screen.route).not.toMatch(/script-src[^;]*unsafe/);
      // Alive: what was drawn on the server answers in the browser.
      expect.soft(await page.evaluate(() => window.breaches), screen.route).toEqual([]);
    }
  });
}

test('a script that gets into a page does not run, in it or by an attribute', async ({ page }) => {
  for (const path of ['/sign-in', '/ramp/out']) {
    await noteBreaches(page);
    await page.goto(path);
    await page.evaluate(() => {
      const script = document.createElement('div');
      script.innerHTML =
        '<img src="/icon.svg" onload="document.title = \'ran\'"><a href="javascript:document.title=\'ran\'">x</a>';
      document.body.append(script);
      // As a template of the page would have it: in the markup, and not made by a script that is trusted.
      document.body.insertAdjacentHTML(
        'beforeend',
        '<iframe srcdoc="<script>parent.document.title=\'ran\'</script>"></iframe>',
      );
    });
    await page.locator('a', { hasText: /^x$/ }).first().dispatchEvent('click');
    await expect.poll(() => page.evaluate(() => window.breaches.length)).toBeGreaterThan(0);
    expect(await page.title()).not.toBe('ran');
  }
});

test('the headers of a page', async ({ request }) => {
  const headers = (await request.get('/sign-in')).headers();
  expect(headers).toMatchObject({
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  });
  expect(headers['permissions-policy']).toContain('camera=()');
  expect(headers['x-powered-by']).toBeUndefined();
});

test('an action asked for from another site is refused before it runs', async ({ page, request }) => {
  await page.goto('/sign-in/forgotten');
  // The number of the action, as the page's own form sends it.
  const sent = page.waitForRequest((one) => one.method() === 'POST' && 'next-action' in one.headers());
  await page.getByLabel('E-mail address').fill('nobody@elsewhere.example');
  await page.getByRole('button', { name: /Send|link/i }).click();
  const own = await sent;
  const again = (origin: string) =>
    request.post('/sign-in/forgotten', {
      headers: {
        'next-action': own.headers()['next-action'] ?? '',
        'content-type': 'text/plain;charset=UTF-8',
        accept: 'text/x-component',
        origin,
      },
      data: own.postData() ?? '',
    });
  expect((await again(new URL(page.url()).origin)).status()).toBe(200);
  expect((await again('https://elsewhere.example')).status()).toBeGreaterThanOrEqual(400);
});
