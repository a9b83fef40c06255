/**
 * The dispatcher's side in the running program, on the demo. What the board promises stands in the comments of
 * seed/today.ts and seed/aircraft-*.ts; paragraphs are named beside each check.
 */
import { expect, test, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { MARROWFIELD } from '../../seed/second-operator';
import { DEMO_PASSWORD } from '../../seed/people';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';

const HOME_ZONE = 'America/Chicago';

const asDispatcher = (page: Page) => signIn(page, 'tess');

const rowOf = (page: Page, registration: string) =>
  page.getByRole('row').filter({ has: page.getByRole('link', { name: registration, exact: true }) });

/** The cell's link says aircraft, kind of operation and outcome in words. */
const cellOf = (page: Page, registration: string, kind: string) =>
  rowOf(page, registration).getByRole('link', { name: `${registration} ${kind}:` });

async function openFlight(page: Page, registration: string): Promise<void> {
  await page.goto('/desk/flight');
  const aircraft = page.getByLabel('Aircraft');
  const option = aircraft.locator('option', { hasText: registration });
  await aircraft.selectOption(await option.getAttribute('value'));
}

/** Eleven to noon tomorrow at the home base: always by day there, always to come. */
async function composeDayFlight(page: Page, hours = '1.0'): Promise<void> {
  const tomorrow = new Intl.DateTimeFormat('en-CA', { timeZone: HOME_ZONE }).format(Date.now() + 86_400_000);
  await page.getByLabel('Pilot in command').selectOption({ label: 'Ines Kestrelby, commercial' });
  await page.getByRole('button', { name: 'ZZQB and back' }).click();
  await page.getByLabel(/^Departs/).fill(`${tomorrow}T11:00`);
  await page.getByLabel(/^Arrives/).fill(`${tomorrow}T13:00`);
  await page.getByLabel('Planned time in service').fill(hours);
  await page.getByRole('radio', { name: 'VFR' }).check();
  await page.getByLabel('What is it for?').selectOption('instruction-for-hire');
}

async function answer(page: Page, question: string, word: 'Yes' | 'No'): Promise<void> {
  await page
    .getByRole('radiogroup', { name: question })
    .getByRole('radio', { name: word, exact: true })
    .check();
}

async function answerAll(page: Page): Promise<void> {
  await answer(page, 'Into airspace that needs a transponder?', 'No');
  await answer(page, 'Into airspace that needs ADS-B Out?', 'No');
  await answer(page, 'Over water beyond gliding distance from shore?', 'No');
  await answer(page, 'Training wholly within 50 nautical miles?', 'Yes');
}

/** A released flight holds its aircraft and its pilot: taken back, the next test can have them. */
async function withdraw(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Withdraw the release' }).click();
  await page.getByLabel('Why it is withdrawn').fill('Only looked at.');
  await page.getByRole('button', { name: 'Withdraw it' }).click();
  await expect(page.getByText('Only looked at.')).toBeVisible();
}

const getTheAnswer = (page: Page) => page.getByRole('button', { name: /^Get the answer/ }).click();
const sheet = (page: Page) => page.getByRole('group', { name: 'Answer' });

test('the board says what the demo promises', async ({ page }) => {
  await asDispatcher(page);
  await page.goto('/desk');
  await expect(page.getByRole('rowheader')).toHaveCount(9);
  // Deferred landing light, 91.205(c)(4): by day a limit, at night for hire no go, privately a limit.
  await expect(cellOf(page, 'N042QB', 'Day VFR, for hire')).toHaveAccessibleName(/: go with limits$/);
  await expect(cellOf(page, 'N042QB', 'Night VFR, for hire')).toHaveAccessibleName(/: no go$/);
  await expect(rowOf(page, 'N042QB').getByText('Private: go with limits').first()).toBeVisible();
  // Deferred VOR receiver, 91.205(d)(2): barred under IFR by VOR, a limit under VFR.
  await expect(cellOf(page, 'N052TM', 'Day VFR, for hire')).toHaveAccessibleName(/: go with limits$/);
  await expect(cellOf(page, 'N052TM', 'Day IFR, for hire')).toHaveAccessibleName(/: no go$/);
  // Altitude of the altimeter test not entered, 91.411(d): unknown is never go.
  await expect(cellOf(page, 'N045TM', 'Day VFR, for hire')).toHaveAccessibleName(/: go$/);
  await expect(cellOf(page, 'N045TM', 'Day IFR, for hire')).toHaveAccessibleName(/: no go$/);
  await expect(
    rowOf(page, 'N045TM')
      .getByText(/^Not known:/)
      .first(),
  ).toBeVisible();
  // 1.4 h of its 100 hours left, 91.409(b).
  await expect(rowOf(page, 'N051QB')).toContainText('in 1.4 h');
  // Annual lapsed, 91.409(a).
  await expect(rowOf(page, 'N053QB')).toContainText(/over by \d+ days/);
  await expect(page.getByText(/^As of \d\d:\d\d:\d\d C[SD]T \/ \d\d:\d\d:\d\d E[SD]T$/)).toBeVisible();
});

test('nothing on the desk is wider than the screen', async ({ page }) => {
  await asDispatcher(page);
  for (const path of ['/desk', '/desk/flight', '/desk/releases']) {
    await page.goto(path);
    const [content, screen] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    expect(content, path).toBeLessThanOrEqual(screen ?? 0);
  }
});

test('filters: a base, and what can leave now', async ({ page }) => {
  await asDispatcher(page);
  await page.goto('/desk');
  await page.getByRole('radio', { name: 'ZZTM' }).check();
  await expect(page.getByRole('rowheader')).toHaveCount(3);
  await expect(rowOf(page, 'N042QB')).toHaveCount(0);
  await page.getByRole('checkbox', { name: /^Flyable now/ }).check();
  await expect(rowOf(page, 'N045TM')).toHaveCount(1);
  await expect(rowOf(page, 'N054TM')).toHaveCount(0);
});

test('a cell opens its reasons, each with its paragraph', async ({ page }) => {
  await asDispatcher(page);
  await page.goto('/desk');
  await cellOf(page, 'N042QB', 'Night VFR, for hire').click();
  await expect(page.getByRole('heading', { level: 1, name: 'N042QB' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Night VFR, for hire' })).toBeVisible();
  await expect(page.locator('#reasons')).toContainText('14 CFR 91.205(c)(4)');
  await expect(page.locator('#write-ups')).toContainText('Placard in place');
  // The other kinds are links: keyboard and back button work.
  await page.getByRole('link', { name: /^Day VFR, private/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Day VFR, private' })).toBeVisible();
  await expect(page.getByRole('link', { name: /^Day VFR, private/ })).toHaveAttribute('aria-current', 'true');
});

test('an unanswered question is no go and is named; answered, the flight goes and is released', async ({
  page,
}) => {
  await asDispatcher(page);
  await openFlight(page, 'N041QB');
  await composeDayFlight(page);
  await getTheAnswer(page);
  // 91.215(b): whether the airspace needs a transponder is not known.
  await expect(sheet(page).getByText('No go', { exact: true })).toBeVisible();
  await expect(sheet(page)).toContainText('whether the flight enters airspace that needs a transponder');
  await expect(page.getByRole('button', { name: /Release/ })).toHaveCount(0);

  await answerAll(page);
  await expect(sheet(page)).toContainText('You changed the flight since.');
  await getTheAnswer(page);
  await expect(sheet(page).getByText('Go', { exact: true })).toBeVisible();
  await expect(sheet(page)).toContainText(/by day\. Sunset \d\d:\d\d C[SD]T/);
  await page.getByRole('button', { name: 'Release', exact: true }).click();

  await expect(page.getByRole('heading', { level: 1, name: 'N041QB released' })).toBeVisible();
  await expect(page.getByText(/^Released by Tess Dunnockby on/)).toBeVisible();
  await expect(page.getByText('Ines Kestrelby', { exact: true })).toBeVisible();
  await expect(page.getByText(/^[0-9a-f]{64}$/)).toBeVisible();
  await withdraw(page);
  await page.getByRole('link', { name: 'Releases' }).click();
  await expect(page.getByRole('link', { name: /^N041QB, departs/ }).first()).toBeVisible();
});

test('limits must be confirmed as passed on before the release', async ({ page }) => {
  await asDispatcher(page);
  await openFlight(page, 'N042QB');
  await composeDayFlight(page);
  await answerAll(page);
  await getTheAnswer(page);
  await expect(sheet(page).getByText('Go with limits', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Release with limits' }).click();
  const refused = page.getByRole('alert').filter({ hasText: 'Pass the limits to the pilot in command' });
  await expect(refused).toBeVisible();
  await page.getByRole('checkbox', { name: 'I have passed these limits to the pilot in command' }).check();
  await page.getByRole('button', { name: 'Release with limits' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'N042QB released' })).toBeVisible();
  await expect(page.getByText('confirmed having passed the limits')).toBeVisible();
  await withdraw(page);
});

test('the hours left decide: 1.4 h is go, 1.5 h is not (91.409(b))', async ({ page }) => {
  await asDispatcher(page);
  await openFlight(page, 'N051QB');
  await composeDayFlight(page, '1.4');
  await answerAll(page);
  await getTheAnswer(page);
  await expect(sheet(page).getByText('Go', { exact: true })).toBeVisible();
  await page.getByLabel('Planned time in service').fill('1.5');
  await getTheAnswer(page);
  await expect(sheet(page).getByText('No go', { exact: true })).toBeVisible();
  await expect(sheet(page)).toContainText('14 CFR 91.409(b)');
});

test('a write-up between answer and release: refused in words, and asked again', async ({ page }) => {
  await asDispatcher(page);
  await openFlight(page, 'N041QB');
  await composeDayFlight(page);
  await answerAll(page);
  await getTheAnswer(page);
  await expect(sheet(page).getByText('Go', { exact: true })).toBeVisible();
  const reported = await page.evaluate(
    async (finding) =>
      (
        await fetch('/api/sync/findings', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(finding),
        })
      ).status,
    {
      version: 1,
      requestId: randomUUID(),
      aircraftId: await page.getByLabel('Aircraft').inputValue(),
      walkaroundId: null,
      station: 'left-rear-fuselage',
      findingKey: null,
      kind: 'cosmetic',
      jasc: '5330',
      equipmentId: null,
      inoperativeCount: null,
      place: 'Left side',
      words: 'One more scratch in the paint.',
      measurements: {},
      foundAt: new Date().toISOString(),
    },
  );
  expect(reported).toBe(200);
  await page.getByRole('button', { name: 'Release', exact: true }).click();
  await expect(
    page.getByRole('alert').filter({ hasText: 'The facts changed since you looked' }),
  ).toBeVisible();
  await expect(
    page.getByText(/^Nothing was released. Asked again: the answer below is of \d\d:\d\d:\d\d/),
  ).toBeVisible();
  await expect(page.getByLabel('Planned time in service')).toHaveValue('1.0');
  await page.getByRole('button', { name: 'Release', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'N041QB released' })).toBeVisible();
  await withdraw(page);
});

test('a refused form keeps what was typed', async ({ page }) => {
  await asDispatcher(page);
  await openFlight(page, 'N041QB');
  await composeDayFlight(page, '9.9');
  await answer(page, 'Into airspace that needs a transponder?', 'Yes');
  await getTheAnswer(page);
  await expect(
    page.getByRole('alert').filter({ hasText: 'More hours than lie between departure and arrival.' }),
  ).toBeVisible();
  await expect(page.getByLabel('Planned time in service')).toHaveValue('9.9');
  await expect(page.getByLabel(/^Departs/)).toHaveValue(/T11:00$/);
  await expect(page.getByRole('radio', { name: 'VFR' })).toBeChecked();
  await expect(
    page.getByRole('radiogroup', { name: /needs a transponder/ }).getByRole('radio', { name: 'Yes' }),
  ).toBeChecked();
  await expect(page.getByLabel('What is it for?')).toHaveValue('instruction-for-hire');
});

test('a pilot may look and ask, but is told that releasing is for the desk', async ({ page }) => {
  await signIn(page, 'pia');
  await page.goto('/desk');
  await expect(page.getByRole('rowheader')).toHaveCount(9);
  await openFlight(page, 'N051QB');
  await composeDayFlight(page);
  await answerAll(page);
  await getTheAnswer(page);
  await expect(sheet(page).getByText('Go', { exact: true })).toBeVisible();
  await expect(sheet(page)).toContainText('Releasing is for dispatchers and managers.');
  await expect(page.getByRole('button', { name: 'Release', exact: true })).toHaveCount(0);
});

test('another school sees none of it', async ({ page }) => {
  await asDispatcher(page);
  await page.goto('/desk');
  const path = await page.getByRole('link', { name: 'N041QB', exact: true }).getAttribute('href');
  await page.context().clearCookies();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail address').fill(MARROWFIELD.people[0]?.email ?? '');
  await page.getByLabel('Password').fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByText(MARROWFIELD.name)).toBeVisible();
  await page.goto(path ?? '');
  await expect(page.getByText('There is no such aircraft here.')).toBeVisible();
});

test('a board without contact says so, and after two minutes shows no answer at all', async ({
  page,
  context,
}) => {
  await page.clock.install();
  await asDispatcher(page);
  await page.goto('/desk');
  const goes = page.getByRole('table').getByText('Go', { exact: true });
  await expect(goes.first()).toBeVisible();
  await context.setOffline(true);
  await page.clock.runFor(35_000);
  await expect(page.getByRole('main').getByRole('alert')).toContainText('may be old');
  await expect(goes.first()).toBeVisible();
  await page.clock.runFor(100_000);
  await expect(page.getByRole('main').getByRole('alert')).toContainText('not known means no go');
  await expect(page.getByRole('table').getByText('Not known', { exact: true })).toHaveCount(36);
  await expect(page.getByRole('table')).not.toContainText(/\bgo\b/i);
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Ask now' }).click();
  await expect(goes.first()).toBeVisible();
  await expect(page.getByRole('table').getByText('Not known', { exact: true })).toHaveCount(0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the desk is usable by everybody, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await asDispatcher(page);
    const check = async () => {
      const found = await axeOn(page)
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(found.violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target)])).toEqual([]);
    };
    await page.goto('/desk');
    await check();
    await page.getByRole('link', { name: 'N042QB', exact: true }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'N042QB' })).toBeVisible();
    await check();
    await openFlight(page, 'N042QB');
    await composeDayFlight(page);
    await getTheAnswer(page);
    await expect(sheet(page).getByText('No go', { exact: true })).toBeVisible();
    await check();
    await page.goto('/desk/releases');
    await check();
    await page
      .getByRole('link', { name: /departs/ })
      .first()
      .click();
    await expect(
      page.getByRole('heading', { level: 1, name: /(released|release withdrawn|release void)$/ }),
    ).toBeVisible();
    await check();
  });
}
