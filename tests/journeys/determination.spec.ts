/**
 * The determination under a minimum equipment list and the special flight permit, in the running program, on the demo's
 * N061QB, which no other journey needs. Paragraphs are named beside each check; the rest is common practice, no source.
 */
import { expect, test, type Locator, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { DEMO_PASSWORD } from '@/seed/people';
import { QUILLBACK } from '@/seed/operators';
import { equipmentId } from '@/seed/load/ids';
import { axeOn } from '../fixtures/axe';
import { pageOf, signIn } from '../fixtures/browser';

const AIRCRAFT = 'N061QB';

interface Written {
  readonly path: string;
  readonly number: string;
  readonly aircraftId: string;
}

/** Something of the equipment list that does not work, written up through the ramp's own door. */
async function deadOf(page: Page, baseURL: string | undefined, name: string, jasc: string): Promise<Written> {
  const pilot = await pageOf(page.context().browser()!, 'pia', { baseURL });
  await pilot.goto('/ramp');
  const href = await pilot.getByRole('link', { name: AIRCRAFT }).getAttribute('href');
  const aircraftId = href?.split('/')[2] ?? '';
  const answer = await pilot.request.post('/api/sync/findings', {
    headers: { origin: new URL(pilot.url()).origin },
    data: {
      version: 1,
      requestId: randomUUID(),
      aircraftId,
      walkaroundId: null,
      station: 'cabin-power-on',
      findingKey: null,
      kind: 'inoperative',
      jasc,
      equipmentId: equipmentId(QUILLBACK.key, AIRCRAFT, name),
      inoperativeCount: 1,
      place: 'Where the determination test looks',
      words: `${name} is dead, ${randomUUID().slice(0, 8)}.`,
      measurements: {},
      foundAt: new Date().toISOString(),
    },
  });
  const result = (await answer.json()) as { ok: boolean; value: { discrepancyId: string; number: string } };
  expect(result, JSON.stringify(result)).toMatchObject({ ok: true });
  await pilot.context().close();
  const { discrepancyId, number } = result.value;
  return { path: `/bench/write-up/${discrepancyId}`, number, aircraftId };
}

const unfold = (page: Page, act: string) => page.locator('summary').filter({ hasText: act }).click();
const choose = (form: Locator, question: RegExp, answer: string) =>
  form.getByRole('radiogroup', { name: question }).getByLabel(answer).check();
const alertOf = (page: Page) => page.getByRole('main').getByRole('alert');
const history = (page: Page) =>
  page.locator('section').filter({ has: page.getByRole('heading', { name: 'History' }) });

/** A day as a date box takes it, so many days from now at the demo's base. */
const dayFromNow = (days: number): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Chicago' }).format(Date.now() + days * 86_400_000);

test('deferred under the list: the questions in order, the hazard in combination, and one extension', async ({
  page,
  baseURL,
}) => {
  const { path } = await deadOf(page, baseURL, 'Panel clock', '3120');
  await signIn(page, 'moira');
  await page.goto(path);

  // 91.213(a)(3) to (a)(5): the entry with its numbers and clock.
  const section = page.locator('section#eligibility');
  await expect(section.getByText('Required for dispatch')).toBeVisible();
  await expect(section.getByText('VFR only.').first()).toBeVisible();
  // What the section asks of a person stands open, the combination last.
  const questions = section.getByRole('listitem').filter({ hasText: 'For a person' });
  await expect(questions.first()).toContainText('with nothing damaged');
  await expect(questions.last()).toContainText('together with everything else');
  await expect(questions.last()).toContainText('Autopilot');
  await expectAccessible(page);

  await unfold(page, 'Defer it');
  const form = page.getByRole('form', { name: 'Defer' });
  // Nothing is answered beforehand.
  await expect(form.locator('input:checked')).toHaveCount(0);
  await form.getByRole('button', { name: 'Sign the deferral' }).click();
  await expect(form.getByText('Say whether anything is damaged.').first()).toBeVisible();
  await choose(form, /nothing damaged/, 'It does not work, nothing is damaged');
  await choose(form, /What was done/, 'Deactivated');
  await form.getByLabel('How', { exact: true }).fill('Clock breaker pulled and collared.');
  await choose(form, /Was that maintenance/, 'No');
  await choose(form, /procedures of the list/, 'Yes');
  await form.getByLabel('Wording of the placard').fill('CLOCK INOPERATIVE');
  await form.getByLabel('Where it goes').fill('On the clock');
  await form.getByLabel('Why it is no hazard').fill('VFR only, and every pilot wears a watch.');
  await form.getByLabel(/constitutes no hazard/).check();
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Sign the deferral' }).click();
  // 91.213(d)(4), our reading: not alone only.
  await expect(form.getByText(/Answer for it together with/).first()).toBeVisible();
  await expectAccessible(page);
  await form.getByLabel(/none together with/).check();
  await form.getByRole('button', { name: 'Sign the deferral' }).click();
  await expect(page.getByText(/^Deferred and signed/)).toBeFocused();

  // Category C counts ten days from today; again ten at most. From memory, and the page says so.
  await unfold(page, 'Extend the repair interval');
  const extend = page.getByRole('form', { name: 'Extend the repair interval' });
  await extend.getByLabel('Extended through').fill(dayFromNow(21));
  await extend.getByLabel(/Why it could not/).fill('Clock on order.');
  await extend.getByLabel('Your password').fill(DEMO_PASSWORD);
  await extend.getByRole('button', { name: 'Sign the extension' }).click();
  await expect(extend.getByText(/At most through/).nth(1)).toBeVisible();
  await extend.getByLabel('Extended through').fill(dayFromNow(20));
  await extend.getByRole('button', { name: 'Sign the extension' }).click();
  await expect(page.getByText('Extended and signed.')).toBeFocused();
  await expect(history(page)).toContainText('Repair interval extended by Moira Stobwell');
  await expect(page.locator('summary').filter({ hasText: 'Extend the repair interval' })).toHaveCount(0);
  await page.getByRole('button', { name: /placard is up/i }).click();
});

test('a number outside the stored limit is refused beside it, inside it is signed', async ({
  page,
  baseURL,
}) => {
  // The demo's stored limit for this type: at most 0.031 in deep.
  const pilot = await pageOf(page.context().browser()!, 'pia', { baseURL });
  await pilot.goto('/ramp');
  const href = await pilot.getByRole('link', { name: AIRCRAFT }).getAttribute('href');
  const answer = await pilot.request.post('/api/sync/findings', {
    headers: { origin: new URL(pilot.url()).origin },
    data: {
      version: 1,
      requestId: randomUUID(),
      aircraftId: href?.split('/')[2],
      walkaroundId: null,
      station: 'propeller',
      findingKey: 'propeller-nick',
      kind: null,
      jasc: null,
      equipmentId: null,
      inoperativeCount: null,
      place: `Blade 1, ${randomUUID().slice(0, 8)}`,
      words: 'A nick.',
      measurements: { 'propeller-nick-depth': 20, 'propeller-nick-width': 30 },
      foundAt: new Date().toISOString(),
    },
  });
  const { value } = (await answer.json()) as { value: { discrepancyId: string } };
  await pilot.context().close();
  await signIn(page, 'moira');
  await page.goto(`/bench/write-up/${value.discrepancyId}`);
  await unfold(page, 'Find it within limits');
  const form = page.getByRole('form', { name: 'Find within limits' });
  await expect(form.getByText(/Reported: 0\.020 in/)).toBeVisible();
  await form.getByLabel('Depth of the nick').fill('0.032');
  await form.getByLabel('Width of the nick').fill('0.030');
  await form.getByLabel('Your finding').fill('No crack under the loupe.');
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Sign the finding' }).click();
  // 91.405(a).
  await expect(form.getByText(/0\.032 in is over the most allowed, 0\.031 in/).first()).toBeVisible();
  await expectAccessible(page);
  await form.getByLabel('Depth of the nick').fill('0.031');
  await form.getByRole('button', { name: 'Sign the finding' }).click();
  await expect(page.getByText(/^Found within limits and signed/)).toBeVisible();
  await expect(history(page)).toContainText('Depth of the nick: 0.031 in; Width of the nick: 0.030 in');
});

test('a permit is recorded, inspected, flown under once, and refused a second time', async ({
  page,
  baseURL,
}) => {
  const { aircraftId, number } = await deadOf(page, baseURL, 'Distance measuring equipment', '3451');
  const reference = `SFP ${randomUUID().slice(0, 8)}`;
  const gil = await pageOf(page.context().browser()!, 'gil', { baseURL });
  await gil.goto(`/bench/permit/new?aircraft=${aircraftId}`);
  await expect(gil.getByRole('heading', { name: 'Facts for the application' })).toBeVisible();
  await expectAccessible(gil);
  const form = gil.getByRole('form', { name: 'Record the permit' });
  await expect(form.locator('input:checked')).toHaveCount(0);
  await form.getByRole('button', { name: 'Sign the record' }).click();
  await expect(form.getByText('Choose everything the permit names.').first()).toBeVisible();
  await expectAccessible(gil);
  await form.getByLabel('Number or reference on the paper').fill(reference);
  await form.getByLabel('What the flight is for').selectOption('repair');
  await form.getByLabel('Issued by').fill('Invented district office');
  await form.getByLabel('Issued on').fill(dayFromNow(0));
  await form.getByLabel('First good day').fill(dayFromNow(0));
  await form.getByLabel('Last good day').fill(dayFromNow(3));
  await form.getByLabel('From', { exact: true }).selectOption({ index: 1 });
  await form.getByLabel('To', { exact: true }).selectOption({ index: 1 });
  await form.getByLabel('Who may be aboard').fill('One pilot, nobody else.');
  await form.getByLabel('Its conditions, one a line').fill('Day VFR only.\nDirect, not over a town.');
  for (const box of await form.getByRole('checkbox', { name: /Bars today/ }).all()) await box.check();
  await expect(form.getByRole('checkbox', { name: new RegExp(number) })).toBeChecked();
  await choose(form, /ask for an inspection/, 'Yes');
  await form.getByLabel('Your password').fill(DEMO_PASSWORD);
  await form.getByRole('button', { name: 'Sign the record' }).click();
  await expect(gil.getByRole('heading', { level: 1, name: reference })).toBeVisible();
  await expect(gil.getByText('Inspection owed')).toBeVisible();
  const permit = new URL(gil.url()).pathname;

  // 21.199(b): not flown before it is inspected.
  const first = await pageOf(page.context().browser()!, 'gil', { baseURL, viewport: page.viewportSize() });
  await composeUnder(first, aircraftId, reference);
  await expect(first.getByText(/asks for an inspection first/).first()).toBeVisible();

  // One airframe rating is not enough for everything the permit covers or may cover: moira has both.
  await signIn(page, 'moira');
  await page.goto(permit);
  const inspect = page.getByRole('form', { name: 'Inspect for the permit' });
  await inspect.getByLabel('What was inspected and found').fill('Breaker collared, run-up in order.');
  await inspect.getByRole('button', { name: 'Sign the inspection' }).click();
  await expect(inspect.getByText(/needs your finding that the aircraft is safe/).first()).toBeVisible();
  await inspect.getByLabel(/I find the aircraft safe/).check();
  await inspect.getByLabel('Your password').fill(DEMO_PASSWORD);
  await inspect.getByRole('button', { name: 'Sign the inspection' }).click();
  await expect(page.getByText('Inspected and signed.')).toBeFocused();
  await expect(page.getByText('Ready for its flight')).toBeVisible();
  await expectAccessible(page);

  // Two desks have the same answer before them; only one releases.
  await composeUnder(first, aircraftId, reference);
  await composeUnder(gil, aircraftId, reference);
  for (const desk of [first, gil]) {
    await expect(desk.getByText(`Special flight permit ${reference}: Day VFR only.`).first()).toBeVisible();
    await desk.getByLabel(/passed these limits/).check();
  }
  await first.getByRole('button', { name: 'Release with limits' }).click();
  await expect(first.getByRole('heading', { level: 1, name: `${AIRCRAFT} released` })).toBeVisible();
  await expect(first.getByText(reference, { exact: true })).toBeVisible();
  await gil.getByRole('button', { name: 'Release with limits' }).click();
  await expect(alertOf(gil)).toContainText('was for one flight');
  await page.goto(permit);
  await expect(page.getByText('Used', { exact: true })).toBeVisible();
  // The aircraft is free for the next run.
  await first.getByRole('button', { name: 'Withdraw the release' }).click();
  await first.getByLabel('Why it is withdrawn').fill('Only looked at.');
  await first.getByRole('button', { name: 'Withdraw it' }).click();
  await expect(first.getByText('Only looked at.')).toBeVisible();
  await first.context().close();
  await gil.context().close();
});

/** The flight of the permit, composed at the desk, and its answer asked for. */
async function composeUnder(page: Page, aircraftId: string, reference: string): Promise<void> {
  await page.goto(`/desk/flight?aircraft=${aircraftId}`);
  const form = page.getByRole('form', { name: 'Flight' });
  const pilot = form.getByLabel('Pilot in command');
  await pilot.selectOption({ label: (await pilot.getByRole('option', { name: /Gil/ }).textContent()) ?? '' });
  await form.getByRole('button', { name: 'ZZQB and back' }).click();
  await form.getByLabel(/^Departs/).fill(`${dayFromNow(1)}T11:00`);
  await form.getByLabel(/^Arrives/).fill(`${dayFromNow(1)}T12:00`);
  await form.getByLabel('Planned time in service').fill('1.0');
  await form.getByRole('radiogroup', { name: 'Flight rules' }).getByLabel('VFR').check();
  await form.getByLabel('What is it for?').selectOption('to-inspection');
  const permit = form.getByLabel(/Under a special flight permit/);
  const option = permit.getByRole('option', { name: new RegExp(reference) });
  await permit.selectOption({ label: (await option.textContent()) ?? '' });
  for (const question of [/transponder\?/, /ADS-B Out\?/, /required crew/]) {
    await form.getByRole('radiogroup', { name: question }).first().getByLabel('Yes').check();
  }
  await form.getByRole('button', { name: /^Get the answer/ }).click();
  await expect(page.getByRole('group', { name: 'Answer' })).toBeVisible();
}

/** WCAG 2.2 AA, as far as axe can see it; in a tall window, because a sticky bar hides what it covers from axe. */
async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await axeOn(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
}
