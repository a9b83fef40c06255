/**
 * An entry and its signature in the running program, on the aircraft that stands in the hangar for its annual. Paragraphs are
 * named beside each check; parts, hours and corrections are issue 4; the rest is common practice, no source.
 */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/seed/people';
import { choose, expectAccessible, todayAt, unfold, writtenUpOn } from '../fixtures/bench-page';
import { pageOf, signIn } from '../fixtures/browser';

const IN_HANGAR = 'N053QB';
const ZONE = 'America/Chicago';
const HELPER = 'Hilda Helpsome';

const nick = (run: string) => ({
  findingKey: 'propeller-nick',
  place: `Blade 2, leading edge, run ${run}`,
  words: `Small nick, felt with the nail. Run ${run}.`,
  measurements: { 'propeller-nick-depth': 12, 'propeller-nick-width': 20 },
});
const runOf = () => Date.now().toString(36);
const entryForm = (page: Page) => page.getByRole('form', { name: 'Write the entry' });
const signForm = (page: Page) => page.getByRole('form', { name: 'Sign for return to service' });

async function startWork(page: Page): Promise<void> {
  await unfold(page, 'Start work');
  await page.getByLabel('What is to be done').fill('Dress the nick');
  await choose(page, 'What kind of work is it?', 'Minor repair');
  await choose(page, /only taken out and put in/, 'No');
  await page.getByRole('button', { name: 'Start the work' }).click();
  await expect(page.getByText(/^Work is begun/)).toBeVisible();
}

async function fillEntry(page: Page, doneBy: string): Promise<void> {
  const form = entryForm(page);
  await choose(page, 'What came of it?', 'Repaired');
  await form.getByLabel('What was done').fill('Dressed the nick and faired it, no crack under the loupe.');
  await form.getByLabel('By which data').fill('Propeller manual, section 4, invented');
  await form.getByLabel('Completed on').fill(await todayAt(page, ZONE));
  await form.getByLabel('Done by', { exact: true }).fill(doneBy);
  await choose(page, /changed how the aircraft flies/, 'No');
  await form.getByLabel('Why, or why not').fill('Light dressing, balance unchanged.');
}

const write = (page: Page) => entryForm(page).getByRole('button', { name: 'Write the entry' }).click();

async function sign(page: Page): Promise<void> {
  await signForm(page).getByLabel('Your password').fill(DEMO_PASSWORD);
  await signForm(page).getByRole('button', { name: 'Sign for return to service' }).click();
}

test('parts, hours and the major question; the wrong certificate; the work of a helper', async ({
  page,
  baseURL,
}) => {
  test.setTimeout(150_000);
  const path = await writtenUpOn(IN_HANGAR, page, baseURL, nick(runOf()));
  await signIn(page, 'abel');
  await page.goto(path);
  await startWork(page);

  await unfold(page, 'Write the entry');
  const form = entryForm(page);
  await fillEntry(page, HELPER);
  // Nothing is chosen beforehand.
  await expect(form.getByRole('radio', { name: 'None of these was done' })).not.toBeChecked();
  await form.getByLabel('Hours of work').fill('1,5');
  await form.getByRole('button', { name: 'Add a part' }).click();
  await form.getByLabel('Name of the part').fill('Blade stripe, yellow');
  await write(page);
  await expect(form.getByText('Hours of work are written as on a meter: 1.5.').first()).toBeVisible();
  await expect(form.getByText('The part number is needed.').first()).toBeVisible();
  await expect(form.getByText('Say whether it was fitted or removed.').first()).toBeVisible();

  await form.getByLabel('Hours of work').fill('1.5');
  await choose(page, 'Fitted or removed?', 'Fitted');
  await form.getByLabel('Part number').fill('61-0042');
  await form.getByLabel('Batch').fill('L-77');
  await form.getByLabel('How many').fill('1');
  // Part 43 Appendix A(b)(3): a deep nick makes it major, and then it is not entered as minor.
  await choose(page, 'Was any of these done?', 'One or more of these was done');
  await form.getByRole('checkbox', { name: /deep dent, nick, cut or scar/ }).check();
  await write(page);
  const refused = form.getByRole('alert');
  await expect(refused).toContainText('That makes it a major repair');
  await expect(refused).toContainText('Appendix A(b)(3)');
  await expect(form.getByLabel('What was done')).toHaveValue(/faired it/);
  await expect(form.getByLabel('Part number')).toHaveValue('61-0042');
  await choose(page, 'Was any of these done?', 'None of these was done');
  await write(page);
  await expect(page.getByText(/^The entry is written/)).toBeVisible();

  await unfold(page, 'Sign off');
  await expect(page.getByText('part no. 61-0042').last()).toBeVisible();
  await sign(page);
  // A propeller is powerplant work: 65.87(a).
  await expect(signForm(page).getByRole('alert')).toContainText('65.87(a)');

  const able = await pageOf(page.context().browser()!, 'moira', { baseURL });
  await able.goto(path);
  await unfold(able, 'Sign off');
  await sign(able);
  // 43.3(d): somebody else did it, and the signer has not said how they could.
  await expect(signForm(able).getByRole('alert')).toContainText('43.3(d)');
  await choose(able, new RegExp(`${HELPER} did the work`), 'I supervised it');
  await sign(able);
  await expect(able.getByText('Signed: approved for return to service for this work.')).toBeVisible();
  await able.getByText('The entry as signed').click();
  await expect(able.getByText('Supervised by the signer, who was at hand in person')).toBeVisible();
  await expect(
    able.getByText('fitted: Blade stripe, yellow, part no. 61-0042, batch L-77, quantity 1'),
  ).toBeVisible();
  await able.context().close();
});

test('a signed entry is corrected by another; both stay', async ({ page, baseURL }) => {
  test.setTimeout(150_000);
  const run = runOf();
  const path = await writtenUpOn(IN_HANGAR, page, baseURL, nick(run));
  await signIn(page, 'moira');
  await page.goto(path);
  await startWork(page);
  await unfold(page, 'Write the entry');
  await fillEntry(page, 'Moira Stobwell');
  await choose(page, 'Was any of these done?', 'None of these was done');
  await write(page);
  await expect(page.getByText(/^The entry is written/)).toBeVisible();
  await unfold(page, 'Sign off');
  await sign(page);
  await expect(page.getByText('Signed: approved for return to service for this work.')).toBeVisible();

  await unfold(page, 'Correct the entry');
  // 91.407(a), said before it is pressed.
  await expect(page.getByText('the aircraft does not fly', { exact: true })).toBeVisible();
  await page.getByLabel('What is wrong with the entry').fill(`Manual revision left out, run ${run}.`);
  await page.getByRole('button', { name: 'Begin the correction' }).click();
  await expect(page.getByText(/^The correction is begun/)).toBeVisible();
  await unfold(page, 'Write the entry');
  await expect(entryForm(page).getByLabel('What was done')).toHaveValue(/faired it/);
  await entryForm(page).getByLabel('By which data').fill('Propeller manual, section 4, revision 7, invented');
  await write(page);
  await expect(page.getByText(/^The entry is written/)).toBeVisible();
  await unfold(page, 'Sign off');
  await sign(page);
  await expect(page.getByText('Signed: approved for return to service for this work.')).toBeVisible();
  const work = page
    .locator('section')
    .filter({ has: page.getByRole('heading', { name: 'Work', exact: true }) });
  await expect(work.getByText('Superseded')).toBeVisible();
  await expect(work).toContainText(`Manual revision left out, run ${run}.`);
  await expect(page.getByText('Entry corrected and signed by Moira Stobwell')).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the entry and the signature stand up to axe, ${colorScheme}`, async ({ page, baseURL }) => {
    test.setTimeout(120_000);
    const path = await writtenUpOn(IN_HANGAR, page, baseURL, nick(runOf()));
    await page.emulateMedia({ colorScheme });
    await signIn(page, 'moira');
    await page.goto(path);
    await startWork(page);
    await unfold(page, 'Write the entry');
    const form = entryForm(page);
    await form.getByRole('button', { name: 'Add a part' }).click();
    await choose(page, 'It is entered as', 'Major repair');
    await choose(page, 'Was any of these done?', 'One or more of these was done');
    await choose(page, 'fuel tank', 'Yes');
    await write(page);
    await expect(form.getByText('A description of the work is needed.').first()).toBeVisible();
    await expectAccessible(page);
    // 44 px for a greasy thumb: WCAG 2.5.5 by our own rule.
    for (const name of ['Add a part', 'Take part 1 off']) {
      const box = await form.getByRole('button', { name }).boundingBox();
      expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(44);
    }
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await form.getByRole('button', { name: 'Take part 1 off' }).click();
    await fillEntry(page, HELPER);
    await choose(page, 'It is entered as', 'Minor repair');
    await choose(page, 'Was any of these done?', 'None of these was done');
    await write(page);
    await expect(page.getByText(/^The entry is written/)).toBeVisible();
    await unfold(page, 'Sign off');
    await expect(signForm(page)).toBeVisible();
    await expectAccessible(page);
  });
}
