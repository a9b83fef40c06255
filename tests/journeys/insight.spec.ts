/**
 * Insight in the running program on the demo: figures with their definitions, charts with words, rows, files. It writes
 * nothing. Source: issue 5, "Insight"; the figures themselves are tested in tests/rules and tests/services.
 */
import { readFile } from 'node:fs/promises';
import { expect, test, type Download, type Page } from '@playwright/test';
import { parse } from 'csv-parse/sync';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function expectAccessible(page: Page): Promise<void> {
  const size = page.viewportSize();
  await page.setViewportSize({ width: size?.width ?? 390, height: 8000 });
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

/** A part of the page by its heading. */
const figure = (page: Page, title: string) =>
  page.locator('section').filter({ has: page.getByRole('heading', { level: 2, name: title, exact: true }) });

test('each figure says its number, what it counts and on what it stands; chart, table and period', async ({
  page,
}) => {
  await signIn(page, 'tess');
  await page.goto('/desk/insight');
  await expect(page.getByRole('heading', { level: 1, name: 'Insight' })).toBeVisible();
  // Another journey may have added one.
  await expect(page.getByText(/all \d+ aircraft\. As of/)).toBeVisible();
  for (const title of [
    'Availability',
    'Days lost by system',
    'From write-up to answer',
    'From write-up to repair',
    'Repeats',
    'Age of deferrals',
  ]) {
    await expect(figure(page, title)).toContainText('What it counts.');
    await expect(figure(page, title)).toContainText('Stands on');
    await expect(figure(page, title).getByRole('img')).toBeVisible();
  }
  const availability = figure(page, 'Availability');
  await expect(availability).toContainText(/of the time nothing on record grounded all \d+ aircraft/);
  await expect(availability).toContainText('Not seen: weather');
  await expect(availability.locator('desc')).toContainText(/N041QB: \d+(\.\d)? %/);

  await availability.getByText('The same as a table').click();
  const row = availability.getByRole('row', { name: /^N053QB/ });
  await expect(row.getByRole('cell').first()).toHaveText(/^\d\d(\.\d)? %$/);
  // The landing light of the demo is deferred.
  await expect(figure(page, 'Age of deferrals').locator('desc')).toContainText('N042QB');
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0);
  await expectAccessible(page);

  await page.getByRole('link', { name: 'Last 365 days' }).click();
  await expect(page).toHaveURL(/days=365/);
  await expect(page.getByText('365 days at the base')).toBeVisible();
  await page.getByLabel('Aircraft', { exact: true }).selectOption({ label: 'N051QB' });
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByText(/days at the base, N051QB/)).toBeVisible();
  await expect(availability.locator('desc')).not.toContainText('N041QB');
});

async function contentOf(download: Download): Promise<string> {
  return readFile(await download.path(), 'utf8');
}

test('the rows and the chart as files: the table on the page is the file', async ({ page }) => {
  await signIn(page, 'gil');
  // Up to the day before yesterday: what still grounds would gain a minute between the page and its file.
  const day = (ago: number) => new Date(Date.now() - ago * 86_400_000).toISOString().slice(0, 10);
  await page.goto(`/desk/insight?from=${day(366)}&until=${day(2)}`);
  const lost = figure(page, 'Days lost by system');
  const [csv] = await Promise.all([
    page.waitForEvent('download'),
    lost.getByRole('link', { name: 'CSV: Days lost by system' }).click(),
  ]);
  expect(csv.suggestedFilename()).toMatch(/^insight-days-lost-\d{4}-\d\d-\d\d-to-\d{4}-\d\d-\d\d\.csv$/);
  const rows = parse<Record<string, string>>(await contentOf(csv), { bom: true, columns: true });
  await lost.getByText('The same as a table').click();
  const shown = await lost
    .locator('tbody tr')
    .evaluateAll((lines) => lines.map((line) => [...line.children].map((cell) => cell.textContent)));
  expect(shown.length).toBeGreaterThan(5);
  expect(rows.map((row) => [row['chapter'], row['system'], row['lost (minutes)'], row['write-ups']])).toEqual(
    shown.map(([chapter, system, , minutes, writeUps]) => [chapter, system, minutes, writeUps]),
  );

  const [svg] = await Promise.all([
    page.waitForEvent('download'),
    lost.getByRole('link', { name: 'Chart as SVG: Days lost by system' }).click(),
  ]);
  const drawn = await page.evaluate(
    (text) => {
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      return {
        broken: parsed.querySelector('parsererror') !== null,
        texts: [...parsed.querySelectorAll('text')].map((one) => one.textContent),
      };
    },
    await contentOf(svg),
  );
  expect(drawn.broken).toBe(false);
  expect(drawn.texts).toContain('Days lost by system');
  expect(drawn.texts).toContain(shown[0]?.[2]);

  const [definitions] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'All figures and definitions as CSV' }).click(),
  ]);
  expect(await contentOf(definitions)).toContain('Not seen: weather');
});

test('a period that cannot be is refused with what was typed; the mechanic reads it, a pilot does not', async ({
  page,
}) => {
  await signIn(page, 'moira');
  await page.goto('/desk/insight?from=2026-02-20&until=2026-02-10');
  await expect(page.getByRole('alert').filter({ hasText: 'first day is after' })).toBeVisible();
  await expect(page.getByLabel('First day')).toHaveValue('2026-02-20');
  await page.getByRole('link', { name: 'Last 30 days' }).click();
  await expect(figure(page, 'Availability')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Bench' }).first()).toBeVisible();
  await page.context().clearCookies();
  await signIn(page, 'pia');
  await page.goto('/desk/insight');
  await expect(page.getByRole('main')).toContainText('Your role here does not include this.');
  const file = await page.request.get('/api/insight/availability?as=csv');
  expect(file.status()).toBe(403);
});
