/**
 * The mechanic's queue walked by keys, filtered, and grouped into a visit; flights planned at the desk. Sources: issue 4
 * ("keyboard first", the filters, "group several discrepancies into one visit with the inspection due"), WCAG 2.2 (2.1.4
 * character keys, 2.4.11 focus not obscured, 2.5.8 target size; we hold 44 px), axe; the rest is common practice, no source.
 */
import { expect, test, type Locator, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { writtenUpOn } from '../fixtures/bench-page';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const OURS = 'N053QB';

/** A leak on our aircraft, found by a pilot; its place and words are those by which it is found again. */
const writtenUp = (page: Page, baseURL: string | undefined, words: string) =>
  writtenUpOn(OURS, page, baseURL, { station: 'nose-right', kind: 'leak', place: words, words });

const list = (page: Page) => page.getByRole('list', { name: /Write-ups/ });
const rows = (page: Page) => list(page).getByRole('link');
const boxes = (page: Page) => list(page).getByRole('checkbox');

async function openQueue(page: Page, query = ''): Promise<void> {
  await page.goto(`/bench${query}`);
  await expect(rows(page).first()).toBeVisible();
  // Fields and keys are alive once the page is.
  await expect(async () => {
    await rows(page).first().focus();
    await page.keyboard.press('End');
    await expect(rows(page).last()).toBeFocused({ timeout: 500 });
    await page.keyboard.press('Home');
    await expect(rows(page).first()).toBeFocused({ timeout: 500 });
  }).toPass();
}

/** Wholly in the window, and nothing lies over its middle: WCAG 2.4.11. */
async function expectInSight(target: Locator): Promise<void> {
  expect(
    await target.evaluate((element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      const at = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return element.contains(at);
    }),
  ).toBe(true);
}

test('by keys alone: one stop, walked by arrows, ticked by Space or x, opened by Enter', async ({ page }) => {
  await signIn(page, 'moira');
  await openQueue(page);
  const count = await rows(page).count();
  expect(count).toBeGreaterThan(4);

  await page.keyboard.press('ArrowUp');
  await expect(rows(page).first()).toBeFocused();
  for (let index = 1; index < count; index += 1) {
    await page.keyboard.press('ArrowDown');
    await expect(rows(page).nth(index)).toBeFocused();
    await expectInSight(rows(page).nth(index));
  }
  await page.keyboard.press('ArrowDown');
  await expect(rows(page).last()).toBeFocused();
  for (let index = count - 2; index >= 0; index -= 1) {
    await page.keyboard.press('ArrowUp');
    await expectInSight(rows(page).nth(index));
  }
  // Tab leaves the list, and comes back to where one was.
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Tab');
  await expect(list(page).locator(':focus')).toHaveCount(0);
  await page.keyboard.press('Shift+Tab');
  await expect(rows(page).nth(1)).toBeFocused();

  // Space ticks and does not scroll; x takes it back; a row of another aircraft is not ticked beside it.
  await page.keyboard.press('Home');
  const box = list(page).getByRole('listitem').first().getByRole('checkbox');
  const scrolled = await page.evaluate(() => window.scrollY);
  await page.keyboard.press('Space');
  await expect(box).toBeChecked();
  expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);
  await page.keyboard.press('x');
  await expect(box).not.toBeChecked();
  await page.keyboard.press('x');
  const registration = (await rows(page).first().textContent())?.match(/N0\d\d[A-Z]{2}/)?.[0] ?? '';
  const other = list(page)
    .getByRole('listitem')
    .filter({ hasNotText: registration })
    .filter({ has: page.getByRole('checkbox') })
    .first();
  await other.getByRole('link').focus();
  await page.keyboard.press('x');
  await expect(other.getByRole('checkbox')).not.toBeChecked();
  await expect(page.getByText(`Clear the choice of ${registration} first`)).toBeVisible();

  // Outside the list the keys do nothing: WCAG 2.1.4.
  await page.getByRole('button', { name: 'Clear' }).click();
  await page.getByRole('link', { name: 'Falling due' }).focus();
  await page.keyboard.press('x');
  await expect(list(page).getByRole('checkbox', { checked: true })).toHaveCount(0);

  await rows(page).first().focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/^W-\d{4}/);
});

test('filters: each narrows at once, stands in the address, and all can be taken back', async ({ page }) => {
  await signIn(page, 'moira');
  await openQueue(page);
  const all = await rows(page).count();
  const search = page.getByRole('search', { name: 'Filter the queue' });

  await search.getByLabel('Chapter').selectOption('33');
  await expect(page).toHaveURL(/chapter=33/);
  await expect(rows(page).first()).toContainText(/ 33\d\d /);
  for (const text of await rows(page).allTextContents()) expect(text).toMatch(/ 33\d\d /);
  const lights = await rows(page).count();
  await expect(search.getByRole('status')).toHaveText(`${lights} of ${all} open`);
  await search.getByLabel('Chapter').selectOption('');

  await search.getByLabel('Deferral ends').selectOption({ label: 'In 30 days' });
  await expect(page).toHaveURL(/due=in-30/);
  for (const text of await rows(page).allTextContents()) expect(text).toMatch(/last day|Deferred/i);
  await search.getByLabel('Written up').selectOption({ label: 'Over 30 days' });
  await expect(page).toHaveURL(/age=over-30/);

  // A filter that leaves nothing says so and offers the way back.
  await search.getByLabel('Deferral ends').selectOption({ label: 'Passed' });
  await search.getByLabel('Chapter').selectOption('33');
  await page.getByRole('button', { name: 'Show all' }).click();
  await expect(search.getByRole('status')).toHaveText(`${all} open`);
  await expect(page).toHaveURL(/\/bench$/);

  await openQueue(page, '?aircraft=N042QB&chapter=33&age=never');
  await expect(search.getByLabel('Aircraft')).toHaveValue('N042QB');
  await expect(search.getByLabel('Written up')).toHaveValue('');
  for (const text of await rows(page).allTextContents()) expect(text).toContain('N042QB');
});

test('two write-ups and what falls due become a visit; it is changed and closed', async ({
  page,
  baseURL,
}) => {
  const run = randomUUID().slice(0, 8);
  await writtenUp(page, baseURL, `Left cowl, drops (${run})`);
  await writtenUp(page, baseURL, `Right brake, drops (${run})`);
  await signIn(page, 'moira');
  await openQueue(page, `?aircraft=${OURS}&age=today`);

  // A tick moves nothing on the page.
  const before = await rows(page).first().boundingBox();
  const free = boxes(page);
  const first = free.first();
  const size = await first.locator('xpath=ancestor::label').boundingBox();
  expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(44);
  await first.check();
  await free.nth(1).check();
  await expect(page.getByText(`2 of ${OURS} ticked for a visit`)).toBeVisible();
  expect(await rows(page).first().boundingBox()).toEqual(before);

  await page.getByRole('link', { name: 'Group into a visit' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`A visit for ${OURS}`);
  const form = page.getByRole('form', { name: 'Open a visit' });
  await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(2);
  // What falls due is offered and not ticked: its annual is over.
  const due = form.getByRole('group', { name: /^Due within 30 days or 25 hours/ });
  await expect(due.getByRole('checkbox', { name: /annual/i })).not.toBeChecked();
  await form.getByRole('button', { name: 'Open the visit' }).click();
  await expect(form.getByText('A name for the visit is needed.').first()).toBeVisible();
  await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(2);
  await form.getByLabel('What shall it be called?').fill(`Leaks (${run})`);
  await due.getByRole('checkbox', { name: /annual/i }).check();
  await form.getByRole('button', { name: 'Open the visit' }).click();

  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`${OURS}: Leaks (${run})`);
  const todo = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Still to do' }) });
  await expect(todo.getByRole('listitem')).toHaveCount(3);
  await expect(todo.getByRole('link', { name: /inspection/i }).first()).toBeVisible();
  await expect(page.getByText('Nothing is done yet.')).toBeVisible();

  await page.locator('summary').filter({ hasText: 'Change the visit' }).click();
  const change = page.getByRole('form', { name: 'Change the visit' });
  await change.getByRole('group', { name: 'Take out of the visit' }).getByRole('checkbox').first().check();
  await change.getByLabel('Planned for').fill('2030-05-06');
  await change.getByRole('button', { name: 'Save the visit' }).click();
  await expect(page.getByText('The visit is changed.')).toBeFocused();
  await expect(todo.getByRole('listitem')).toHaveCount(2);
  await expect(page.getByText('6 May 2030').first()).toBeVisible();

  // In the queue it is named, its write-up cannot be ticked a second time, and the visit stands in the list of visits.
  await openQueue(page, `?aircraft=${OURS}&age=today`);
  await expect(page.getByRole('link', { name: new RegExp(`Leaks \\(${run}\\).*6 May 2030`) })).toBeVisible();
  const held = list(page)
    .getByRole('listitem')
    .filter({ hasText: `In the visit “Leaks (${run})”` });
  await expect(held).toHaveCount(1);
  await expect(held.getByRole('checkbox')).toHaveCount(0);
  await page.getByRole('link', { name: new RegExp(`Leaks \\(${run}\\).*6 May 2030`) }).click();

  await page.locator('summary').filter({ hasText: 'Close the visit' }).click();
  const close = page.getByRole('form', { name: 'Close the visit' });
  await expect(close).toContainText('Not done, and open as before once the visit is closed:');
  await close.getByRole('button', { name: 'Close the visit' }).click();
  await expect(page.getByText('Closed with 2 of 2 not done.')).toBeVisible();
  await expect(page.locator('summary').filter({ hasText: 'Close the visit' })).toHaveCount(0);
});

/** A wall-clock time, some days ahead, as a field takes it. */
const ahead = (days: number, clock: string) =>
  `${new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)}T${clock}`;

test('a flight planned at the desk is what the queue goes by, until it is cancelled', async ({
  page,
  baseURL,
}) => {
  const run = randomUUID().slice(0, 8);
  await writtenUp(page, baseURL, `Nose strut, drops (${run})`);
  await signIn(page, 'tess');
  await page.goto('/desk');
  await page.getByRole('link', { name: 'Planned flights' }).click();
  await expect(page.getByText('A plan releases nothing.')).toBeVisible();
  const form = page.getByRole('form', { name: 'Plan a flight' });
  await form.getByLabel('Aircraft').selectOption({ label: /* its type beside it */ await labelOf(form) });
  await form.getByLabel('Departs').fill(ahead(1, '10:00'));
  await form.getByLabel('Is back').fill(ahead(1, '09:00'));
  await form.getByLabel(/^What for/).fill(`For the queue (${run})`);
  await form.getByRole('button', { name: 'Plan the flight' }).click();
  await expect(form.getByText('The arrival must be later than the departure.').first()).toBeVisible();
  await expect(form.getByLabel(/^What for/)).toHaveValue(`For the queue (${run})`);
  await form.getByLabel('Is back').fill(ahead(1, '11:00'));
  await form.getByRole('button', { name: 'Plan the flight' }).click();
  await expect(page.getByText(/^Planned\. It stands in the list below/)).toBeVisible();
  const planned = page.getByRole('listitem').filter({ hasText: run });
  await expect(planned).toContainText('No pilot named yet');

  const bench = await pageOf(page.context().browser()!, 'moira', { baseURL });
  await openQueue(bench, `?aircraft=${OURS}`);
  await expect(rows(bench).first()).toContainText(/next flight (today|tomorrow|\w{3} \d+ \w{3}) 10:00/);
  await bench.context().close();

  await planned.getByRole('button', { name: /^Cancel N053QB/ }).click();
  await planned.getByRole('button', { name: 'Keep it' }).click();
  await planned.getByRole('button', { name: /^Cancel N053QB/ }).click();
  await planned.getByRole('button', { name: 'Yes, cancel it' }).click();
  await expect(page.getByText(/^Cancelled: N053QB/)).toBeVisible();
  await expect(planned).toHaveCount(0);
});

async function labelOf(form: Locator): Promise<string> {
  const labels = await form.getByLabel('Aircraft').getByRole('option').allTextContents();
  return labels.find((label) => label.startsWith(OURS)) ?? '';
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`queue, visit and plans stand up to axe and fit, ${colorScheme}`, async ({ page, baseURL }) => {
    const run = randomUUID().slice(0, 8);
    await writtenUp(page, baseURL, `Tail, drops (${run})`);
    await page.emulateMedia({ colorScheme });
    // What lies under a bar that sticks would be measured as covered; on a tall window nothing does.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 390, height: 6000 });
    await signIn(page, 'gil');
    await page.goto('/desk/plans');
    await expectSound(page);
    await openQueue(page, `?aircraft=${OURS}&age=today`);
    await boxes(page).first().check();
    await expectSound(page);
    await page.getByRole('link', { name: 'Group into a visit' }).click();
    await page.getByRole('button', { name: 'Open the visit' }).click();
    await expect(page.getByText('A name for the visit is needed.').first()).toBeVisible();
    await expectSound(page);
    await page.getByLabel('What shall it be called?').fill(`Axe (${run})`);
    await page.getByRole('button', { name: 'Open the visit' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText(`Axe (${run})`);
    await page.locator('summary').filter({ hasText: 'Change the visit' }).click();
    await expectSound(page);
    await page.locator('summary').filter({ hasText: 'Close the visit' }).click();
    await page.getByRole('button', { name: 'Close the visit' }).click();
    await expect(page.getByText('Closed with 1 of 1 not done.')).toBeVisible();
    await expectSound(page);
  });
}

/** WCAG 2.2 AA, as far as axe can see it, and no sideways scrolling. */
async function expectSound(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const { violations } = await axeOn(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
  const width = page.viewportSize()?.width ?? 0;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
}
