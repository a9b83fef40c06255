/**
 * A manager makes the school stricter than the law: looks first at what a rule would change, sets one for one aircraft, and ends
 * it. Sources: issue 6 ("house rules ... shown apart from law with their own author and date"); WCAG 2.2 AA for axe; the rest is
 * common practice, no source. N053QB is in the hangar, so that its answer stays no go for everybody else; the rule is ended here.
 */
import { randomUUID } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import { aircraftId } from '../../seed/load/ids';
import { QUILLBACK } from '../../seed/operators';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const setRule = (page: Page) => page.getByRole('form', { name: 'Rule of the house' });

async function onlyFor(page: Page, registration: string): Promise<void> {
  const form = setRule(page);
  await form.getByRole('radio', { name: 'Only some aircraft or types' }).check();
  await form.getByRole('checkbox', { name: registration, exact: true }).check();
}

const ofPage = async (page: Page) => {
  const { violations } = await axeOn(page).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
};

test('what a rule would change is seen before it is saved, and nothing is written by looking', async ({
  page,
}) => {
  await signIn(page, 'gil');
  await page.goto('/office/rules/set');
  await page.getByRole('link', { name: 'No night flight with a deferral' }).click();
  await expect(
    page.getByRole('heading', { level: 1, name: 'No night flight with a deferral' }),
  ).toBeVisible();
  // Its landing light is deferred: by the law a limit at night for a private flight.
  await onlyFor(page, 'N042QB');
  await page.getByRole('button', { name: 'See what it would change' }).click();
  const preview = page.getByRole('status').filter({ hasText: 'What it would change right now' });
  await expect(preview).toContainText('1 of 9 aircraft:');
  const night = preview.getByRole('listitem').filter({ hasText: 'Night VFR, private' }).last();
  await expect(night).toContainText(/Go with limits\s*to\s*No go/);
  await expect(night).toContainText('House rule: No night flight with a deferral');
  expect(await ofPage(page)).toEqual([]);
  // Without a reason nothing is set, and what was chosen stays.
  await page.getByRole('button', { name: 'Set the rule' }).click();
  await expect(setRule(page).getByText('Say why. Whoever meets the rule reads it.').first()).toBeVisible();
  await expect(setRule(page).getByRole('checkbox', { name: 'N042QB', exact: true })).toBeChecked();
  await page.goto('/office/rules');
  await expect(page.getByRole('heading', { level: 1, name: 'Rules of the house' })).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'Only for N042QB.' })).toHaveCount(0);
});

test('a rule of the house stands apart from the law, with its author and reason, until it is ended', async ({
  page,
  browser,
}) => {
  const limit = `Crosswind at most 8 knots ${randomUUID().slice(0, 8)}`;
  await signIn(page, 'gil');
  await page.goto('/office/rules/set?kind=limit-in-own-words');
  await setRule(page).getByLabel('The limit').fill(limit);
  await setRule(page).getByRole('checkbox', { name: 'Private, rental' }).check();
  await onlyFor(page, 'N053QB');
  await setRule(page).getByLabel('Why').fill('Nosewheel shimmies.');
  await page.getByRole('button', { name: 'Set the rule' }).click();
  await expect(page.getByText('The rule is set.')).toBeVisible();
  const rule = page.getByRole('main').getByRole('listitem').filter({ hasText: limit }).first();
  await expect(rule).toContainText('Only for N053QB.');
  await expect(rule).toContainText('Version 1, set by Gil');

  const desk = await pageOf(browser, 'tess');
  await desk.goto(`/desk/aircraft/${aircraftId(QUILLBACK.key, 'N053QB')}?kind=day-vfr-private`);
  const line = desk.locator('#reasons').getByRole('listitem').filter({ hasText: limit });
  await expect(line).toContainText(/Rule of the house, by Gil/);
  await expect(line).toContainText('Not law. Why: Nosewheel shimmies.');
  await expect(line).not.toContainText('14 CFR');
  // The law's own lines stand there as before: its annual ran out.
  await expect(desk.locator('#reasons')).toContainText('14 CFR 91.409(a)');
  expect(await ofPage(desk)).toEqual([]);
  await line.getByRole('link', { name: /Rule of the house/ }).click();
  await expect(desk.getByRole('heading', { level: 1, name: 'Rules of the house' })).toBeVisible();
  await expect(desk.getByRole('main')).toContainText(limit);
  await desk.context().close();

  await rule.getByRole('link', { name: 'Change or end' }).click();
  const end = page.getByRole('form', { name: 'End the rule' });
  await end.getByLabel('Why it ends').fill('Repaired.');
  await end.getByRole('button', { name: 'End the rule' }).click();
  await expect(page).toHaveURL(/\/office\/rules$/);
  await expect(page.getByRole('main').getByRole('listitem').filter({ hasText: limit }).first()).toBeHidden();
  const content = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(content[0]).toBeLessThanOrEqual(content[1] ?? 0);
});

test('metric units: a value read in metric is "about", with the stored one beside it', async ({ page }) => {
  await signIn(page, 'hugo');
  await page.goto('/account');
  const form = page.getByRole('form', { name: 'Language and units' });
  const choose = async (units: string) => {
    await form.getByLabel('Units').selectOption(units);
    await Promise.all([page.waitForEvent('load'), form.getByRole('button', { name: 'Keep these' }).click()]);
    await expect(form.getByLabel('Units')).toHaveValue(units);
  };
  await choose('metric');
  try {
    await page.goto('/bench/due?aircraft=N041QB');
    await page.getByRole('main').getByRole('link', { name: 'N041QB', exact: true }).first().click();
    await page.getByRole('link', { name: 'Trends' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Trends' })).toBeVisible();
    const oil = page
      .getByRole('region')
      .or(page.locator('section'))
      .filter({ hasText: 'Oil on the dipstick' });
    await expect(oil.last()).toContainText(/Newest about \d+\.\d L \(\d+\.\d qt\)/);
    // The limit keeps its own unit first: that is what is judged.
    await expect(oil.last()).toContainText(/Limit: least 5\.0 qt.*\(about 4\.7 L/);
  } finally {
    await page.goto('/account');
    await choose('');
  }
});
