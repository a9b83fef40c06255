/**
 * A manager opens the house to other programs: a key that works until it is ended, a calendar, files, a webhook. Sources:
 * issue 5 ("feeds out"); WCAG 2.2 AA for axe; the rest is common practice, no source. What is made here is ended here.
 */
import { randomUUID } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const ofThisRun = (words: string): string => `${words} ${randomUUID().slice(0, 8)}`;

async function openFeeds(page: Page): Promise<void> {
  await page.goto('/desk/feeds');
  await expect(page.getByRole('heading', { level: 1, name: 'Feeds' })).toBeVisible();
}

async function issue(page: Page, name: string, scope: RegExp): Promise<void> {
  const form = page.getByRole('form', { name: 'Issue a key' });
  if (!(await form.isVisible())) await page.getByText('Issue a key', { exact: true }).click();
  await form.getByLabel('What it is for').fill(name);
  await form.getByRole('checkbox', { name: scope }).check();
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Issue the key' }).click();
}

async function endKey(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: `End this key: ${name}` }).click();
  await page.getByRole('button', { name: 'Yes, end it' }).click();
  await expectEnded(page, name);
}

const expectEnded = (page: Page, name: string) =>
  expect(
    page.getByRole('listitem').filter({ hasText: name }).getByText('Ended', { exact: true }),
  ).toBeVisible();

test('a key is shown once, opens what was chosen and nothing else, and is ended', async ({
  page,
  request,
}) => {
  const name = ofThisRun('Screen in the hangar');
  await signIn(page, 'gil');
  await openFeeds(page);
  await issue(page, name, /Board, aircraft/);
  const field = page.getByLabel('The key', { exact: true });
  await expect(field).toBeFocused();
  const headers = { authorization: `Bearer ${await field.inputValue()}`, cookie: '' };

  const board = await request.get('/api/v1/fleet', { headers });
  expect(board.status()).toBe(200);
  expect(JSON.stringify(await board.json())).toContain('N041QB');
  expect((await request.get('/api/v1/due', { headers })).status()).toBe(403);
  // Signed in, but without a key: the interface reads no cookie.
  expect((await page.request.get('/api/v1/fleet')).status()).toBe(401);

  await page.reload();
  await expect(page.getByText(name, { exact: true })).toBeVisible();
  await expect(page.getByLabel('The key', { exact: true })).toHaveCount(0);
  await endKey(page, name);
  expect((await request.get('/api/v1/fleet', { headers })).status()).toBe(401);
});

test('the calendar opens at its address, and files of everything come down', async ({ page, request }) => {
  const name = ofThisRun('Calendar');
  await signIn(page, 'gil');
  await openFeeds(page);
  await issue(page, name, /calendar of what falls due/);
  const address = new URL(await page.getByLabel('Address for your calendar program').inputValue());
  const calendar = await request.get(address.pathname);
  expect(calendar.headers()['content-type']).toBe('text/calendar; charset=utf-8');
  expect(await calendar.text()).toMatch(
    /^BEGIN:VCALENDAR\r\n[\s\S]*SUMMARY:N0\d+\w+: [\s\S]*END:VCALENDAR\r\n$/,
  );
  await page.reload();
  await endKey(page, name);
  expect((await request.get(address.pathname)).status()).toBe(404);

  await page.getByText('Table by table').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'CSV: Aircraft with their meters' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('aircraft.csv');
  const everything = await page.request.get('/api/export/everything.json');
  expect(Object.keys(((await everything.json()) as { sets: object }).sets)).toContain('audit-rows');
  expect((await request.get('/api/export/aircraft.csv')).status()).toBe(401);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`a webhook is added where it may be, and the page is free of axe findings, ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 390, height: 8000 });
    const name = ofThisRun('Accounts');
    await signIn(page, 'gil');
    await openFeeds(page);
    for (const unfold of ['Issue a key', 'Add a webhook', 'Table by table']) {
      await page.getByText(unfold, { exact: true }).click();
    }
    const form = page.getByRole('form', { name: 'Add a webhook' });
    await form.getByLabel('Who is told').fill(name);
    await form.getByLabel('Address').fill('https://169.254.169.254/');
    await form.getByRole('checkbox', { name: /flights.imported/ }).check();
    await form.getByRole('button', { name: 'Add the webhook' }).click();
    await expect(form.getByText(/inside a network/).first()).toBeVisible();
    await expect(form.getByLabel('Who is told')).toHaveValue(name);
    await form.getByLabel('Address').fill('https://hooks.invented.example/in');
    await form.getByRole('button', { name: 'Add the webhook' }).click();
    await expect(page.getByLabel('Its signing secret')).toHaveValue(/^whsec_/);

    const { violations } = await axeOn(page)
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
    const width = page.viewportSize()?.width ?? 0;
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);

    await page.getByRole('button', { name: `End this webhook: ${name}` }).click();
    await page.getByRole('button', { name: 'Yes, end it' }).click();
    await expectEnded(page, name);
  });
}
