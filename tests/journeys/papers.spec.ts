/**
 * Records and papers in the running program, on the demo; nothing is written. Sources: 14 CFR 91.417(a) and (c), 43.9(a),
 * 91.213(d)(3); WCAG 2.2 AA by axe; issue 4, "Papers": read back with pdftotext.
 */
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';
import { infoOf, textOf } from '../fixtures/pdf';

/** An aircraft with signed work, and one with a deferred item. */
const WITH_WORK = 'N043QB';
const DEFERRED = 'N042QB';

/** The number of an aircraft, from the ramp's list, which every pilot and mechanic sees. */
async function idOf(page: Page, registration: string): Promise<string> {
  await page.goto('/ramp');
  const href = await page.getByRole('link', { name: registration }).first().getAttribute('href');
  return href?.split('/')[2] ?? '';
}

async function openRecords(page: Page, registration: string): Promise<void> {
  await page.goto(`/bench/aircraft/${await idOf(page, registration)}/records`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`Records of ${registration}`);
}

/** What a link leads to, fetched as the browser would. */
async function paperOf(page: Page, href: string | null): Promise<Buffer> {
  expect(href).not.toBeNull();
  const answer = await page.request.get(href ?? '');
  expect(answer.status()).toBe(200);
  expect(answer.headers()).toMatchObject({ 'content-type': 'application/pdf', 'cache-control': 'no-store' });
  expect(answer.headers()['content-disposition']).toMatch(/^inline; filename="[A-Za-z0-9-]+\.pdf"$/);
  const bytes = await answer.body();
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  expect((await infoOf(bytes)).get('Tagged')).toBe('yes');
  return bytes;
}

test('records by year and part; an entry is printed with its signature (43.9(a)(4))', async ({ page }) => {
  await signIn(page, 'moira');
  await openRecords(page, WITH_WORK);
  await expect(page.getByRole('heading', { name: /Status, 14 CFR 91.417\(a\)\(2\)/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Airworthiness directives' })).toBeVisible();

  const years = page.getByRole('navigation', { name: 'Year signed' }).getByRole('link');
  const records = page.getByRole('list', { name: 'Records, newest first' });
  const entry = records.getByRole('listitem').filter({ hasText: 'Maintenance entry' }).first();
  for (const year of (await years.allTextContents()).toSorted()) {
    await page.getByRole('navigation', { name: 'Year signed' }).getByRole('link', { name: year }).click();
    await expect(page.getByRole('heading', { name: `Signed in ${year}` })).toBeVisible();
    if ((await entry.count()) > 0) break;
  }
  await expect(entry).toContainText('Unchanged since it was signed');
  await expect(entry).toContainText('14 CFR 91.417');
  await expect(page.getByText('Not as it was signed')).toHaveCount(0);
  const title = (await entry.getByRole('heading').textContent()) ?? 'no title';
  const hash = (await entry.locator('code').getAttribute('title')) ?? 'no hash';
  const href = await entry.getByRole('link', { name: /Entry to print/ }).getAttribute('href');
  const text = await textOf(await paperOf(page, href));
  expect(text).toContain(`${WITH_WORK}: maintenance entry`);
  expect(text).toContain(title.replace(/\s+/g, ' ').trim());
  expect(text).toContain('Signed electronically by');
  expect(text).toContain('Certificate number');
  expect(text).toContain(hash.slice(0, 16));

  await page
    .getByRole('navigation', { name: 'Part of the aircraft' })
    .getByRole('link', { name: 'Propeller' })
    .click();
  await expect(page.getByRole('heading', { name: /: propeller$/ })).toBeVisible();
});

test('a sheet of placards and the list to carry aboard, by a pilot', async ({ page }) => {
  await signIn(page, 'pia');
  await openRecords(page, DEFERRED);
  const placards = await page.getByRole('link', { name: /INOPERATIVE placards/ }).getAttribute('href');
  const sheet = await textOf(await paperOf(page, placards));
  expect(sheet).toContain(`${DEFERRED}: INOPERATIVE placards`);
  expect(sheet).toContain('LANDING LIGHT INOPERATIVE');
  expect(sheet).toContain('50 mm');
  const deferred = await page.getByRole('link', { name: /Deferred items/ }).getAttribute('href');
  const list = await textOf(await paperOf(page, deferred));
  expect(list).toContain('Landing light');
  expect(list).toContain('14 CFR 91.213(d)');
  expect(list).toContain('A decision aid, not an approval.');
});

test('who is not signed in gets no paper, and one that is not there is said in plain words', async ({
  page,
}) => {
  const id = '00000000-0000-4000-8000-000000000000';
  const nobody = await page.request.get(`/api/papers/entry?work=${id}`);
  expect(nobody.status()).toBe(401);
  expect(await nobody.text()).toContain('You are not signed in');
  await signIn(page, 'pia');
  for (const path of [`entry?work=${id}`, `list?id=${id}`, `placards?aircraft=${id}`, 'inspection?id=x']) {
    // A connection kept from before signing in may be shut just now: asked anew, it is another one.
    const missing = await page.request.get(`/api/papers/${path}`, { maxRetries: 2 });
    expect(missing.status()).toBe(404);
    expect(missing.headers()['content-type']).toContain('text/plain');
    expect(await missing.text()).toMatch(/^There is no such/);
  }
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the records stand up to axe, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await signIn(page, 'moira');
    await openRecords(page, WITH_WORK);
    const width = page.viewportSize()?.width ?? 0;
    await page.setViewportSize({ width, height: 6000 });
    const { violations } = await axeOn(page)
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
  });
}
