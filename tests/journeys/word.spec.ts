/**
 * The reporter gets word, as two people on their own devices. Source: issue 3, "the reporter gets word when the write-up is
 * judged, fixed or deferred (in-app, and e-mail ...; a file outbox in the demo), with the mechanic's words"; WCAG 2.2 AA
 * for axe and 2.5.8 for the size of targets. The write-up is made on the aircraft that stands in the hangar.
 */
import { expect, test, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { DEMO_PASSWORD } from '../../seed/people';
import { axeOn } from '../fixtures/axe';
import { pageOf } from '../fixtures/browser';

const IN_HANGAR = 'N053QB';
const PHONE = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };
const DESKTOP = { viewport: { width: 1280, height: 800 } };

// Two devices of their own: once is enough.
test.skip(({ isMobile }) => isMobile, 'the journey brings its own phone');

/** A finding through the ramp's own door, as the phone's queue sends it. Gives the write-up's id and number. */
async function writeUp(pilot: Page, words: string): Promise<{ discrepancyId: string; number: string }> {
  // Where signing in leads a pilot.
  await expect(pilot.getByRole('heading', { name: 'Choose the aircraft' })).toBeVisible();
  const href = await pilot.getByRole('link', { name: IN_HANGAR }).getAttribute('href');
  const answer = await pilot.request.post('/api/sync/findings', {
    headers: { origin: new URL(pilot.url()).origin },
    data: {
      version: 1,
      requestId: randomUUID(),
      aircraftId: href?.split('/')[2],
      walkaroundId: null,
      station: 'nose-right',
      findingKey: null,
      kind: 'leak',
      jasc: null,
      equipmentId: null,
      inoperativeCount: null,
      place: 'Under the cowl',
      words,
      measurements: {},
      foundAt: new Date().toISOString(),
    },
  });
  const result = (await answer.json()) as { ok: boolean; value: { discrepancyId: string; number: string } };
  expect(result, JSON.stringify(result)).toMatchObject({ ok: true });
  return result.value;
}

async function judge(mechanic: Page, discrepancyId: string, reason: string): Promise<void> {
  await mechanic.goto(`/bench/write-up/${discrepancyId}`);
  await mechanic.locator('summary').filter({ hasText: 'Judge it' }).click();
  await mechanic.getByLabel('What is it?').selectOption({ label: 'Leak' });
  await mechanic.getByLabel('Find the system').fill('brake');
  await mechanic.getByRole('radio', { name: /Brake/ }).first().check();
  await mechanic.getByRole('radio', { name: /^Grounding/ }).check();
  await mechanic.getByLabel('Your reason').fill(reason);
  await mechanic.getByLabel('Your password').fill(DEMO_PASSWORD);
  await mechanic.getByRole('button', { name: 'Sign the judgement' }).click();
  await expect(mechanic.getByText(reason).first()).toBeVisible();
}

/** The letters in the outbox that hold this, as they lie there. */
async function lettersWith(words: string): Promise<string[]> {
  const folder = process.env['MAIL_OUTBOX_DIR'];
  if (!folder) throw new Error('The journeys’ server lays its letters into MAIL_OUTBOX_DIR; it is not set.');
  // A folder that nothing was laid into yet is not there.
  const names = await readdir(folder).catch(() => []);
  const letters = await Promise.all(
    names.filter((name) => name.endsWith('.eml')).map((name) => readFile(path.join(folder, name), 'utf8')),
  );
  return letters.filter((letter) => letter.replace(/=\r\n/g, '').includes(words));
}

test('a pilot’s write-up is judged: word on the phone and a letter, with the mechanic’s words', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const mark = randomUUID().slice(0, 8);
  const reason = `Brake hose weeps at the nose leg, mark ${mark}.`;
  const pilot = await pageOf(browser, 'pia', PHONE);
  const { discrepancyId, number } = await writeUp(pilot, `A few drops of something red, mark ${mark}.`);
  const mechanic = await pageOf(browser, 'abel', DESKTOP);
  await judge(mechanic, discrepancyId, reason);

  // Told beside the link, and in the head of the screen.
  await pilot.goto('/ramp');
  await expect(pilot.getByRole('link', { name: /^What became of my write-ups \(\d+ new\)$/ })).toBeVisible();
  await pilot
    .getByRole('banner')
    .getByRole('link', { name: /^\d+ new about your write-ups and flights$/ })
    .click();
  await expect(pilot.getByRole('heading', { level: 1 })).toHaveText('What became of my write-ups');
  const news = pilot.getByRole('region', { name: /^News \(\d+\)$/ });
  const item = news.getByRole('listitem').filter({ hasText: number });
  await expect(item).toContainText(reason);
  await expect(item).toContainText('Judged');
  await expect(item).toContainText('Abel');
  await expect(item).toContainText('It grounds the aircraft until it is put right and signed.');
  const link = item.getByRole('link', { name: new RegExp(number) });
  await expect(link).toHaveAttribute('href', `/ramp/write-up/${discrepancyId}`);

  await expectFits(pilot);
  await expectNoAxeFindings(pilot);

  // Opened is not seen: it is news until the pilot says so.
  await pilot.reload();
  await expect(item).toBeVisible();
  await pilot.getByRole('button', { name: 'I have seen this' }).click();
  await expect(pilot.getByRole('heading', { name: 'No news' })).toBeFocused();
  await expect(pilot.getByRole('banner').getByRole('link', { name: /new about your/ })).toHaveCount(0);
  await expect(item).toHaveCount(0);
  await pilot.locator('summary').filter({ hasText: 'Earlier news' }).click();
  await expect(pilot.getByRole('region', { name: 'No news' })).toContainText(reason);
  await expectNoAxeFindings(pilot);

  // Nobody else has news of it.
  await mechanic.goto('/ramp/mine');
  await expect(mechanic.getByText(reason)).toHaveCount(0);

  // The letter lies in the outbox, one of it.
  await expect.poll(async () => (await lettersWith(reason)).length, { timeout: 30_000 }).toBe(1);
  const [letter = ''] = await lettersWith(reason);
  expect(letter).toContain('To: pia@');
  expect(letter).toContain('Auto-Submitted: auto-generated');
  expect(letter).toMatch(new RegExp(`^Subject: ${IN_HANGAR}, ${number}: judged\\.`, 'm'));
  expect(letter.replace(/=\r\n/g, '')).toContain(`/ramp/write-up/${discrepancyId}`);
});

async function expectFits(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  const small = await page
    .locator('header a:visible, main button:visible, main a:visible, main summary:visible')
    .evaluateAll((all) =>
      all
        .filter((one) => one.getBoundingClientRect().height < 44)
        .map((one) => `${one.textContent} ${one.getBoundingClientRect().height}`),
    );
  expect(small).toEqual([]);
}

async function expectNoAxeFindings(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await axeOn(page)
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
    ).toEqual([]);
  }
}
