/**
 * Somebody is invited on paper, chooses a password, signs in, leaves, and gets in no more. Sources: issue 6 ("invitations by
 * link (mail or printed), password set ... leave and return"); WCAG 2.2 AA for axe. Each run makes a person of its own and
 * lets them leave; the demo's people stay as they are.
 */
import { randomUUID } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { pageOf } from '../fixtures/browser';

const PASSWORD = 'seven copper kettles on a windowsill';

async function expectNoFaults(page: Page): Promise<void> {
  const { violations } = await axeOn(page).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

async function tryToSignIn(page: Page, email: string): Promise<void> {
  await page.goto('/sign-in');
  await page.getByLabel('E-mail address').fill(email);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

test('invited on paper, in by the link, certificate entered, left, and shut out', async ({
  browser,
  page,
}) => {
  test.slow();
  const tag = randomUUID().slice(0, 8);
  const name = `Nib Wetherlark ${tag}`;
  const email = `nib.${tag}@quillback.example`;
  const manager = await pageOf(browser, 'gil');

  await manager.goto('/office/people/invite');
  await manager.getByLabel('Name', { exact: true }).fill(name);
  await manager.getByLabel('E-mail address').fill(email);
  await manager.getByRole('checkbox', { name: /^Pilot/ }).check();
  await manager.getByRole('radio', { name: /On paper/ }).check();
  await expectNoFaults(manager);
  await manager.getByRole('button', { name: 'Invite' }).click();
  const sheet = manager.getByRole('region', { name: `For ${name}` });
  await expect(sheet).toBeFocused();
  await expect(sheet.getByRole('img', { name: /code to scan/ })).toBeVisible();
  const address = new URL(await sheet.getByRole('code').innerText());
  await manager.getByRole('link', { name: /Next: certificates/ }).click();
  await expect(manager.getByRole('heading', { level: 1, name })).toBeVisible();

  await page.goto(`${address.pathname}${address.hash}`);
  await expect(page.getByText(`${name}, you are invited to`)).toBeVisible();
  await expectNoFaults(page);
  await page.getByLabel('New password').fill(PASSWORD);
  await page.getByLabel('The same again').fill(PASSWORD);
  await page.getByRole('button', { name: 'Set the password' }).click();
  await expect(page.getByRole('heading', { name: 'Your password is set' })).toBeVisible();
  // Used up.
  await page.goto(`${address.pathname}?again${address.hash}`);
  await expect(page.getByText('This link cannot be used.')).toBeVisible();
  await tryToSignIn(page, email);
  await expect(page).toHaveURL(/\/ramp/);

  await manager.reload();
  await manager.getByText('Enter: Pilot certificate').click();
  const form = manager.getByRole('form', { name: 'Pilot certificate' });
  await form.getByLabel('Number').fill(`P-${tag}`);
  await form.getByLabel('Grade').selectOption('private');
  await form.getByRole('checkbox', { name: 'Airplane single-engine land' }).check();
  await form.getByRole('button', { name: 'Enter the certificate' }).click();
  await expect(manager.getByText(`P-${tag}`)).toBeVisible();

  await manager.getByText(`${name} leaves`).click();
  await manager.getByRole('button', { name: 'Let them leave' }).click();
  await expect(manager.getByRole('heading', { level: 2, name: 'Returning' })).toBeVisible();
  await page.goto('/ramp');
  await expect(page).toHaveURL(/\/sign-in/);
  await tryToSignIn(page, email);
  await expect(page.getByText('That address and password do not fit together.')).toBeVisible();
  await manager.context().close();
});

test('a link that is none says so in plain words, and a forgotten password has a way back', async ({
  page,
}) => {
  await page.goto(`/join#${'A'.repeat(43)}`);
  await expect(page.getByText('This link cannot be used.')).toBeVisible();
  await page.goto('/sign-in/forgotten');
  await expect(page.getByRole('heading', { level: 1, name: 'Password forgotten' })).toBeVisible();
});
