/**
 * An annual with a deferral to dispose of, and what recurs, in the running program, on the demo's N043QB: its nicked propeller
 * keeps it from being certified airworthy. May be run twice on one database. Paragraphs are named beside each check; the rest
 * is common practice, no source.
 */
import { expect, test, type Locator, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { equipmentId } from '@/seed/load/ids';
import { QUILLBACK } from '@/seed/operators';
import { DEMO_PASSWORD } from '@/seed/people';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const AIRCRAFT = 'N043QB';

const unfold = (page: Page | Locator, act: string | RegExp) =>
  page.locator('summary').filter({ hasText: act }).click();
const choose = (form: Locator, question: RegExp, answer: string) =>
  form.getByRole('radiogroup', { name: question }).getByLabel(answer, { exact: true }).check();
const alertOf = (page: Page) => page.getByRole('main').getByRole('alert');

/** Today at the demo's base, as a date box takes it. */
const today = () => new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Chicago' }).format(Date.now());

/** WCAG 2.2 AA, as far as axe can see it. */
async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await axeOn(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
}

async function aircraftIdOf(page: Page): Promise<string> {
  await page.goto('/ramp');
  const href = await page.getByRole('link', { name: AIRCRAFT }).getAttribute('href');
  return href?.split('/')[2] ?? '';
}

/** Something that recurs, as the bench links to it. */
async function requirementPath(page: Page, aircraftId: string, name: string): Promise<string> {
  await page.goto(`/bench/aircraft/${aircraftId}`);
  const link = page.locator('a[href^="/bench/requirement/"]').filter({ hasText: name }).first();
  return (await link.getAttribute('href')) ?? '';
}

/** The panel clock written up, deferred as deactivated, its placard up: where the inspection starts from. */
async function deferClock(page: Page, aircraftId: string): Promise<void> {
  const answer = await page.request.post('/api/sync/findings', {
    headers: { origin: new URL(page.url()).origin },
    data: {
      version: 1,
      requestId: randomUUID(),
      aircraftId,
      walkaroundId: null,
      station: 'cabin-power-on',
      findingKey: null,
      kind: 'inoperative',
      jasc: '3120',
      equipmentId: equipmentId(QUILLBACK.key, AIRCRAFT, 'Panel clock'),
      inoperativeCount: 1,
      place: 'Where the inspection test looks',
      words: `The clock stands still, ${randomUUID().slice(0, 8)}.`,
      measurements: {},
      foundAt: new Date().toISOString(),
    },
  });
  const result = (await answer.json()) as { ok: boolean; value: { discrepancyId: string } };
  expect(result, JSON.stringify(result)).toMatchObject({ ok: true });
  await page.goto(`/bench/write-up/${result.value.discrepancyId}`);
  await unfold(page, 'Defer it');
  const form = page.getByRole('form', { name: 'Defer' });
  await choose(form, /nothing damaged/, 'It does not work, nothing is damaged');
  await form.getByRole('radio', { name: /^Deactivated/ }).check();
  await form.getByLabel('How', { exact: true }).fill('Clock breaker pulled and collared.');
  await choose(form, /Was that maintenance/, 'No');
  await form.getByLabel('Wording of the placard').fill('CLOCK INOPERATIVE');
  await form.getByLabel('Where it goes').fill('On the clock');
  await form.getByLabel('Why it is no hazard').fill('Every pilot wears a watch.');
  await form.getByLabel(/constitutes no hazard/).check();
  const together = form.getByLabel(/none together with/);
  if (await together.isVisible()) await together.check();
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Sign the deferral' }).click();
  await expect(page.getByText(/^Deferred and signed/)).toBeVisible();
  await page.getByRole('button', { name: /placard is up/i }).click();
  await expect(page.getByText('The placard is recorded as up.')).toBeVisible();
}

/** The page of an annual under way: begun now. */
async function beginAnnual(page: Page, annual: string): Promise<string> {
  await page.goto(annual);
  await unfold(page, 'Begin the inspection');
  const form = page.getByRole('form', { name: 'Begin inspection' });
  // Nothing is chosen beforehand.
  await expect(form.locator('input:checked')).toHaveCount(0);
  await form.getByRole('button', { name: 'Begin the inspection' }).click();
  await expect(form.getByText('Say whether it is an annual or a 100-hour inspection.').first()).toBeVisible();
  await form.getByRole('radio', { name: /^Annual/ }).check();
  await form.getByRole('button', { name: 'Begin the inspection' }).click();
  await expect(page).toHaveURL(/\/bench\/inspection\//);
  return new URL(page.url()).pathname;
}

async function writeEntry(page: Page): Promise<void> {
  await unfold(page, 'Write the entry');
  const form = page.getByRole('form', { name: 'Inspection entry' });
  await expect(form.locator('input:checked')).toHaveCount(0);
  await form.getByRole('button', { name: 'Write the entry' }).click();
  // 43.15(c)(2): an answer for each.
  await expect(form.getByText('Say what the engine run showed.').first()).toBeVisible();
  await form.getByLabel('Extent').fill('Whole aircraft, by the maker’s list and Appendix D.');
  await form.getByLabel('Checklist used').fill('Maker’s list, invented, revision 7');
  await choose(form, /scope and detail of Appendix D/, 'Yes');
  await choose(form, /all airworthiness requirements are met/, 'Yes');
  for (const name of [
    'Static rpm',
    'Idle rpm',
    'Magnetos',
    'Fuel pressure',
    'Oil pressure',
    'Cylinder temperature',
    'Oil temperature',
  ]) {
    await form.getByLabel(name, { exact: true }).selectOption('satisfactory');
    await form.getByLabel(`${name}: read`).fill('as the manual says');
  }
  await form.getByLabel('Completed on').fill(today());
  await form.getByLabel('Total time in service').fill('1.0');
  await form.getByRole('button', { name: 'Write the entry' }).click();
  // 43.11(a)(2): never less than the aircraft's own record; the refusal says what that is.
  const refused = form.getByText(/has [\d.]+ h on record/).first();
  await expect(refused).toBeVisible();
  const onRecord = /has ([\d.]+) h on record/.exec((await refused.textContent()) ?? '')?.[1] ?? '';
  await form.getByLabel('Total time in service').fill(onRecord);
  await form.getByRole('button', { name: 'Write the entry' }).click();
  await expect(page.getByText(/^The entry is written/)).toBeVisible();
}

test('an annual: what became of the deferral, the list, three signatures, and it stays no go over what is listed', async ({
  page,
  baseURL,
}) => {
  test.setTimeout(180_000);
  await signIn(page, 'moira');
  const aircraftId = await aircraftIdOf(page);
  const annual = await requirementPath(page, aircraftId, 'Annual inspection');
  const path = await beginAnnual(page, annual);
  await page.goto(path);
  if ((await page.getByText('Disposition owed').count()) === 0) {
    await deferClock(page, aircraftId);
    await page.goto(path);
  }
  await expectAccessible(page);
  await writeEntry(page);

  const plain = await pageOf(page.context().browser()!, 'hugo', { baseURL });
  await plain.goto(path);
  await unfold(plain, 'Sign for the airframe');
  // 65.92(a): his inspection authorization has run out.
  await expect(plain.getByText('Your certificates do not allow this signature.')).toBeVisible();
  await expect(plain.getByText(/65\.92\(a\)/).first()).toBeVisible();
  await plain.context().close();

  // 91.405(c): said before anybody types a password.
  await expect(page.getByText(/91\.405\(c\)/).first()).toBeVisible();
  while ((await page.getByText('Disposition owed').count()) > 0) {
    const owed = await page.getByText('Disposition owed').count();
    await page
      .locator('summary')
      .filter({ hasText: /^Say what becomes of/ })
      .first()
      .click();
    const form = page.getByRole('form', { name: 'Disposition' }).first();
    await form.getByRole('radio', { name: /^Inspected, stays deferred/ }).check();
    await form.getByLabel('What you found').fill('Breaker collared, placard legible.');
    await form.getByRole('checkbox', { name: /it is no hazard/ }).check();
    const together = form.getByRole('checkbox', { name: /none together with/ });
    if (await together.isVisible()) await together.check();
    await form.getByLabel('Your password').fill(DEMO_PASSWORD);
    await form.getByRole('button', { name: 'Sign the disposition' }).click();
    await expect(page.getByText('The disposition is signed.')).toBeFocused();
    await expect(page.getByText('Disposition owed')).toHaveCount(owed - 1);
  }
  await expect(page.getByText('Inspected, stays deferred').first()).toBeVisible();

  await unfold(page, /^Sign the list/);
  const list = page.getByRole('form', { name: 'Sign the list' });
  for (const question of await list.getByRole('radiogroup').all()) {
    await question.getByLabel('Yes', { exact: true }).check();
  }
  await list.getByLabel('Your password').fill(DEMO_PASSWORD);
  await list.getByRole('button', { name: 'Sign the list' }).click();
  await expect(page.getByText(/^The list is signed/)).toBeFocused();
  await expect(page.getByText('Unairworthy', { exact: true }).first()).toBeVisible();
  await expect(page.getByText('Inoperative, placarded').first()).toBeVisible();

  for (const part of ['airframe', 'powerplant', 'propeller']) {
    await unfold(page, `Sign for the ${part}`);
    const form = page.getByRole('form', { name: `Sign for the ${part}` });
    await expect(form.locator('input:checked')).toHaveCount(0);
    if (part === 'airframe') {
      // 43.11(a)(4): not over an open propeller.
      await form.getByRole('radio', { name: /^Airworthy/ }).check();
      await expect(form.getByText(/was determined to be in airworthy condition/)).toBeVisible();
      await form.getByLabel('I made this inspection myself.').check();
      await form.getByLabel('Your password').fill(DEMO_PASSWORD);
      await form.getByRole('button', { name: `Sign for the ${part}` }).click();
      await expect(form.getByRole('alert')).toContainText('43.11(a)(4)');
    }
    await form.getByRole('radio', { name: /^Not airworthy/ }).check();
    await expect(form.getByText(/a list of discrepancies and unairworthy items dated/)).toBeVisible();
    await form.getByLabel('I made this inspection myself.').check();
    await form.getByLabel('Your password').fill(DEMO_PASSWORD);
    await form.getByRole('button', { name: `Sign for the ${part}` }).click();
    await expect(page.getByText(`Signed for the ${part}.`)).toBeFocused();
  }
  await expect(page.getByText('Complete, not approved', { exact: true })).toBeVisible();
  await expect(page.getByText(/stays no go until each item of the list is cleared/)).toBeVisible();
  await expectAccessible(page);

  // 91.409(a), (b): done, so both run anew.
  await page.goto(annual);
  await expect(page.getByText('In date', { exact: true })).toBeVisible();
  await expect(page.getByText(/Moira Stobwell, inspection authorization/).first()).toBeVisible();
});

test('a VOR check by whoever made it: over the limit refused with its paragraph, within it signed', async ({
  page,
  baseURL,
}) => {
  const bench = await pageOf(page.context().browser()!, 'moira', { baseURL });
  const path = await requirementPath(bench, await aircraftIdOf(bench), 'VOR check');
  await bench.context().close();
  await signIn(page, 'pia');
  await page.goto(path);
  await unfold(page, 'Record a VOR check');
  const form = page.getByRole('form', { name: 'VOR check' });
  await expect(form.locator('input:checked')).toHaveCount(0);
  const place = `Test signal, ${randomUUID().slice(0, 8)}`;
  await form.getByRole('radio', { name: /^Test signal/ }).check();
  await form.getByLabel('Checked on').fill(today());
  await form.getByLabel('Where').fill(place);
  await form.getByLabel('Bearing error', { exact: true }).fill('4.5');
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Sign the check' }).click();
  // 91.171(b)(1): four degrees.
  await expect(alertOf(page)).toContainText('not more than 4 degrees');
  await expect(alertOf(page)).toContainText('91.171(b)(1)');
  await expectAccessible(page);
  await form.getByLabel('Bearing error', { exact: true }).fill('4');
  await form.getByRole('button', { name: 'Sign the check' }).click();
  await expect(page.getByText('The VOR check is recorded and signed.')).toBeFocused();
  await expect(page.getByText(place)).toBeVisible();
});
