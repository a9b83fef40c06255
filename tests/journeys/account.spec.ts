/**
 * Somebody's own account: a second factor is set up and asked for, a session is ended and is thrown out. Sources: issue 6
 * ("sessions listed and ended", "passkeys or TOTP as second factor"); RFC 6238 for the codes; the passkey is made by the
 * browser's own virtual authenticator (Chrome DevTools Protocol, WebAuthn); WCAG 2.2 AA for axe. The person is here for
 * this journey only and leaves at its end.
 */
import { expect, test, type Page } from '@playwright/test';
import { Secret, TOTP } from 'otpauth';
import { newcomer, type Newcomer } from '../fixtures/newcomer';
import { axeOn } from '../fixtures/axe';

/** The app's code now, or one step ahead, which the server takes as well: each works once. */
const codeOf = (secret: string, ahead = 0) =>
  new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: Date.now() + ahead * 30_000 });

async function knock(page: Page, who: Newcomer): Promise<void> {
  await page.goto('/sign-in?next=/account');
  await page.getByLabel('E-mail address').fill(who.email);
  await page.getByLabel('Password').fill(who.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

const atAccount = (page: Page, who: Newcomer) =>
  expect(page.getByRole('heading', { level: 1, name: who.name })).toBeVisible();

async function signOut(page: Page): Promise<void> {
  await page.getByRole('banner').getByRole('button', { name: 'Sign out' }).click();
  await expect(page).toHaveURL(/\/sign-in/);
}

async function showCode(page: Page, code: string): Promise<void> {
  await expect(page.getByRole('heading', { name: 'Second step' })).toBeFocused();
  await page.getByLabel('Code').fill(code);
  await page.getByRole('button', { name: 'Sign in with the code' }).click();
}

async function begin(page: Page, kind: string, password: string): Promise<void> {
  await page.getByText('Set up a second factor', { exact: true }).click();
  const form = page.getByRole('form', { name: 'Set up a second factor' });
  await form.getByRole('radio', { name: kind }).check();
  await form.getByLabel('Your password').fill(password);
  await form.getByRole('button', { name: 'Go on' }).click();
}

const axe = async (page: Page) => {
  const { violations } = await axeOn(page).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
};

test('a second factor is set up, asked for, and a session elsewhere is ended', async ({ page, browser }) => {
  test.setTimeout(180_000);
  const who = await newcomer(browser);
  await knock(page, who);
  await atAccount(page, who);
  await expect(page.getByRole('banner').getByRole('link', { name: /Your account/ })).toBeVisible();

  const [secret, codes] =
    await test.step('the app counts after its first code, and gives ten codes', async () => {
      await begin(page, 'Authenticator app', who.password);
      const text =
        (await page
          .locator('code')
          .filter({ hasText: /^[A-Z2-7 ]{39}$/ })
          .textContent()) ?? '';
      await page.getByLabel('The code the app shows now').fill('000000');
      await page.getByRole('button', { name: 'Check the code' }).click();
      await expect(page.getByText(/not the code of this moment/).first()).toBeVisible();
      await axe(page);
      await page.getByLabel('The code the app shows now').fill(codeOf(text));
      await page.getByRole('button', { name: 'Check the code' }).click();
      const shown = page.getByRole('list', { name: 'Your recovery codes' });
      await expect(shown.getByRole('listitem')).toHaveCount(10);
      return [text, await shown.getByRole('listitem').allTextContents()] as const;
    });

  await test.step('password, then the code', async () => {
    await signOut(page);
    await knock(page, who);
    await showCode(page, '000000');
    await expect(page.getByText('That was not taken.')).toBeVisible();
    await axe(page);
    // Half way nobody is signed in.
    expect((await page.request.get('/api/personal-data')).status()).toBe(401);
    await page.getByLabel('Code').fill(codeOf(secret, 1));
    await page.getByRole('button', { name: 'Sign in with the code' }).click();
    await atAccount(page, who);
    await expect(page.getByText('Signed in with password and authenticator app.')).toBeVisible();
  });

  await test.step('a session elsewhere, begun with a recovery code, is ended and thrown out', async () => {
    const context = await browser.newContext();
    const elsewhere = await context.newPage();
    await knock(elsewhere, who);
    await showCode(elsewhere, codes[0] ?? '');
    await atAccount(elsewhere, who);
    await page.reload();
    await page.getByRole('button', { name: /^End this session/ }).click();
    await page.getByRole('button', { name: 'Yes, end it' }).click();
    // Gone from the list when the server has done it, not when the button was pressed.
    await expect(page.locator('#sessions').getByRole('listitem')).toHaveCount(1);
    await elsewhere.goto('/account');
    await expect(elsewhere).toHaveURL(/\/sign-in/);
    await context.close();
  });

  await test.step('a passkey is added, signs in, and the app is ended', async () => {
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('WebAuthn.enable');
    await devtools.send('WebAuthn.addVirtualAuthenticator', {
      options: {
        protocol: 'ctap2',
        transport: 'internal',
        hasUserVerification: true,
        isUserVerified: true,
        automaticPresenceSimulation: true,
      },
    });
    await begin(page, 'Passkey', who.password);
    await page.getByLabel('What you call it').fill('This machine');
    await page.getByRole('button', { name: 'Make the passkey' }).click();
    await expect(page.getByRole('heading', { name: 'This machine' })).toBeVisible();
    await signOut(page);
    await knock(page, who);
    await page.getByRole('button', { name: 'Use your passkey' }).click();
    await atAccount(page, who);
    await expect(page.getByText('Signed in with password and passkey.')).toBeVisible();

    await page.locator('summary[aria-label="End it: Authenticator app"]').click();
    const form = page.getByRole('form', { name: 'End it: Authenticator app' });
    await form.getByLabel('Your password').fill(who.password);
    await form.getByRole('button', { name: 'End it' }).click();
    await expect(page.getByRole('heading', { name: 'Authenticator app' })).toBeHidden();
    await axe(page);
  });

  await test.step('whoever leaves is out at once', async () => {
    await who.leave();
    await page.goto('/account');
    await expect(page).toHaveURL(/\/sign-in/);
  });
});
