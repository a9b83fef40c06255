/**
 * Opening day of a school that is not the demo: from the token on the console to an aircraft of its own, on an empty database,
 * by the screens alone. Source: issue 6, first point.
 */
import { expect, test, type Page } from '@playwright/test';
import { openEmptySchool, type EmptySchool } from '../fixtures/empty-school';

const PASSWORD = 'seven grey herons at dusk';
let school: EmptySchool;

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({}, info) => {
  test.setTimeout(180_000);
  school = await openEmptySchool(info.project.name);
});
test.afterAll(() => school?.close());

/** One answer of a group of choices. */
const choose = (page: Page, question: string | RegExp, answer: string): Promise<void> =>
  page.getByRole('radiogroup', { name: question }).getByRole('radio', { name: answer, exact: true }).check();

test('an address that is not complete says so, and what to do', async ({ page }) => {
  await page.goto(school.address.slice(0, -1));
  await expect(page.getByText('This address does not open the set-up page')).toBeVisible();
  await expect(page.getByText('npm run set-up-token')).toBeVisible();
  await expect(page.getByLabel('Password')).toHaveCount(0);
});

test('from the token to an aircraft, and the engine says what it still lacks', async ({ page }, info) => {
  test.setTimeout(240_000);
  await page.goto(school.address);
  await page.getByLabel('Its name').fill('Fernhollow Flying Club');
  await choose(page, 'Is it certificated under part 141?', 'No');
  await page.getByRole('radio', { name: /US customary/ }).check();
  await page.getByLabel('Code, name or town').fill('KLSE');
  await page.getByRole('button', { name: /^KLSE/ }).click();
  await expect(page.getByLabel('Time zone')).toHaveValue('America/Chicago');
  await page.getByLabel('Your name').fill('Ada Fernhollow');
  // Another address for each project, should both run on one database.
  await page.getByLabel('E-mail address').fill(`ada.${info.project.name}.${Date.now()}@fernhollow.example`);
  await page.getByLabel('Password').fill('password1234');
  await page.getByRole('button', { name: 'Set up', exact: true }).click();
  // Refused in the browser or by the server; what was typed stays.
  await expect(page.getByText('Look at the time there and tick that it is right.').first()).toBeVisible();
  await page.getByRole('checkbox', { name: /I looked at the time there/ }).check();
  await page.getByRole('button', { name: 'Set up', exact: true }).click();
  // The lists of common passwords are read in for the first one that is judged.
  await expect(page.getByText(/easy to guess|many people use/).first()).toBeVisible({ timeout: 30_000 });
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Set up', exact: true }).click();

  await expect(page).toHaveURL(/\/office$/, { timeout: 60_000 });
  const steps = page.getByRole('listitem').filter({ has: page.getByRole('heading', { level: 3 }) });
  await expect(steps).toHaveCount(8);
  await expect(page.getByText('There is no aircraft yet.')).toBeVisible();

  // The base says in which airspace it lies.
  await page.getByRole('link', { name: 'To the bases' }).click();
  await page.getByRole('link', { name: 'Change KLSE' }).click();
  for (const question of [/91\.215\(b\)/, /91\.225/]) await choose(page, question, 'No');
  await choose(page, /Is IFR from here in controlled airspace/, 'Yes');
  await page.getByRole('button', { name: 'Save the base' }).click();
  await expect(page.getByText('Saved.')).toBeVisible({ timeout: 30_000 });
  await page.goto(new URL('/office', page.url()).href);
  await expect(steps.first().getByText('Done', { exact: true })).toBeVisible();

  // A person calls done what the facts cannot tell, and may take it back.
  await page.getByRole('button', { name: 'Everybody is here' }).click();
  await expect(page.getByText('Called done by Ada Fernhollow.')).toBeVisible();
  await page.getByRole('button', { name: 'Not done after all' }).click();
  await expect(page.getByRole('button', { name: 'Everybody is here' })).toBeVisible();

  // It is left, and comes back by itself until it is done.
  await page.goto(new URL('/', page.url()).href);
  await expect(page).toHaveURL(/\/office$/);
});

test('the token opens nothing more once it was used', async ({ page }) => {
  await page.goto(school.address);
  await expect(page.getByText('This address does not open the set-up page')).toBeVisible();
});
