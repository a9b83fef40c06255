/**
 * One aircraft over the day, in the running program on the demo. It reads only. Paragraphs are named beside each check; the
 * rest is issue 5 and common practice.
 */
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function expectAccessible(page: Page): Promise<void> {
  const size = page.viewportSize();
  await page.setViewportSize({ width: size?.width ?? 390, height: 4000 });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await axeOn(page).withTags(TAGS).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual(
      [],
    );
  }
  await page.emulateMedia({ colorScheme: 'light' });
  if (size) await page.setViewportSize(size);
}

/** Nothing is wider than the window: WCAG 1.4.10. */
const expectNoSideways = async (page: Page) =>
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0);

/** From the board to the aircraft, and on to its day. */
async function toDay(page: Page, registration: string): Promise<void> {
  await page.goto('/desk');
  await page.getByRole('main').getByRole('link', { name: registration }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: registration })).toBeVisible();
  await page.getByRole('link', { name: 'Over the day' }).click();
  await expect(page.getByRole('heading', { level: 1, name: `${registration} over the day` })).toBeVisible();
}

const borders = (page: Page) => page.locator('#borders').getByRole('list').first();
const border = (page: Page, what: string) =>
  borders(page)
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: what }) });

test('a deferred landing light: no go for hire as night begins, with the paragraph on the border', async ({
  page,
}) => {
  await signIn(page, 'tess');
  await toDay(page, 'N042QB');
  // 1.1: night begins as evening civil twilight ends; 91.205(c)(4): landing light at night, for hire.
  const dusk = border(page, 'Night begins: evening civil twilight ends');
  await expect(dusk).toContainText('VFR, for hire; IFR, for hire');
  await expect(dusk).toContainText('No go');
  await expect(dusk).toContainText('14 CFR 91.205(c)(4)');
  await expect(dusk).not.toContainText('private');
  // Sunset comes before it and changes nothing on this aircraft: 91.209 asks for position lights only.
  await expect(border(page, 'Sunset')).toContainText('The answers stay as they are.');
  await expect(page.getByRole('img', { name: /^Timeline of N042QB/ })).toBeVisible();
  await expect(page.getByRole('complementary', { name: 'Caution' })).toContainText('91.7(b)');
  await expectNoSideways(page);
  await expectAccessible(page);
});

test('day after, day before, today, and a day chosen stand in the address; a day that is over says by what it is judged', async ({
  page,
}) => {
  await signIn(page, 'tess');
  await toDay(page, 'N041QB');
  const heading = page.getByRole('main').getByRole('heading', { level: 2 }).first();
  await expect(heading).toContainText('(today)');
  await page.getByRole('link', { name: 'Day after' }).click();
  await expect(page).toHaveURL(/on=\d{4}-\d\d-\d\d$/);
  await expect(heading).not.toContainText('(today)');
  await page.getByRole('link', { name: 'Today' }).click();
  await expect(heading).toContainText('(today)');
  await page.getByRole('link', { name: 'Day before' }).click();
  await expect(page.getByText('This day is over.')).toBeVisible();
  await expect(page.getByText('It is judged with the facts of now')).toBeVisible();

  // The demo's base keeps US time: the first Sunday of November has 25 hours, so the zone stands beside each time.
  const year = new Date().getUTCFullYear();
  const first = new Date(Date.UTC(year, 10, 1));
  const sunday = new Date(Date.UTC(year, 10, 1 + ((7 - first.getUTCDay()) % 7))).toISOString().slice(0, 10);
  await page.getByLabel('Another day').fill(sunday);
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page).toHaveURL(new RegExp(`on=${sunday}`));
  await expect(border(page, 'Sunset')).toContainText(/\d\d:\d\d CST/);
});

test('an unknown day is refused in words, with the way back', async ({ page }) => {
  await signIn(page, 'tess');
  await toDay(page, 'N041QB');
  await page.goto(`${new URL(page.url()).pathname}?on=2026-02-30`);
  await expect(page.getByRole('main')).toContainText('A date like 2026-11-25 is needed.');
  await expect(page.getByRole('link', { name: 'To the board' })).toBeVisible();
});
