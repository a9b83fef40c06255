/**
 * The main job in a real browser, as three people on their own devices. Source: issue 2, "Browser journey"; paragraphs
 * 91.405(a), 65.87(a), 43.9(a), 91.213(d), 91.205(c)(4).
 */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { pageOf } from '../fixtures/browser';

/** Plain go by day and night when the demo is loaded. */
const AIRCRAFT = 'N041QB';
const PHONE = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };
const DESKTOP = { viewport: { width: 1280, height: 800 } };

test.describe.configure({ mode: 'serial' });
// Three devices of their own: once is enough.
test.skip(({ isMobile }) => isMobile, 'the journey brings its own phone');

/** The board's answer for one kind of operation, as a person reads it. */
async function boardSays(page: Page, kind: string, answer: string): Promise<void> {
  await page.goto('/desk');
  await expect(page.getByRole('link', { name: `${AIRCRAFT} ${kind}: ${answer}`, exact: true })).toBeVisible();
}

/** The pilot raises a finding on the phone and reads its number. */
async function raise(page: Page, station: string, finding: string, words: string): Promise<string> {
  await page.goto('/ramp');
  await page.getByRole('link', { name: new RegExp(AIRCRAFT) }).click();
  await page.getByRole('link', { name: 'Write up a finding' }).click();
  await page.getByRole('link', { name: station }).click();
  await page.getByRole('button', { name: finding, exact: true }).click();
  await page.getByLabel('What you saw').fill(words);
  await page.getByRole('button', { name: 'Send', exact: true }).click();
  const number = page.getByRole('heading', { name: /^Sent: W-\d{4}/ });
  // Where the like was closed lately it asks once whether it is that.
  const asks = page.getByText('Say whether it is one of these', { exact: false });
  await expect(number.or(asks)).toBeVisible({ timeout: 20_000 });
  if (await asks.isVisible()) await page.getByRole('button', { name: 'Send as a new one' }).click();
  await expect(number).toBeVisible({ timeout: 20_000 });
  return /W-\d{4}/.exec((await number.textContent()) ?? '')?.[0] ?? '';
}

/** Opens a write-up from the queue. */
async function openWriteUp(page: Page, number: string): Promise<void> {
  await page.goto('/bench');
  await page.getByRole('link', { name: new RegExp(number) }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(number);
}

/** Unfolds one act. */
const unfold = (page: Page, title: string) => page.locator('summary').filter({ hasText: title }).click();

const choose = (page: Page, question: string, answer: string) =>
  page.getByRole('radiogroup', { name: question }).getByText(answer, { exact: true }).click();

test('a nicked propeller: no go, refused without powerplant rating, dressed, signed, go', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const dispatcher = await pageOf(browser, 'tess', DESKTOP);
  await boardSays(dispatcher, 'Day VFR, for hire', 'go');

  const pilot = await pageOf(browser, 'pia', PHONE);
  const number = await raise(
    pilot,
    'Propeller',
    'Propeller nick, deep or sharp',
    'Sharp nick, catches the fingernail.',
  );
  await boardSays(dispatcher, 'Day VFR, for hire', 'no go');

  const airframe = await pageOf(browser, 'abel', DESKTOP);
  await openWriteUp(airframe, number);
  await expect(
    airframe.getByText(/never be deferred under 91\.213|not equipment that does not work/i).first(),
  ).toBeVisible();
  await unfold(airframe, 'Start work');
  await airframe.getByLabel('What is to be done').fill('Dress the nick and inspect the blade');
  await choose(airframe, 'What kind of work is it?', 'Minor repair');
  await choose(airframe, 'Is a unit only taken out and put in?', 'No');
  await airframe.getByRole('button', { name: 'Start the work' }).click();
  await unfold(airframe, 'Write the entry');
  await choose(airframe, 'What came of it?', 'Repaired');
  await choose(airframe, 'Was any of these done?', 'None of these was done');
  await airframe
    .getByLabel('What was done')
    .fill('Nick dressed out and faired, 10x inspection, no crack found.');
  await airframe.getByLabel('By which data').fill('Propeller manual, section 4');
  await airframe.getByLabel('Done by', { exact: true }).fill('Moira Stobwell');
  await airframe.getByLabel('Completed on').fill(await today(airframe));
  await choose(airframe, 'Could it have changed how the aircraft flies or is operated in flight?', 'No');
  await airframe.getByLabel('Why, or why not').fill('Light dressing within limits.');
  await airframe.getByRole('button', { name: 'Write the entry' }).click();
  await unfold(airframe, 'Sign off');
  await airframe.getByLabel('Your password, to sign').fill(DEMO_PASSWORD);
  await airframe.getByRole('button', { name: 'Sign for return to service' }).click();
  const refusal = airframe.getByRole('form').getByRole('alert');
  await expect(refusal).toContainText('65.87(a)');
  await expect(refusal).toContainText('powerplant');
  await boardSays(dispatcher, 'Day VFR, for hire', 'no go');

  const powerplant = await pageOf(browser, 'moira', DESKTOP);
  await openWriteUp(powerplant, number);
  await unfold(powerplant, 'Sign off');
  await powerplant.getByLabel('Your password, to sign').fill(DEMO_PASSWORD);
  await powerplant.getByRole('button', { name: 'Sign for return to service' }).click();
  await expect(powerplant.getByText(/Signed: approved for return to service/)).toBeVisible();
  await boardSays(dispatcher, 'Day VFR, for hire', 'go');

  await pilot.goto('/ramp/mine');
  await expect(pilot.getByText('Nick dressed out and faired', { exact: false }).first()).toBeVisible();
});

test('a dead landing light: allowed by day, barred at night for hire, placarded, flown by day only', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const pilot = await pageOf(browser, 'pia', PHONE);
  const number = await raise(
    pilot,
    'Left leading edge',
    'Landing light dead',
    'Does not come on, breaker is in.',
  );
  const dispatcher = await pageOf(browser, 'tess', DESKTOP);
  await boardSays(dispatcher, 'Day VFR, for hire', 'no go');

  const mechanic = await pageOf(browser, 'abel', DESKTOP);
  await openWriteUp(mechanic, number);
  const row = (kind: string) => mechanic.getByRole('row').filter({ hasText: kind });
  await expect(row('Day VFR, for hire')).toContainText(/allowed/i);
  await expect(row('Night VFR, for hire')).toContainText(/barred/i);
  await expect(row('Night VFR, for hire')).toContainText('91.205(c)(4)');

  await unfold(mechanic, 'Defer it');
  await mechanic.getByText('It does not work, nothing is damaged', { exact: true }).click();
  await choose(mechanic, 'What was done with it?', 'Deactivated');
  await mechanic.getByLabel('How', { exact: true }).fill('Breaker pulled and collared.');
  await choose(mechanic, 'Was that maintenance?', 'No');
  await mechanic.getByLabel('Wording of the placard').fill('LANDING LIGHT INOPERATIVE');
  await mechanic.getByLabel('Where it goes').fill('Beside the landing light switch');
  await mechanic.getByLabel('Why it is no hazard').fill('Not needed by day; circuit made dead.');
  await mechanic.getByLabel(/I determine that this inoperative item/).check();
  await mechanic.getByLabel('Your password, to sign').fill(DEMO_PASSWORD);
  await mechanic.getByRole('button', { name: 'Sign the deferral' }).click();
  await expect(mechanic.getByText(/placard is owed/i).first()).toBeVisible();
  await boardSays(dispatcher, 'Day VFR, for hire', 'no go');

  await mechanic.getByRole('button', { name: 'The placard is up' }).click();
  await expect(mechanic.getByRole('button', { name: 'The placard is up' })).toHaveCount(0);
  await boardSays(dispatcher, 'Day VFR, for hire', 'go with limits');
  await boardSays(dispatcher, 'Night VFR, for hire', 'no go');
});

/** Today at the aircraft's base, as a date field wants it. */
function today(page: Page): Promise<string> {
  return page.evaluate(() =>
    new Intl.DateTimeFormat('sv-SE', { timeZone: 'America/Chicago' }).format(new Date()),
  );
}
