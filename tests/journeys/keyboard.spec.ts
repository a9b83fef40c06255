/**
 * The three users at their work with the keyboard alone: a pilot signs in and files a finding, a mechanic works it off and signs,
 * a dispatcher reads the board, releases a flight and takes it back. WCAG 2.2: 2.1.1, 2.4.3, 2.4.7; the work itself as in
 * main-job.spec.ts. N053QB stands in the hangar; N041QB's release is withdrawn at the end.
 */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD, PEOPLE } from '../../seed/people';
import { todayAt, writtenUpOn } from '../fixtures/bench-page';
import { signIn } from '../fixtures/browser';
import { choose, pick, press, reach, type } from '../fixtures/by-keyboard';

const ZONE = 'America/Chicago';

test.skip(({ isMobile }) => isMobile, 'a phone has no keyboard to tab with');

/** Presses the link that leads past the head of the page. */
async function skipToContent(page: Page): Promise<void> {
  await press(page, page.getByRole('link', { name: 'Skip to the content' }));
}

test('a pilot signs in and files a finding', async ({ page }) => {
  const email = PEOPLE.find((person) => person.email.startsWith('pia@'))?.email ?? '';
  await page.goto('/sign-in?next=/ramp');
  await type(page, page.getByLabel('E-mail address'), email);
  await type(page, page.getByLabel('Password'), DEMO_PASSWORD);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/ramp$/);

  await skipToContent(page);
  await press(page, page.getByRole('link', { name: /N053QB/ }));
  await press(page, page.getByRole('link', { name: 'Write up a finding' }));
  await press(page, page.getByRole('link', { name: 'Propeller' }).first());
  await press(page, page.getByRole('button', { name: 'Propeller nick, deep or sharp', exact: true }));
  await type(page, page.getByLabel('What you saw'), `Found by keyboard, ${Date.now()}.`);
  await press(page, page.getByRole('button', { name: 'Send', exact: true }));
  const number = page.getByRole('heading', { name: /^Sent: W-\d{4}/ });
  const asks = page.getByRole('button', { name: 'Send as a new one' });
  await expect(number.or(asks)).toBeVisible({ timeout: 20_000 });
  if (await asks.isVisible()) await press(page, asks);
  await expect(number).toBeVisible({ timeout: 20_000 });
});

test('a mechanic starts the work, writes the entry and signs', async ({ page, baseURL }) => {
  test.setTimeout(150_000);
  const path = await writtenUpOn('N053QB', page, baseURL, {
    findingKey: 'propeller-nick',
    place: 'Blade 1',
    words: `Small nick, for the keyboard, ${Date.now()}.`,
    measurements: { 'propeller-nick-depth': 12, 'propeller-nick-width': 20 },
  });
  await signIn(page, 'moira');
  await page.goto(path);
  await skipToContent(page);

  await press(page, page.locator('summary').filter({ hasText: 'Start work' }).first());
  await type(page, page.getByLabel('What is to be done'), 'Dress the nick');
  await choose(page, page.getByRole('radiogroup', { name: 'What kind of work is it?' }), 'Minor repair');
  await choose(page, page.getByRole('radiogroup', { name: /only taken out and put in/ }), 'No');
  await press(page, page.getByRole('button', { name: 'Start the work' }));
  await expect(page.getByText(/^Work is begun/)).toBeVisible();

  await press(page, page.locator('summary').filter({ hasText: 'Write the entry' }).first());
  const form = page.getByRole('form', { name: 'Write the entry' });
  await choose(page, form.getByRole('radiogroup', { name: 'What came of it?' }), 'Repaired');
  await type(page, form.getByLabel('What was done'), 'Dressed the nick and faired it.');
  await type(page, form.getByLabel('By which data'), 'Propeller manual, section 4, invented');
  await reach(page, form.getByLabel('Completed on'));
  await form.getByLabel('Completed on').fill(await todayAt(page, ZONE));
  await type(page, form.getByLabel('Done by', { exact: true }), 'Moira Stobwell');
  await choose(
    page,
    page.getByRole('radiogroup', { name: 'Was any of these done?' }),
    'None of these was done',
  );
  await choose(page, form.getByRole('radiogroup', { name: /changed how the aircraft flies/ }), 'No');
  await type(page, form.getByLabel('Why, or why not'), 'Light dressing, balance unchanged.');
  await press(page, form.getByRole('button', { name: 'Write the entry' }));

  const sign = page.getByRole('form', { name: 'Sign for return to service' });
  const summary = page.locator('summary').filter({ hasText: 'Sign off' }).first();
  await expect(summary.or(sign).first()).toBeVisible();
  if (!(await sign.isVisible())) await press(page, summary);
  await type(page, sign.getByLabel('Your password'), DEMO_PASSWORD);
  await press(page, sign.getByRole('button', { name: 'Sign for return to service' }));
  await expect(page.getByText('Signed: approved for return to service for this work.')).toBeVisible();
});

test('a dispatcher reads the board, releases a flight and takes it back', async ({ page }) => {
  test.setTimeout(150_000);
  const at = (minutes: number) =>
    new Date(Date.now() + minutes * 60_000)
      .toLocaleString('sv-SE', { timeZone: ZONE })
      .replace(' ', 'T')
      .slice(0, 16);
  await signIn(page, 'tess');
  await page.goto('/desk');
  await skipToContent(page);
  await press(page, page.getByRole('link', { name: /^N041QB Day VFR, for hire/ }));
  await expect(page.getByRole('heading', { level: 1 })).toContainText('N041QB');

  await page.goto('/desk/flight');
  await skipToContent(page);
  await pick(page, page.getByLabel('Aircraft'), 'N041QB');
  await pick(page, page.getByLabel('Pilot in command'), 'Dov Larkmoor');
  await press(page, page.getByRole('button', { name: 'ZZQB and back' }));
  for (const [label, minutes] of [
    [/^Departs/, 40],
    [/^Arrives/, 80],
  ] as const) {
    await reach(page, page.getByLabel(label));
    await page.getByLabel(label).fill(at(minutes));
  }
  await type(page, page.getByLabel('Planned time in service'), '0.6');
  await choose(page, page.getByRole('radiogroup', { name: /rules/i }).first(), 'VFR');
  await pick(page, page.getByLabel('What is it for?'), 'Private');
  await choose(page, page.getByRole('radiogroup', { name: 'Into airspace that needs a transponder?' }), 'No');
  await choose(page, page.getByRole('radiogroup', { name: 'Into airspace that needs ADS-B Out?' }), 'No');
  await press(page, page.getByRole('button', { name: /^Get the answer/ }));
  await expect(page.getByRole('group', { name: 'Answer' }).getByText(/^Go/).first()).toBeVisible();
  const limits = page.getByRole('checkbox', { name: /I have passed these limits/ });
  if (await limits.isVisible()) await press(page, limits, 'Space');
  await press(page, page.getByRole('button', { name: /^Release/ }));
  await expect(page.getByRole('heading', { level: 1, name: 'N041QB released' })).toBeVisible();

  await press(page, page.getByRole('button', { name: 'Withdraw the release' }));
  await type(page, page.getByLabel('Why it is withdrawn'), 'Only tried with the keyboard.');
  await press(page, page.getByRole('button', { name: 'Withdraw it' }));
  await expect(page.getByText('Withdrawn').first()).toBeVisible();
});
