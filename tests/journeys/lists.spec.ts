/**
 * A manager fits the walkaround list of a type; others read it. Sources: issue 3 ("an editor for managers, versioned"),
 * WCAG 2.2 AA for axe; the rest is common practice, no source. Only the Foxglove list is changed, whose one aircraft no other
 * journey walks round.
 */
import { randomUUID } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const TYPE = 'Foxglove 200';

/** Words of this run only: phone and desktop change the same list one after the other. */
const ofThisRun = (words: string): string => `${words} ${randomUUID().slice(0, 8)}`;

async function openList(page: Page): Promise<void> {
  await page.goto('/desk/walkarounds');
  await page.getByRole('link', { name: new RegExp(TYPE) }).click();
  await expect(page.getByRole('heading', { level: 1, name: TYPE })).toBeVisible();
}

const versionNow = async (page: Page): Promise<number> =>
  Number(
    /version (\d+)/.exec(
      (await page.getByRole('button', { name: /^Save as version/ }).textContent()) ?? '',
    )?.[1],
  ) - 1;

test('a new version is made, what was typed wrongly is told and kept, and the earlier one stays readable', async ({
  page,
}) => {
  const battery = ofThisRun('Battery before start');
  const flat = ofThisRun('The battery was found flat twice this autumn.');
  await signIn(page, 'gil');
  await openList(page);
  const before = await versionNow(page);
  expect(before).toBeGreaterThanOrEqual(1);
  const first = page.getByRole('button', { name: /^1\D/ });
  await first.click();
  await expect(first).toHaveAttribute('aria-expanded', 'true');

  await page.getByRole('button', { name: 'Add a number' }).first().click();
  await page.keyboard.type(battery);
  await expect(page.locator(':focus')).toHaveValue(battery);
  const item = page.locator('ol ol').first().locator('> li').last();
  await item.getByLabel('What is measured').selectOption({ label: 'Battery, no load' });
  await item.getByLabel(/^Least/).fill('twelve');
  await page.getByRole('button', { name: /^Save as version/ }).click();
  // The limit is no number and has no source, nothing says what it is written up as, and why is missing.
  await expect(item.getByText('A limit needs its source: document and section.')).toBeVisible();
  await expect(item.getByText('Say what a value outside the limit is written up as.')).toBeVisible();
  await expect(page.getByText('Say why this version is made.').first()).toBeVisible();
  await expect(item.getByLabel(/^Least/)).toHaveValue('twelve');
  await expect(item.getByLabel('What', { exact: true })).toHaveValue(battery);

  await item.getByLabel(/^Least/).fill('12.2');
  await item.getByLabel(/^Source of the limit/).fill('Maintenance manual, section 24, invented for the test');
  await item.getByLabel(/^Outside the limit/).selectOption({ index: 1 });
  await page.getByLabel('Why this version?').fill(flat);
  await page.getByRole('button', { name: /^Save as version/ }).click();
  await expect(page.getByText(`Version ${before + 1}, current`)).toBeVisible();
  await expect(page.getByText(flat)).toBeVisible();

  await page.getByRole('link', { name: `Version ${before}`, exact: true }).click();
  await expect(page.getByRole('heading', { name: `Version ${before}` })).toBeVisible();
  await expect(page.getByText(battery)).toHaveCount(0);
});

test('stations are moved by keyboard, and two managers cannot overwrite each other', async ({
  page,
  browser,
}) => {
  await signIn(page, 'gil');
  await openList(page);
  const second = await page.getByRole('button', { name: /^2\D/ }).textContent();
  const name =
    second
      ?.replace(/^2/, '')
      .replace(/\d+ items?$/, '')
      .trim() ?? '';
  const order = ofThisRun('Walked in this order.');
  const other = await pageOf(browser, 'gil');
  await openList(other);

  await page.getByRole('button', { name: `${name}: up` }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: new RegExp(`^1\\s*${name}`) })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: `${name} is now number 1` })).toHaveCount(1);
  await page.getByLabel('Why this version?').fill(order);
  await page.getByRole('button', { name: /^Save as version/ }).click();
  await expect(page.getByText(order)).toBeVisible();

  await other.getByLabel('Why this version?').fill('Mine, begun before.');
  await other.getByRole('button', { name: /^Save as version/ }).click();
  await expect(other.getByText(/was written since you began/)).toBeVisible();
  await expect(other.getByLabel('Why this version?')).toHaveValue('Mine, begun before.');
  await other.context().close();
});

test('a dispatcher reads the list and has nothing to save', async ({ page }) => {
  await signIn(page, 'tess');
  await openList(page);
  await expect(
    page
      .getByText(/^Limit: /)
      .first()
      .or(page.getByText(/Limit: least/).first()),
  ).toBeVisible();
  await expect(page.getByRole('button', { name: /^Save/ })).toHaveCount(0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the editor is free of axe findings and fits, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    // What lies under a bar that stays at the edge would be measured as small; on a tall window nothing does.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 390, height: 6000 });
    await signIn(page, 'gil');
    for (const open of [() => page.goto('/desk/walkarounds'), () => openList(page)]) {
      await open();
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      const unfold = page.getByRole('button', { name: /^3\D/ });
      if (await unfold.count()) await unfold.click();
      const { violations } = await axeOn(page)
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
      const width = page.viewportSize()?.width ?? 0;
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    }
  });
}
