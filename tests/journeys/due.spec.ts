/**
 * What falls due, one aircraft at the bench, trends and repeats, in the running program on the demo. It adds a requirement to
 * N043QB and ends it again. Paragraphs are named beside each check; the rest is issue 4 and common practice.
 */
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Axe in a tall window: what a sticky bar covers would be measured against the bar. */
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

const unfold = (page: Page, act: string) => page.locator('summary').filter({ hasText: act }).click();

/** To the bench's page of one aircraft, by the sheet of what falls due. */
async function toAircraft(page: Page, registration: string): Promise<void> {
  await page.goto(`/bench/due?aircraft=${registration}`);
  await page.getByRole('main').getByRole('link', { name: registration, exact: true }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: registration })).toBeVisible();
}

test('the sheet: overdue first with its paragraph, dates by the pace, filters at once and in the address', async ({
  page,
}) => {
  await signIn(page, 'moira');
  await page.goto('/bench/due');
  await expect(page.getByRole('heading', { level: 1, name: 'Falling due' })).toBeVisible();
  const nav = page.getByRole('navigation', { name: 'Bench' });
  await expect(nav.getByRole('link', { name: 'Falling due' })).toHaveAttribute('aria-current', 'page');

  // N053QB's annual ran out at the end of last month: 91.409(a).
  const overdue = page.getByRole('list', { name: 'Overdue', exact: true });
  const annual = overdue
    .getByRole('article')
    .filter({ hasText: 'N053QB' })
    .filter({ hasText: 'Annual inspection' });
  await expect(annual).toContainText('14 CFR 91.409(a)');
  await expect(annual).toContainText('over by');

  // N051QB has 1.4 h of its 100 hours left: 91.409(b) with the ten hours and their price.
  const soon = page.getByRole('list', { name: 'Due in the next 30 days or 25 hours' });
  const hundred = soon.getByRole('article').filter({ hasText: 'N051QB' }).filter({ hasText: '100-hour' });
  await expect(hundred).toContainText('At this pace about');
  await expect(hundred).toContainText('Not more than 10 h over');
  await expect(hundred).toContainText('at the last tenth 90.0 h remain');

  // N042QB's landing light is deferred: it ends with the annual, 91.405(c).
  const later = page.getByRole('list', { name: 'Later' });
  const ends = later
    .getByRole('article')
    .filter({ hasText: 'N042QB' })
    .filter({ hasText: 'Annual inspection' });
  await expect(ends).toContainText('Ends this deferral');
  await expect(ends.getByRole('link', { name: /Landing light/ })).toBeVisible();

  const cards = page.getByRole('main').getByRole('article');
  const all = await cards.count();
  await page.getByRole('radio', { name: '30 days or 25 hours' }).check();
  await expect(later).toBeHidden();
  await expect(page).toHaveURL(/show=soon/);
  await page.getByLabel('Base').selectOption('ZZTM');
  await expect(page).toHaveURL(/base=ZZTM/);
  expect(await cards.count()).toBeLessThan(all);
  for (const text of await cards.allTextContents()) expect(text).toContain('ZZTM');
  await page.reload();
  await expect(page.getByLabel('Base')).toHaveValue('ZZTM');

  await page.goto('/bench/due?show=soon');
  await expectNoSideways(page);
  await expectAccessible(page);
});

test('printed it is the list alone: no filters, no buttons', async ({ page }) => {
  await signIn(page, 'gil');
  await page.goto('/bench/due');
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
  await expect(page.getByRole('search')).toBeHidden();
  await expect(page.getByRole('list', { name: 'Overdue', exact: true })).toBeVisible();
});

test('the dispatcher reads it too, and is led to the desk’s pages; a pilot is told it is not theirs', async ({
  page,
}) => {
  await signIn(page, 'tess');
  await page.goto('/bench/due?aircraft=N053QB');
  const link = page.getByRole('main').getByRole('link', { name: 'N053QB', exact: true }).first();
  await expect(link).toHaveAttribute('href', /^\/desk\/aircraft\//);
  await page.context().clearCookies();
  await signIn(page, 'pia');
  await page.goto('/bench/due');
  await expect(page.getByRole('main')).toContainText('Your role here does not include this.');
});

test('one aircraft at the bench: what recurs is added with its interval, waits for its record, and is ended', async ({
  page,
}, info) => {
  const name = `Seat rail check ${info.project.name} ${Date.now()}`;
  await signIn(page, 'moira');
  await toAircraft(page, 'N043QB');
  await expect(page.getByRole('heading', { name: 'Open write-ups' })).toBeVisible();
  await expect(page.getByText(/h a week over/)).toBeVisible();
  await expectNoSideways(page);
  await expectAccessible(page);

  await unfold(page, 'Add what recurs');
  const form = page.getByRole('form', { name: 'Add what recurs' });
  await form.getByLabel('What it is').selectOption({ label: 'Maker’s interval, oil and the like' });
  await form.getByLabel('Name').fill(name);
  await form.getByLabel('Where it comes from').fill('Invented service letter');
  await form.getByRole('radio', { name: 'No' }).check();
  await form.getByRole('button', { name: 'Add it' }).click();
  // At least one interval is asked for, at its field, and nothing typed is lost.
  await expect(form.getByLabel(/Calendar months/)).toHaveAccessibleDescription(/At least one is needed/);
  await expect(form.getByLabel('Name')).toHaveValue(name);
  await form.getByLabel(/Time in service/).fill('50');
  await form.getByRole('button', { name: 'Add it' }).click();
  await expect(page.getByText(/^Added\. Until its last compliance/)).toBeFocused();

  const line = page.getByRole('list', { name: 'Falling due' }).getByRole('article').filter({ hasText: name });
  await expect(line).toContainText('Recommended, not binding');
  await expect(line).toContainText('Not known: when');
  await expect(line.getByRole('link', { name })).toHaveAttribute('href', /^\/bench\/requirement\//);

  // 91.409(a): what a regulation asks for cannot be ended here.
  await unfold(page, 'End what recurs');
  const end = page.getByRole('form', { name: 'End what recurs' });
  await end.getByLabel('What applies no more').selectOption({ label: 'Annual inspection' });
  await end.getByLabel('Why').fill('Tried by the test.');
  await end.getByLabel('Document that says so').fill('Invented letter 4');
  await end.getByLabel('Your password, to sign').fill('wheelchock-demo');
  await end.getByRole('button', { name: 'Sign and end it' }).click();
  await expect(end.getByRole('alert')).toContainText('The regulation asks for this');
  await end.getByLabel('What applies no more').selectOption({ label: name });
  await end.getByLabel('Why').fill('Superseded, says the test.');
  await end.getByLabel('Document that says so').fill('Invented letter 4');
  await end.getByLabel('Your password, to sign').fill('wheelchock-demo');
  await end.getByRole('button', { name: 'Sign and end it' }).click();
  await expect(page.getByText(/^Ended\. It counts nowhere/)).toBeFocused();
  await expect(line).toHaveCount(0);
});

test('a registration is held against 47.40(a) before it is renewed', async ({ page }) => {
  await signIn(page, 'gil');
  await toAircraft(page, 'N043QB');
  await unfold(page, 'Renew: Registration');
  const form = page.getByRole('form', { name: 'Renew a paper' });
  await form.getByLabel('Day of issue').fill('2026-02-10');
  await expect(form.getByText('By 47.40(a) at most 28 Feb 2033')).toBeVisible();
  await form.getByLabel('Last day').fill('2033-03-01');
  await form.getByLabel('Number or mark').fill('Demo certificate');
  await form.getByRole('radio', { name: 'Yes' }).check();
  await form.getByRole('button', { name: 'Renew the paper' }).click();
  await expect(form.getByLabel('Last day')).toHaveAccessibleDescription(/Later than 47\.40\(a\) allows/);
});

test('trends: oil used an hour lately and before, charts with words, and the same figures as a table', async ({
  page,
}) => {
  await signIn(page, 'abel');
  await toAircraft(page, 'N041QB');
  await page.getByRole('link', { name: 'Trends' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Trends' })).toBeVisible();
  await expect(page.getByText('It uses more lately.')).toBeVisible();
  await expect(page.getByText(/rose .* without oil recorded as added/)).toBeVisible();
  const chart = page.getByRole('img', { name: /^Oil used in an hour over time/ });
  await expect(chart).toBeVisible();
  await expect(chart.locator('desc')).toContainText(/spans from .* newest .* qt\/h/);
  await page.locator('summary').filter({ hasText: 'The same as a table: oil used in an hour' }).click();
  const table = page
    .getByRole('table')
    .filter({ has: page.getByRole('columnheader', { name: 'In an hour' }) });
  await expect(table.getByRole('cell', { name: 'left out: addition not recorded' }).first()).toBeVisible();
  await expect(table.getByRole('cell', { name: /^\d\.\d\d qt\/h$/ }).first()).toBeVisible();
  await expect(page.getByRole('img', { name: /^Oil on the dipstick/ })).toContainText('least 5.0 qt');
  await expectNoSideways(page);
  await expectAccessible(page);
});

test('a defect that came back says what was looked for the last time, and who signed', async ({ page }) => {
  await signIn(page, 'moira');
  await page.goto('/bench?aircraft=N052TM');
  const row = page.getByRole('listitem').filter({ hasText: 'N052TM' }).filter({ hasText: 'Repeat' });
  await row.getByRole('link').first().click();
  const notice = page.getByRole('region', { name: /signed off shortly before/ });
  await expect(notice).toContainText('Could not duplicate');
  await expect(notice).toContainText('tray and plugs moved by hand');
  await expect(notice).toContainText('Signed by Hugo Pellingrove');
  await expect(notice).toContainText(/1[34] days/);
  await expectNoSideways(page);
  await expectAccessible(page);
  // The aircraft's name leads to its page at the bench.
  await page.getByRole('main').getByRole('link', { name: 'N052TM', exact: true }).click();
  await expect(page).toHaveURL(/\/bench\/aircraft\//);
});
