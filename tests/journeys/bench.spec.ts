/**
 * The mechanic's side in the running program, on the demo. Write-ups are made here for each run, on the aircraft that
 * stands in the hangar for its annual, so that no other journey's answer depends on them. Paragraphs are named beside each
 * check; the rest is common practice, no source.
 */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/seed/people';
import { writtenUpOn } from '../fixtures/bench-page';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const IN_HANGAR = 'N053QB';

/** A pilot's finding on the aircraft in the hangar; gives the path of its write-up on the bench. */
const writtenUp = (page: Page, baseURL: string | undefined, finding: object) =>
  writtenUpOn(IN_HANGAR, page, baseURL, {
    place: 'Where the bench test looks',
    words: 'Written up by the bench test.',
    ...finding,
  });

const LEAK = { station: 'nose-right', kind: 'leak', words: 'A few drops of something red under the cowl.' };
const NICK = {
  findingKey: 'propeller-nick',
  place: 'Blade 2, leading edge',
  words: 'Small nick, felt with the nail.',
  measurements: { 'propeller-nick-depth': 12, 'propeller-nick-width': 20 },
};

const unfold = (page: Page, act: string) => page.locator('summary').filter({ hasText: act }).click();

async function fillJudgement(page: Page, password: string): Promise<void> {
  await unfold(page, 'Judge it');
  await page.getByLabel('What is it?').selectOption({ label: 'Leak' });
  await page.getByLabel('Find the system').fill('brake');
  await page.getByRole('radio', { name: /Brake/ }).first().check();
  await page.getByRole('radio', { name: /^Grounding/ }).check();
  await page.getByLabel('Your reason').fill('Brake fluid, from the hose on the nose leg.');
  await page.getByLabel('Your password').fill(password);
  await page.getByRole('button', { name: 'Sign the judgement' }).click();
}

async function fillFinding(page: Page): Promise<void> {
  await unfold(page, 'Find it within limits');
  // The demo's aircraft has stored limits for a nick, so it asks for the numbers.
  await page.getByLabel('Depth of the nick').fill('0.012');
  await page.getByLabel('Width of the nick').fill('0.020');
  await page.getByLabel('Your finding').fill('No crack under the loupe.');
  await page.getByLabel('Your password').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign the finding' }).click();
}

/** What was refused. Next's own announcer of routes is an alert as well, outside of main. */
const alertOf = (page: Page) => page.getByRole('main').getByRole('alert');

const history = (page: Page) =>
  page.locator('section').filter({ has: page.getByRole('heading', { name: 'History' }) });

test('the queue: what grounds first; filters at once; rows by keyboard', async ({ page }) => {
  await signIn(page, 'moira');
  await page.goto('/bench');
  const rows = page.getByRole('list', { name: /Write-ups/ }).getByRole('link');
  await expect(rows.first()).toBeVisible();
  // What each does to flying stands in the row: issue 4. The order inside a group: tests/rules/queue-order.test.ts.
  const seen = (await rows.allTextContents()).map((text) =>
    text.includes('Limits what may be flown')
      ? 1
      : /[Ll]ast day/.test(text)
        ? 2
        : text.includes('Stops no flight while')
          ? 3
          : text.includes('Stops no flight')
            ? 4
            : 0,
  );
  expect(seen.length).toBeGreaterThan(4);
  expect(new Set(seen).size).toBeGreaterThan(2);
  expect(seen).toEqual(seen.toSorted());

  await rows.first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(rows.nth(1)).toBeFocused();

  await page.getByLabel('Base').selectOption('ZZTM');
  await expect(page).toHaveURL(/base=ZZTM/);
  const atLake = await rows.allTextContents();
  expect(atLake.length).toBeGreaterThan(0);
  expect(atLake.length).toBeLessThan(seen.length);
  expect(atLake.every((text) => text.includes('ZZTM'))).toBe(true);
  await expect(page.getByText(`${atLake.length} of ${seen.length} open`)).toBeVisible();

  // Going into a row and back keeps the filter.
  await rows.first().click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/^W-\d{4}/);
  await page.goBack();
  await expect(page.getByLabel('Base')).toHaveValue('ZZTM');
  await expect(rows).toHaveCount(atLake.length);
});

test('a wrong password keeps everything typed and signs nothing; the right one judges', async ({
  page,
  baseURL,
}) => {
  const path = await writtenUp(page, baseURL, LEAK);
  await signIn(page, 'moira');
  await page.goto(path);
  await expect(page.getByText('Undecided: grounds')).toBeVisible();
  await fillJudgement(page, 'not my password');
  await expect(alertOf(page)).toContainText('The password is not right. Nothing was signed.');
  await expect(page.getByLabel('What is it?')).toHaveValue('leak');
  await expect(page.getByLabel('Find the system')).toHaveValue('brake');
  await expect(page.getByRole('radio', { name: /Brake/ }).first()).toBeChecked();
  await expect(page.getByRole('radio', { name: /^Grounding/ })).toBeChecked();
  await expect(page.getByLabel('Your reason')).toHaveValue('Brake fluid, from the hose on the nose leg.');
  await expect(history(page)).not.toContainText('Judged by');

  await page.getByLabel('Your password').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign the judgement' }).click();
  await expect(page.getByText('Judged and signed.')).toBeFocused();
  await expect(page.getByText('Undecided: grounds')).toHaveCount(0);
  await expect(history(page)).toContainText('Judged by Moira Stobwell');
  await expect(history(page)).toContainText('Signed under mechanic certificate DEMO-M-2102');
});

test('within limits: refused without the powerplant rating, taken with it', async ({ page, baseURL }) => {
  const path = await writtenUp(page, baseURL, NICK);
  await signIn(page, 'abel');
  await page.goto(path);
  // Damage is not inoperative equipment: 91.213(a).
  await expect(page.getByText(/^Not equipment that does not work: it is repaired/)).toBeVisible();
  await fillFinding(page);
  // A propeller is powerplant work: 65.87(a).
  await expect(alertOf(page)).toContainText('Your certificates do not allow this signature.');
  await expect(alertOf(page)).toContainText('65.87(a)');
  await expect(history(page)).not.toContainText('Found within limits');

  const able = await pageOf(page.context().browser()!, 'moira', { baseURL });
  await able.goto(path);
  await fillFinding(able);
  await expect(able.getByText(/^Found within limits and signed/)).toBeVisible();
  await expect(able.getByText('Watch', { exact: true })).toBeVisible();
  await expect(history(able)).toContainText(
    'Measured Depth of the nick: 0.012 in; Width of the nick: 0.020 in; limit Depth of the nick: most 0.040 in',
  );
  await able.context().close();
});

test('an entry without the parts of 43.9(a) is neither written nor signed', async ({ page, baseURL }) => {
  const path = await writtenUp(page, baseURL, NICK);
  await signIn(page, 'moira');
  await page.goto(path);
  await unfold(page, 'Start work');
  await page.getByLabel('What is to be done').fill('Dress the nick');
  await page.getByRole('radio', { name: /^Minor repair/ }).check();
  await page
    .getByRole('radiogroup', { name: /only taken out and put in/ })
    .getByLabel('No')
    .check();
  await page.getByRole('button', { name: 'Start the work' }).click();
  await expect(page.getByText(/^Work is begun/)).toBeVisible();

  await unfold(page, 'Write the entry');
  await page.getByRole('button', { name: 'Write the entry' }).click();
  // 43.9(a)(1), (2), (3).
  await expect(page.getByText('A description of the work is needed.')).toBeVisible();
  await expect(page.getByText('The day the work was completed is needed.')).toBeVisible();
  await expect(page.getByText('The name of whoever did the work is needed.')).toBeVisible();
  await expect(page.getByText('Begun, entry owed')).toBeVisible();

  // Issue 4; part 43 Appendix A(b): neither is chosen beforehand.
  await page.getByRole('radio', { name: 'Repaired' }).check();
  await page.getByRole('radio', { name: 'None of these was done' }).check();
  await page.getByLabel('What was done').fill('Dressed the nick, no crack under the loupe.');
  await page.getByLabel('Completed on').fill('2020-01-31');
  await page.getByLabel('Done by', { exact: true }).fill('Moira Stobwell');
  await page
    .getByRole('radiogroup', { name: /changed how the aircraft flies/ })
    .getByLabel('No')
    .check();
  await page.getByLabel('Why, or why not').fill('Light dressing, balance unchanged.');
  await page.getByRole('button', { name: 'Write the entry' }).click();
  await expect(page.getByText(/^The entry is written/)).toBeVisible();

  await unfold(page, 'Sign off');
  const form = page.getByRole('form', { name: 'Sign for return to service' });
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button').click();
  // Completed before it was begun: 43.9(a)(2).
  await expect(form.getByRole('alert')).toContainText('The entry is not complete.');
  await expect(form.getByRole('alert')).toContainText('43.9(a)(2)');
  await expect(page.getByText('Entry written, signature owed')).toBeVisible();
  await expect(history(page)).not.toContainText('Approved for return to service');
});

test('a pilot has no bench and is told so', async ({ page }) => {
  await signIn(page, 'pia');
  await page.goto('/bench');
  await expect(alertOf(page)).toContainText('Your role here does not include this.');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`bench pages stand up to axe, ${colorScheme}, a form open and refused`, async ({ page, baseURL }) => {
    const path = await writtenUp(page, baseURL, NICK);
    await page.emulateMedia({ colorScheme });
    await signIn(page, 'moira');
    await page.goto('/bench');
    await expect(page.getByRole('list', { name: /Write-ups/ })).toBeVisible();
    await expectAccessible(page);
    // A deferred light: the whole eligibility of 91.213.
    await page.getByRole('link', { name: /N042QB.*Landing light/ }).click();
    await expect(page.getByRole('heading', { name: /91\.213/ })).toBeVisible();
    await expectAccessible(page);
    await page.goto(path);
    await unfold(page, 'Judge it');
    await page.getByLabel('Find the system').fill('propeller');
    await page.getByRole('button', { name: 'Sign the judgement' }).click();
    await expect(page.getByText('Choose a severity.').first()).toBeVisible();
    await expectAccessible(page);
  });
}

/** WCAG 2.2 AA, as far as axe can see it. */
async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await axeOn(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
}
