/**
 * The history of an aircraft that was there before this tool: a paper, inspections, a write-up with its deferral, a file, and that
 * there is no minimum equipment list; on an aircraft of its own, retired at the end. Source: issue 6, "History in".
 */
import { expect, test, type Page } from '@playwright/test';
import { DEMO_PASSWORD } from '../../seed/people';
import { axeOn } from '../fixtures/axe';
import { signIn } from '../fixtures/browser';
import { freeMark } from '../fixtures/fleet-office';

test.setTimeout(180_000);

async function signed(page: Page, submit: string | RegExp): Promise<void> {
  await page.getByLabel('Your password, to sign').last().fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: submit }).click();
}

const choose = (page: Page, question: string | RegExp, answer: string) =>
  page.getByRole('radiogroup', { name: question }).getByLabel(answer, { exact: true }).check();

async function expectFit(page: Page): Promise<void> {
  const { violations } = await axeOn(page).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
}

async function addAircraft(page: Page, registration: string): Promise<void> {
  await page.goto('/office/fleet/aircraft/add');
  const form = page.getByRole('form', { name: 'Add an aircraft' });
  await form.getByLabel('Registration').fill(registration);
  await form.getByLabel('Serial number').fill('INVENTED-600');
  await form.getByLabel('Type', { exact: true }).selectOption({ index: 1 });
  await form.getByLabel('Base', { exact: true }).selectOption({ index: 1 });
  await choose(page, /for hire/, 'Yes');
  await choose(page, /standard airworthiness/, 'Yes');
  await choose(page, /Which meter/, 'Not known yet');
  await form.getByLabel('Hobbs').first().fill('1250.0');
  await form.getByLabel('Document it is taken from').fill('Invented logbook, page 1');
  await signed(page, 'Sign and add the aircraft');
  await expect(page.getByRole('heading', { level: 1, name: registration })).toBeVisible();
}

test('papers, inspections, a write-up and a file are carried over, marked, and asked for no more', async ({
  page,
}) => {
  const registration = freeMark();
  await signIn(page, 'gil');
  await addAircraft(page, registration);
  await page.goto('/office/history');
  const row = page.getByRole('listitem').filter({ hasText: registration });
  await expect(row.getByText('No inspection entered')).toBeVisible();
  await row.getByRole('link', { name: `History of ${registration}` }).click();
  await expect(page.getByRole('heading', { name: 'What the engine still lacks' })).toBeVisible({
    timeout: 30_000,
  });
  const sheet = (name: string) =>
    page.getByRole('navigation', { name: 'History of this aircraft' }).getByRole('link', { name });

  await sheet('Papers aboard').click();
  await page.getByText('Enter: Airworthiness certificate').click();
  await page.getByLabel('Number or mark of the paper').fill('Invented 1');
  await choose(page, 'Does it run out?', 'No');
  await choose(page, 'Is it aboard?', 'Yes');
  await signed(page, 'Sign and enter the paper');
  await expect(page.getByText('The paper is entered.')).toBeVisible();
  await expect(page.getByText('Document: Invented 1')).toBeVisible();

  await sheet('Inspections').click();
  await page.getByText('The usual set', { exact: true }).click();
  await page.getByRole('checkbox', { name: /Annual inspection/ }).check();
  await page.getByRole('checkbox', { name: /Transponder test/ }).check();
  await page.getByRole('button', { name: 'Add these' }).click();
  await expect(page.getByText('Added. Now say when each was last done.')).toBeVisible();
  const annual = page.getByRole('listitem').filter({ hasText: 'Annual inspection' });
  await annual.getByText('Say when it was last done').click();
  await annual.getByLabel('Day it was done').fill('2026-05-14');
  await annual.getByLabel('Total time in service then').fill('1200.5');
  await annual.getByLabel('Who approved it, as the record says').fill('Otto Birkmoor');
  await annual.getByLabel('Kind of certificate').fill('inspection authorization');
  await annual.getByLabel('Certificate number').fill('1234567');
  await annual.getByLabel('Document that says so').fill('Airframe logbook, page 41');
  await choose(page, /hold what the law asks/, 'Yes');
  await signed(page, 'Sign and carry over');
  await expect(annual.getByText('Document: Airframe logbook, page 41')).toBeVisible();
  await expectFit(page);

  await sheet('Minimum equipment list').click();
  await page.getByText('It is operated without a list').click();
  await page.getByLabel('Document, or who says so').fill('Invented records');
  await signed(page, 'Sign: no list');
  await expect(page.getByText('Operated without a minimum equipment list.', { exact: false })).toBeVisible();

  await sheet('Open write-ups').click();
  await page.getByText('Carry over a write-up', { exact: true }).click();
  await page.getByLabel('Its words, as they stand on paper').fill('Paint scratched beside the door.');
  await page.getByLabel('Day it was found').fill('2026-11-02');
  await page.getByLabel('What kind of trouble').selectOption('cosmetic');
  await page.getByLabel('Find the system (JASC code)').fill('5300');
  await page.getByRole('radio', { name: /^5300/ }).check();
  await page.getByRole('radio', { name: /^A note/ }).check();
  await page.getByLabel('Document it is written in').fill('Squawk sheet 41');
  await choose(page, 'Does a deferral stand on paper?', 'Yes');
  await expect(page.getByRole('group', { name: 'Who determined that it is no hazard' })).toBeVisible();
  await expectFit(page);
  await choose(page, 'Does a deferral stand on paper?', 'No');
  await signed(page, 'Sign and carry over');
  const carried = page.getByRole('link', { name: /W-\d+/ });
  await expect(carried).toBeVisible();

  // A file: the wrong row is named, put right in place, and all goes in at once; the same again adds nothing.
  await page.goto('/office/history/import');
  const head = 'aircraft,found_on,words,kind,jasc,severity,document';
  const rowOf = (day: string) =>
    `${registration},${day},Carpet worn at the pedals,cosmetic,2520,not known,Squawk sheet 42`;
  const fill = async (day: string) => {
    await page.getByRole('radio', { name: 'Open write-ups and deferrals' }).check();
    await page.getByRole('radio', { name: 'CSV' }).check();
    await page.getByLabel('Its text').fill(`${head}\n${rowOf(day)}`);
    await page.getByRole('button', { name: 'Check', exact: true }).click();
  };
  await fill('soon');
  await expect(page.getByRole('alert').filter({ hasText: 'Nothing can be taken in yet' })).toContainText(
    'Row 2, found_on',
  );
  await fill('2026-11-03');
  await expect(
    page.getByText('Bars flight until a mechanic has judged, deferred or repaired it.'),
  ).toBeVisible();
  await expectFit(page);
  await signed(page, 'Sign and take in 1 row');
  await expect(page.getByText('Taken in and signed.')).toBeVisible();
  await fill('2026-11-03');
  await expect(page.getByText('There is nothing to take in.')).toBeVisible();

  // Marked where the write-up is worked on.
  await page.goto('/office/history');
  await row.getByRole('link', { name: `History of ${registration}` }).click();
  await sheet('Open write-ups').click();
  await carried.first().click();
  await expect(page.getByText('Document: Squawk sheet 41')).toBeVisible();

  await page.goto('/office/fleet');
  await page
    .getByRole('listitem')
    .filter({ hasText: registration })
    .getByRole('link', { name: 'The aircraft' })
    .click();
  await page.getByText('Retire this aircraft').click();
  await page.getByLabel('Why').fill('Only for this test.');
  await page.getByRole('button', { name: 'Retire the aircraft' }).click();
  await expect(page.getByText('Retired: Only for this test.', { exact: false })).toBeVisible();
});
